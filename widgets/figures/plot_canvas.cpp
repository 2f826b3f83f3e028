#include "widgets/figures/plot_canvas.h"

#include <QWindow>

namespace jw {

PlotCanvas::PlotCanvas(QWidget* parent) : QCustomPlot(parent) {
  setFocusPolicy(Qt::NoFocus);
  setMouseTracking(true);
  setMinimumSize(120, 60);
  setViewport({0, 0, 1, 1});  // the layers' pictures take no room before the first show
}

void PlotCanvas::setDimmed(bool dimmed, const QColor& ground) {
  m_veil = ground;
  m_veil.setAlphaF(0.55F);
  if (m_dimmed == dimmed) return;
  m_dimmed = dimmed;
  update();
}

void PlotCanvas::followScreen() {
  if (qFuzzyCompare(bufferDevicePixelRatio(), devicePixelRatioF())) return;
  setBufferDevicePixelRatio(devicePixelRatioF());
  replot(rpQueuedReplot);
}

void PlotCanvas::showEvent(QShowEvent* event) {
  QCustomPlot::showEvent(event);
  followScreen();
  disconnect(m_screenChange);
  if (QWindow* window = this->window()->windowHandle())
    m_screenChange = connect(window, &QWindow::screenChanged, this, &PlotCanvas::followScreen);
}

void PlotCanvas::paintEvent(QPaintEvent* event) {
  QCustomPlot::paintEvent(event);
  if (!m_dimmed) return;
  QPainter painter(this);
  painter.fillRect(rect(), m_veil);
}

}  // namespace jw

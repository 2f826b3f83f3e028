#include "widgets/figures/ratio_canvas.h"

#include <cmath>

#include <QMouseEvent>

namespace jw {

RatioCanvas::RatioCanvas(QWidget* parent) : PlaneCanvas(parent), m_plot(*this) {}

void RatioCanvas::showView(RatioView view, bool stale) {
  m_plot.show(std::move(view), isZoomed());
  setDimmed(stale, screenPlotStyle().colours.panel);
  replot(rpQueuedReplot);
}

void RatioCanvas::setPresent(double ratio) {
  m_plot.setPresent(ratio);
  replot(rpQueuedReplot);
}

void RatioCanvas::restyle() {
  m_plot.setStyle(screenPlotStyle());
  replot(rpQueuedReplot);
}

void RatioCanvas::endDrag() {
  if (!m_holds) return;
  m_holds = false;
  m_idle = true;
  unsetCursor();
  emit dragEnded();
}

void RatioCanvas::mousePressEvent(QMouseEvent* event) {
  const bool hit = event->button() == Qt::LeftButton && m_plot.isHandle(event->position());
  m_idle = false;
  if (!hit) return PlaneCanvas::mousePressEvent(event);
  m_holds = true;
  m_grip = m_plot.pixelOf(m_plot.view().present) - event->position().x();
  setCursor(Qt::SizeHorCursor);
  emit dragBegun();
}

void RatioCanvas::mouseMoveEvent(QMouseEvent* event) {
  if (m_idle && event->buttons() != Qt::NoButton) return;
  if (!m_holds) {
    if (event->buttons() == Qt::NoButton)
      setCursor(m_plot.isHandle(event->position()) ? Qt::SizeHorCursor : Qt::ArrowCursor);
    return PlaneCanvas::mouseMoveEvent(event);
  }
  if (!(event->buttons() & Qt::LeftButton)) return endDrag();
  const double x = event->position().x() + m_grip;
  const double step = std::abs(xAxis->pixelToCoord(x + 1) - xAxis->pixelToCoord(x));
  emit dragged(m_plot.ratioAt(x), step, event->modifiers());
}

void RatioCanvas::mouseReleaseEvent(QMouseEvent* event) {
  if (!m_holds && !m_idle) return PlaneCanvas::mouseReleaseEvent(event);
  endDrag();
  m_idle = false;
}

}  // namespace jw

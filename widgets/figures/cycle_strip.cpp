#include "widgets/figures/cycle_strip.h"

#include <cmath>

#include <QMouseEvent>
#include <QWheelEvent>

namespace jw {

CycleStrip::CycleStrip(bool bands, QWidget* parent) : PlotCanvas(parent), m_plot(*this, bands) {
  setCursor(Qt::CrossCursor);
}

void CycleStrip::showView(CycleView view, const QStringList& visible) {
  const bool stale = view.stale;
  m_plot.show(std::move(view), visible, m_zoomed);
  setDimmed(stale, screenPlotStyle().colours.panel);
  replot(rpQueuedReplot);
}

void CycleStrip::setCursorTime(double s) {
  m_cursor = s;
  m_plot.setCursor(s, true);
}

void CycleStrip::restyle() {
  m_plot.setStyle(screenPlotStyle());
  m_plot.arrange(height());
  m_plot.setCursor(m_cursor, false);
  replot(rpQueuedReplot);
}

void CycleStrip::zoomBy(double factor) {
  m_plot.zoomBy(factor, m_plot.seen().center());
  m_zoomed = true;
  replot(rpQueuedReplot);
}

void CycleStrip::resetZoom() {
  m_plot.showAll();
  m_zoomed = false;
  replot(rpQueuedReplot);
}

void CycleStrip::dragTo(const QPointF& pixel) {
  const double time = m_plot.timeAt(pixel);
  if (std::isnan(time)) return;
  if (m_drag == Drag::Cursor) emit cursorDragged(time);
  if (m_drag != Drag::Pan) return;
  m_plot.panBy(m_panFrom - time);
  m_zoomed = true;
  replot(rpQueuedReplot);
}

void CycleStrip::mousePressEvent(QMouseEvent* event) {
  const bool pan =
      event->button() == Qt::MiddleButton || event->modifiers().testFlag(Qt::ShiftModifier);
  if (event->button() == Qt::RightButton) return event->ignore();
  m_drag = pan ? Drag::Pan : Drag::Cursor;
  m_panFrom = m_plot.timeAt(event->position());
  dragTo(event->position());
}

void CycleStrip::mouseMoveEvent(QMouseEvent* event) {
  if (m_drag != Drag::None) dragTo(event->position());
}

void CycleStrip::mouseReleaseEvent(QMouseEvent*) { m_drag = Drag::None; }

void CycleStrip::mouseDoubleClickEvent(QMouseEvent*) { resetZoom(); }

void CycleStrip::resizeEvent(QResizeEvent* event) {
  m_plot.arrange(event->size().height());
  PlotCanvas::resizeEvent(event);
}

void CycleStrip::wheelEvent(QWheelEvent* event) {
  const double time = m_plot.timeAt(event->position());
  if (std::isnan(time)) return event->ignore();
  m_plot.zoomBy(std::pow(0.85, event->angleDelta().y() / 120.0), time);
  m_zoomed = true;
  replot(rpQueuedReplot);
  event->accept();
}

}  // namespace jw

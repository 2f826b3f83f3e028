#include "widgets/figures/plane_canvas.h"

#include <cmath>

#include <QMouseEvent>
#include <QWheelEvent>

namespace jw {
namespace {

// A logarithmic axis moves by a factor, a linear one by a difference.
void panAxis(QCPAxis& axis, double fromPixel, double toPixel) {
  const double from = axis.pixelToCoord(fromPixel);
  const double to = axis.pixelToCoord(toPixel);
  axis.moveRange(axis.scaleType() == QCPAxis::stLogarithmic ? from / to : from - to);
}

}  // namespace

PlaneCanvas::PlaneCanvas(QWidget* parent) : PlotCanvas(parent) {}

void PlaneCanvas::setZoomed(bool zoomed) {
  if (m_zoomed == zoomed) return;
  m_zoomed = zoomed;
  emit zoomChanged();
}

void PlaneCanvas::zoomBy(double factor, const QPointF& aboutPixel) {
  xAxis->scaleRange(factor, xAxis->pixelToCoord(aboutPixel.x()));
  yAxis->scaleRange(factor, yAxis->pixelToCoord(aboutPixel.y()));
  setZoomed(true);
  replot(rpQueuedReplot);
}

void PlaneCanvas::zoomBy(double factor) { zoomBy(factor, QRectF(axisRect()->rect()).center()); }

void PlaneCanvas::resetZoom() {
  showAll();
  setZoomed(false);
  replot(rpQueuedReplot);
}

void PlaneCanvas::panBy(const QPointF& pixels) {
  const QPointF middle = QRectF(axisRect()->rect()).center();
  panAxis(*xAxis, middle.x(), middle.x() + pixels.x());
  panAxis(*yAxis, middle.y(), middle.y() + pixels.y());
  setZoomed(true);
  replot(rpQueuedReplot);
}

void PlaneCanvas::pick(const QPointF&) {}

void PlaneCanvas::mousePressEvent(QMouseEvent* event) {
  if (event->button() == Qt::RightButton) return event->ignore();
  m_pressed = m_last = event->position();
  m_dragging = false;
}

void PlaneCanvas::mouseMoveEvent(QMouseEvent* event) {
  const bool inside = axisRect()->rect().contains(event->position().toPoint());
  emit hovered(inside ? readingAt(event->position()) : QString());
  const bool pressed = event->buttons() & (Qt::LeftButton | Qt::MiddleButton);
  if (!pressed) return;
  if (!m_dragging && (event->position() - m_pressed).manhattanLength() < 4) return;
  m_dragging = true;
  setCursor(Qt::ClosedHandCursor);
  panBy(event->position() - m_last);
  m_last = event->position();
}

void PlaneCanvas::mouseReleaseEvent(QMouseEvent* event) {
  unsetCursor();
  if (!m_dragging && event->button() == Qt::LeftButton) pick(event->position());
}

void PlaneCanvas::mouseDoubleClickEvent(QMouseEvent*) { resetZoom(); }

void PlaneCanvas::wheelEvent(QWheelEvent* event) {
  zoomBy(std::pow(0.85, event->angleDelta().y() / 120.0), event->position());
  event->accept();
}

void PlaneCanvas::leaveEvent(QEvent* event) {
  PlotCanvas::leaveEvent(event);
  emit hovered({});
}

}  // namespace jw

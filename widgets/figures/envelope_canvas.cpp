#include "widgets/figures/envelope_canvas.h"

#include <cmath>

#include <QMouseEvent>
#include <QWheelEvent>

#include "widgets/theme/number_text.h"

namespace jw {
namespace {

constexpr double kReach = 12;  // [px] within which the path is meant

QString limitText(const QString& name, const PlaneCurve& curve, const QPointF& at) {
  const double torque = curveTorqueAt(curve, at.x(), at.y() >= 0);
  if (std::isnan(torque)) return {};
  return QStringLiteral("  ·  %1 %2 N·m").arg(name, numberText(torque));
}

}  // namespace

EnvelopeCanvas::EnvelopeCanvas(QWidget* parent) : PlotCanvas(parent), m_plot(*this) {}

void EnvelopeCanvas::showView(EnvelopeView view, bool axesChanged) {
  const bool stale = view.stale;
  if (axesChanged) setZoomed(false);
  m_plot.show(std::move(view), m_zoomed);
  m_plot.setCursor(m_cursor, false);
  setDimmed(stale, screenPlotStyle().colours.panel);
  replot(rpQueuedReplot);
}

void EnvelopeCanvas::setCursorTime(double s) {
  m_cursor = s;
  m_plot.setCursor(s, true);
}

void EnvelopeCanvas::restyle() {
  m_plot.setStyle(screenPlotStyle());
  m_plot.setCursor(m_cursor, false);
  replot(rpQueuedReplot);
}

void EnvelopeCanvas::setZoomed(bool zoomed) {
  if (m_zoomed == zoomed) return;
  m_zoomed = zoomed;
  emit zoomChanged();
}

void EnvelopeCanvas::zoomBy(double factor, const QPointF& aboutPixel) {
  const QPointF centre = m_plot.toPlane(aboutPixel);
  xAxis->scaleRange(factor, centre.x());
  yAxis->scaleRange(factor, centre.y());
  setZoomed(true);
  replot(rpQueuedReplot);
}

void EnvelopeCanvas::resetZoom() {
  m_plot.showAll();
  setZoomed(false);
  replot(rpQueuedReplot);
}

void EnvelopeCanvas::panBy(const QPointF& pixels) {
  const QPointF from = m_plot.toPlane({0, 0});
  const QPointF to = m_plot.toPlane(pixels);
  xAxis->moveRange(from.x() - to.x());
  yAxis->moveRange(from.y() - to.y());
  setZoomed(true);
  replot(rpQueuedReplot);
}

QString EnvelopeCanvas::readingAt(const QPointF& pixel) const {
  if (!axisRect()->rect().contains(pixel.toPoint())) return {};
  const EnvelopeView& view = m_plot.view();
  const int sample = m_plot.sampleNear(pixel, kReach);
  const QPointF at = sample < 0 ? m_plot.toPlane(pixel)
                                : QPointF(view.track.speed[sample], view.track.torque[sample]);
  QString text = QStringLiteral("%1 rpm  ·  %2 N·m").arg(numberText(at.x(), 4), numberText(at.y()));
  if (sample >= 0)
    text.prepend(QStringLiteral("path at %1 s  ·  ").arg(fixedNumber(view.time[sample], 3)));
  return text + limitText(QStringLiteral("peak"), view.peak, at) +
         limitText(QStringLiteral("continuous"), view.lasting, at);
}

void EnvelopeCanvas::mousePressEvent(QMouseEvent* event) {
  if (event->button() == Qt::RightButton) return event->ignore();
  m_pressed = m_last = event->position();
  m_dragging = false;
}

void EnvelopeCanvas::mouseMoveEvent(QMouseEvent* event) {
  emit hovered(readingAt(event->position()));
  const bool pressed = event->buttons() & (Qt::LeftButton | Qt::MiddleButton);
  if (!pressed) return;
  if (!m_dragging && (event->position() - m_pressed).manhattanLength() < 4) return;
  m_dragging = true;
  setCursor(Qt::ClosedHandCursor);
  panBy(event->position() - m_last);
  m_last = event->position();
}

void EnvelopeCanvas::mouseReleaseEvent(QMouseEvent* event) {
  unsetCursor();
  if (m_dragging || event->button() != Qt::LeftButton) return;
  const int sample = m_plot.sampleNear(event->position(), kReach);
  if (sample >= 0) emit cursorPicked(m_plot.view().time[sample]);
}

void EnvelopeCanvas::mouseDoubleClickEvent(QMouseEvent*) { resetZoom(); }

void EnvelopeCanvas::wheelEvent(QWheelEvent* event) {
  zoomBy(std::pow(0.85, event->angleDelta().y() / 120.0), event->position());
  event->accept();
}

void EnvelopeCanvas::leaveEvent(QEvent* event) {
  PlotCanvas::leaveEvent(event);
  emit hovered({});
}

}  // namespace jw

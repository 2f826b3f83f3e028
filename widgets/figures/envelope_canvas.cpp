#include "widgets/figures/envelope_canvas.h"

#include <cmath>

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

EnvelopeCanvas::EnvelopeCanvas(QWidget* parent) : PlaneCanvas(parent), m_plot(*this) {}

void EnvelopeCanvas::showView(EnvelopeView view, bool axesChanged) {
  const bool stale = view.stale;
  if (axesChanged) setZoomed(false);
  m_plot.show(std::move(view), isZoomed());
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

QString EnvelopeCanvas::readingAt(const QPointF& pixel) const {
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

void EnvelopeCanvas::pick(const QPointF& pixel) {
  const int sample = m_plot.sampleNear(pixel, kReach);
  if (sample >= 0) emit cursorPicked(m_plot.view().time[sample]);
}

}  // namespace jw

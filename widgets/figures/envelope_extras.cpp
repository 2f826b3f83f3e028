#include "widgets/figures/envelope_extras.h"

#include <algorithm>
#include <cmath>

#include "core/studies/contour_lines.h"
#include "widgets/figures/finite.h"
#include "widgets/theme/number_text.h"

namespace jw {
namespace {

// Whether the band is wide enough to be seen: half a percent of the largest torque anywhere.
bool isWide(const EnvelopeBand& band) {
  const double top = band.outer.torque.maxCoeff();
  return ((band.outer.torque - band.inner.torque).abs() > 0.005 * top).any();
}

QString bandName(const QString& which, const QString& bound, double voltage, double nominal) {
  if (!isSet(voltage) || voltage == nominal) return which + QStringLiteral(", cold to hot");
  return QStringLiteral("%1, %2 %3")
      .arg(which, bound, quantityText(voltage, Quantity::Voltage, "V"));
}

void addBand(EnvelopeView& view, const Supply& supply, const EnvelopeBand& band,
             const EnvelopeScale& scale) {
  if (!isWide(band)) return;
  view.weakest = curveOf(band.inner, scale);
  view.strongest = curveOf(band.outer, scale);
  view.weakestName = bandName("weakest", "down to", supply.voltageMin, supply.voltage);
  view.strongestName = bandName("strongest", "up to", supply.voltageMax, supply.voltage);
}

// A curve in shares of the plane's extent, so that its length says how long it looks.
double lengthSeen(const ContourLine& line, double speed, double torque) {
  double length = 0;
  for (std::size_t i = 1; i < line.points.size(); ++i) {
    const Eigen::Vector2d step = line.points[i] - line.points[i - 1];
    length += std::hypot(step.x() / speed, step.y() / torque);
  }
  return length;
}

EfficiencyLine efficiencyLine(double percent, const ContourLine& line, const EnvelopeScale& scale) {
  EfficiencyLine out{QStringLiteral("%1 %").arg(percent), {}, {}};
  for (const Eigen::Vector2d& p : line.points) {
    out.points.speed << p.x() * scale.speed;
    out.points.torque << p.y() * scale.torque;
  }
  return out;
}

// Levels follow the share of the middle of a line at which its label stands, so that the labels of
// neighbours stand apart.
void addEfficiency(EnvelopeView& view, const LossMap& map, const EnvelopeScale& scale) {
  constexpr double kLabelled = 0.25;  // of the plane's half extent
  const double speed = map.speed.maxCoeff();
  const double torque = map.torque.maxCoeff();
  double share = 0.3;
  for (const double percent : {50.0, 70.0, 80.0, 85.0, 90.0, 95.0}) {
    for (const ContourLine& line :
         contourLines(map.speed, map.torque, map.efficiency, percent / 100)) {
      const double length = lengthSeen(line, speed, torque);
      if (length < 0.05) continue;
      EfficiencyLine shown = efficiencyLine(percent, line, scale);
      const auto at = qsizetype(share * double(shown.points.speed.size() - 1));
      if (length > kLabelled) shown.labelAt = {shown.points.speed[at], shown.points.torque[at]};
      view.efficiency.push_back(std::move(shown));
    }
    share += 0.08;
  }
}

}  // namespace

PlaneCurve curveOf(const EnvelopeCurve& curve, const EnvelopeScale& scale) {
  return {plotValues(curve.speed, scale.speed), plotValues(curve.torque, scale.torque)};
}

void addExtras(EnvelopeView& view, const Project& project, const PlotStudies& studies,
               const EnvelopeExtras& extras, const EnvelopeScale& scale) {
  if (extras.band && studies.band) addBand(view, project.active().supply, *studies.band, scale);
  if (extras.band && studies.intermittent) {
    view.shortTime = curveOf(*studies.intermittent, scale);
    view.shortTimeName = QStringLiteral("S2 %1").arg(durationText(project.requirements.onTime));
  }
  if (extras.efficiency && studies.losses) addEfficiency(view, *studies.losses, scale);
}

}  // namespace jw

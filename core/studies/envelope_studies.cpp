#include "core/studies/envelope_studies.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>
#include <vector>

#include "core/physics/controller_overload.h"
#include "core/physics/motor_heat.h"

namespace jw {
namespace {

using Eigen::ArrayXd;
using Eigen::Index;

/// The four extremes of temperature and voltage.
std::vector<EnvelopeLimits> extremes(const Project& project, const MotorConstants& atReference) {
  Variant variant = project.active();
  const Motor& motor = variant.motor;
  const double ambient = project.requirements.ambient;
  const double hot = deratedLimit(windingLimit(motor), ambient, project.requirements.altitude);
  const Supply given = variant.supply;
  std::vector<EnvelopeLimits> all;
  for (const double voltage : {given.voltageMin, given.voltageMax}) {
    variant.supply.voltage = isSet(voltage) ? voltage : given.voltage;
    for (const double temperature : {ambient, hot}) {
      all.push_back(
          envelopeLimits(variant, atTemperature(atReference, motor, temperature, temperature)));
    }
  }
  return all;
}

double torqueOrNothing(const EnvelopeLimits& limits, double speed) {
  if (std::abs(speed) > limits.speed) return 0;
  const double torque = limits.highestTorque(speed);
  return isSet(torque) ? std::max(0.0, torque) : 0;
}

/// Speeds of the drawn envelope, stretched to the fastest of the extremes.
ArrayXd stretchedSpeeds(const EnvelopeCurve& peak, const std::vector<EnvelopeLimits>& all) {
  const Index n = (peak.speed.size() - 1) / 2;
  double farthest = peak.speed[n - 1];
  for (const EnvelopeLimits& limits : all) {
    if (std::isfinite(limits.speed)) farthest = std::max(farthest, limits.speed);
  }
  return peak.speed.head(n) * (farthest / peak.speed[n - 1]);
}

EnvelopeCurve mirrored(const ArrayXd& speed, const ArrayXd& upper) {
  const Index n = speed.size();
  EnvelopeCurve curve{ArrayXd(2 * n + 1), ArrayXd(2 * n + 1)};
  curve.speed << speed, -speed, speed[0];
  curve.torque << upper, -upper, upper[0];
  return curve;
}

}  // namespace

std::optional<EnvelopeBand> envelopeBand(const Project& project, const Evaluation& evaluation) {
  const auto converted = convertMotor(project.active().motor);
  if (!evaluation.envelope || !converted) return std::nullopt;
  const std::vector<EnvelopeLimits> all = extremes(project, converted->constants);
  const ArrayXd speed = stretchedSpeeds(evaluation.envelope->peak, all);
  ArrayXd low = ArrayXd::Constant(speed.size(), std::numeric_limits<double>::infinity());
  ArrayXd high = ArrayXd::Zero(speed.size());
  for (Index i = 0; i < speed.size(); ++i) {
    for (const EnvelopeLimits& limits : all) {
      const double torque = torqueOrNothing(limits, speed[i]);
      low[i] = std::min(low[i], torque);
      high[i] = std::max(high[i], torque);
    }
  }
  return EnvelopeBand{mirrored(speed, low), mirrored(speed, high)};
}

std::optional<EnvelopeCurve> intermittentCurve(const Project& project,
                                               const Evaluation& evaluation) {
  const double onTime = project.requirements.onTime;
  if (!evaluation.envelope || !evaluation.envelope->continuous || !isSet(onTime)) return {};
  const auto network = heatNetwork(project.active().motor, project.requirements.ambient);
  if (!network) return std::nullopt;
  const TorqueEnvelope& envelope = *evaluation.envelope;
  const ContinuousLimit& limit = *envelope.continuous;
  const double hottest = limit.ambient + limit.rise;
  // The multiple changes slowly with speed: a few exact values, straight lines between them.
  constexpr Index kNodes = 9;
  const Index n = (envelope.peak.speed.size() - 1) / 2;
  const double last = envelope.peak.speed[n - 1];
  std::array<double, kNodes> current{};
  for (Index k = 0; k < kNodes; ++k) {
    const double speed = last * static_cast<double>(k) / (kNodes - 1);
    const double housing = limit.machine.drag(speed) * speed;
    current[k] = limit.current(speed) * allowedOnce(*network, housing, hottest, onTime);
  }
  ArrayXd torque(n);
  for (Index i = 0; i < n; ++i) {
    const double speed = envelope.peak.speed[i];
    const double place = std::abs(speed) / last * (kNodes - 1);
    const auto at = std::min(static_cast<Index>(place), kNodes - 2);
    const double share = place - static_cast<double>(at);
    const double amps = current[at] * (1 - share) + current[at + 1] * share;
    torque[i] = std::min(limit.machine.torquePerAmp * amps - limit.machine.drag(speed),
                         envelope.peak.torque[i]);
  }
  return mirrored(envelope.peak.speed.head(n), torque);
}

std::optional<LossMap> lossMap(const Evaluation& evaluation) {
  if (!evaluation.envelope) return std::nullopt;
  constexpr Index kColumns = 81;
  constexpr Index kRows = 81;
  const TorqueEnvelope& envelope = *evaluation.envelope;
  const EnvelopeLimits& limits = envelope.limits;
  const double top = envelope.peak.torque.maxCoeff();
  LossMap map;
  map.speed.setLinSpaced(kColumns, envelope.peak.speed.minCoeff(), envelope.peak.speed.maxCoeff());
  map.torque.setLinSpaced(kRows, -top, top);
  map.loss.setConstant(kRows, kColumns, kUnset);
  map.efficiency.setConstant(kRows, kColumns, kUnset);
  for (Index c = 0; c < kColumns; ++c) {
    const double speed = map.speed[c];
    const double high = limits.highestTorque(speed);
    const double low = limits.lowestTorque(speed);
    for (Index r = 0; r < kRows; ++r) {
      const double torque = map.torque[r];
      if (!(torque <= high) || !(torque >= low)) continue;
      const double amps = limits.operatingPoint(speed, torque).amplitude();
      const MotorConstants& m = limits.machine;
      const double loss = m.copperLoss(amps) + m.drag(speed) * speed +
                          controllerLoss(limits.controller, amps * m.rmsFactor());
      const double power = torque * speed;
      map.loss(r, c) = loss;
      if (power > 0) map.efficiency(r, c) = power / (power + loss);
      if (power < 0) map.efficiency(r, c) = std::max(0.0, (-power - loss) / -power);
    }
  }
  return map;
}

}  // namespace jw

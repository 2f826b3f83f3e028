#include "core/physics/torque_envelope.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <numbers>

#include "core/physics/bracketed_root.h"

namespace jw {
namespace {

constexpr double kInfinity = std::numeric_limits<double>::infinity();

/// Squared voltage amplitude that current i takes at a speed, with i_d = 0.
double squaredVoltage(const MotorConstants& m, double speed, double i) {
  const double q = m.resistance * i + m.emfPerSpeed * speed;
  const double d = m.polePairs * speed * m.inductance * i;
  return q * q + d * d;
}

/// Largest root of a x² + 2 h x + c = 0; NaN if there is none.
double largerRoot(double a, double h, double c) {
  const double discriminant = h * h - a * c;
  if (discriminant < 0) return std::numeric_limits<double>::quiet_NaN();
  // The form without cancellation.
  const double root = std::sqrt(discriminant);
  return h > 0 ? -c / (h + root) : (root - h) / a;
}

/// Speed at which `current` takes the whole voltage; 0 if it does so at rest.
double cornerSpeedOf(const EnvelopeLimits& limits) {
  const MotorConstants& m = limits.machine;
  if (!std::isfinite(limits.current) || m.resistance * limits.current >= limits.voltage) return 0;
  const double reactance = m.polePairs * m.inductance * limits.current;
  const double drop = m.resistance * limits.current;
  return largerRoot(m.emfPerSpeed * m.emfPerSpeed + reactance * reactance, drop * m.emfPerSpeed,
                    drop * drop - limits.voltage * limits.voltage);
}

/// Speed at which the voltage leaves no shaft torque: all the current goes into drag.
double noLoadSpeedOf(const EnvelopeLimits& limits) {
  const double ideal = limits.voltage / limits.machine.emfPerSpeed;
  const auto shaftTorque = [&](double speed) { return limits.highestTorque(speed); };
  if (shaftTorque(ideal) >= 0) return ideal;
  const double nearRest = ideal * 1e-12;
  if (shaftTorque(nearRest) <= 0) return 0;
  return bracketedRoot(shaftTorque, nearRest, ideal);
}

/// Speeds from -limit to limit with the corner among them, dense enough to look smooth.
Eigen::ArrayXd curveSpeeds(const EnvelopeLimits& limits, double corner) {
  constexpr Eigen::Index kHalf = 64;
  const double knee = std::min(corner, limits.speed);
  Eigen::ArrayXd half(2 * kHalf);
  half.head(kHalf).setLinSpaced(0, knee);
  half.tail(kHalf).setLinSpaced(knee, limits.speed);
  Eigen::ArrayXd speeds(4 * kHalf);
  speeds << -half.reverse(), half;
  return speeds;
}

/// Closed loop: the upper edge from left to right, the lower one (its mirror image) back.
template <class UpperTorque>
EnvelopeCurve closedCurve(const Eigen::ArrayXd& speeds, const UpperTorque& upper) {
  const Eigen::Index n = speeds.size();
  EnvelopeCurve curve{Eigen::ArrayXd(2 * n + 1), Eigen::ArrayXd(2 * n + 1)};
  for (Eigen::Index i = 0; i < n; ++i) {
    curve.speed[i] = speeds[i];
    curve.torque[i] = upper(speeds[i]);
  }
  curve.speed.segment(n, n) = -curve.speed.head(n);
  curve.torque.segment(n, n) = -curve.torque.head(n);
  curve.speed[2 * n] = curve.speed[0];
  curve.torque[2 * n] = curve.torque[0];
  return curve;
}

InputError missing(std::string_view path, std::string_view what) {
  return {std::string(what) + " is not given", std::string(path), "type it in"};
}

/// Total thermal resistance that makes `continuousTorque` lasting at standstill and rating ambient.
double resistanceFromRating(const Motor& motor, const MotorConstants& hot) {
  const double i = motor.continuousTorque / hot.torquePerAmp;
  return (motor.windingTemperatureMax - motor.ratingAmbient) / hot.copperLoss(i);
}

double smallerSet(double a, double b) {
  if (!isSet(a)) return isSet(b) ? b : kInfinity;
  return isSet(b) ? std::min(a, b) : a;
}

EnvelopeLimits limitsOf(const Variant& variant, const MotorConstants& machine) {
  const Motor& motor = variant.motor;
  const Controller& controller = variant.controller;
  EnvelopeLimits limits;
  limits.machine = machine;
  limits.voltage = voltageLimit(variant.supply.voltage, controller.modulation, machine.direct);
  limits.current =
      smallerSet(amplitudeOf(machine, motor.currentPeak, motor.currentPeakMeasure),
                 amplitudeOf(machine, controller.currentPeak, controller.currentMeasure));
  return limits;
}

}  // namespace

double voltageLimit(double busVoltage, Modulation modulation, bool direct) {
  if (direct) return busVoltage;
  switch (modulation) {
    case Modulation::SpaceVector:
      return busVoltage / std::numbers::sqrt3;
    case Modulation::SineTriangle:
      return busVoltage / 2;
    case Modulation::SixStep:
      return 2 * busVoltage / std::numbers::pi;
  }
  throw std::logic_error("unknown modulation");
}

double EnvelopeLimits::voltageCurrent(double atSpeed) const {
  const MotorConstants& m = machine;
  const double reactance = m.polePairs * atSpeed * m.inductance;
  const double emf = m.emfPerSpeed * atSpeed;
  return largerRoot(m.resistance * m.resistance + reactance * reactance, m.resistance * emf,
                    emf * emf - voltage * voltage);
}

double EnvelopeLimits::highestTorque(double atSpeed) const {
  const double byVoltage = voltageCurrent(atSpeed);
  if (std::isnan(byVoltage)) return byVoltage;
  return machine.torquePerAmp * std::min(current, byVoltage) - machine.drag(atSpeed);
}

bool EnvelopeLimits::contains(double atSpeed, double torque) const {
  if (!(std::abs(atSpeed) <= speed)) return false;
  const double i = (torque + machine.drag(atSpeed)) / machine.torquePerAmp;
  return std::abs(i) <= current && squaredVoltage(machine, atSpeed, i) <= voltage * voltage;
}

double EnvelopeLimits::rayFactor(double atSpeed, double torque) const {
  if (atSpeed == 0 && torque == 0) return kInfinity;
  if (speed == 0 || voltage == 0) return 0;
  // Positive inside the envelope, negative outside, falling along the ray.
  const auto room = [&](double factor) {
    const double w = factor * atSpeed;
    const double i = (factor * torque + machine.drag(w)) / machine.torquePerAmp;
    const double bySpeed = 1 - std::abs(w) / speed;
    const double byCurrent = 1 - std::abs(i) / current;
    const double byVoltage = 1 - squaredVoltage(machine, w, i) / (voltage * voltage);
    return std::min({bySpeed, byCurrent, byVoltage});
  };
  double outside = 1;
  while (room(outside) > 0 && outside < 1e12) outside *= 2;
  if (room(outside) > 0) return kInfinity;
  if (room(0) <= 0) return 0;
  return bracketedRoot(room, 0, outside);
}

double ContinuousLimit::current(double speed) const {
  const double dragLoss = machine.drag(speed) * speed;
  const double allowed = (rise - dragLoss * housing) / (winding + housing);
  return allowed > 0 ? std::sqrt(allowed / machine.copperLoss(1)) : 0;
}

tl::expected<ContinuousLimit, InputError> continuousLimit(const Motor& motor,
                                                          const MotorConstants& atReference,
                                                          double ambient) {
  const double limit = motor.windingTemperatureMax;
  const bool split = isSet(motor.thermalResistanceWinding) && isSet(motor.thermalResistanceHousing);
  if (!split && !isSet(motor.continuousTorque)) {
    return tl::unexpected(
        missing("motor.continuousTorque", "the continuous torque (or both thermal resistances)"));
  }
  if (limit <= ambient || (!split && limit <= motor.ratingAmbient)) {
    return tl::unexpected(InputError{"the winding limit is not above the ambient",
                                     "motor.windingTemperatureMax",
                                     "a winding limit above the ambient, e.g. 155 °C"});
  }
  ContinuousLimit result;
  result.rise = limit - ambient;
  result.ambient = ambient;
  if (split) {
    result.winding = motor.thermalResistanceWinding;
    result.housing = motor.thermalResistanceHousing;
  } else {
    result.housing = resistanceFromRating(motor, atTemperature(atReference, motor, limit, limit));
  }
  const double share = result.housing / (result.housing + result.winding);
  result.machine = atTemperature(atReference, motor, limit, ambient + share * result.rise);
  return result;
}

double TorqueEnvelope::continuousTorque(double speed) const {
  if (!continuous) return kUnset;
  // Near the no-load speed the hot machine's own voltage limit is the nearer one.
  EnvelopeLimits hot = limits;
  hot.machine = continuous->machine;
  hot.current = std::min({continuous->current(speed), continuousCurrent, limits.current});
  const double torque = std::min(hot.highestTorque(speed), limits.highestTorque(speed));
  return speed > 0 ? std::max(torque, 0.0) : torque;
}

tl::expected<TorqueEnvelope, InputError> torqueEnvelope(
    const Variant& variant, const MotorConstants& inUse,
    const std::optional<ContinuousLimit>& continuous) {
  if (!isSet(variant.supply.voltage)) {
    return tl::unexpected(missing("supply.voltage", "the bus voltage"));
  }
  TorqueEnvelope envelope;
  EnvelopeLimits& limits = envelope.limits;
  limits = limitsOf(variant, inUse);
  envelope.noLoadSpeed = noLoadSpeedOf(limits);
  limits.speed = smallerSet(variant.motor.maxSpeed, envelope.noLoadSpeed);
  envelope.stallTorque = limits.highestTorque(0);
  envelope.cornerSpeed = cornerSpeedOf(limits);
  const double lasting =
      amplitudeOf(inUse, variant.controller.currentContinuous, variant.controller.currentMeasure);
  envelope.continuousCurrent = isSet(lasting) ? lasting : kInfinity;
  envelope.continuous = continuous;
  const Eigen::ArrayXd speeds = curveSpeeds(limits, envelope.cornerSpeed);
  envelope.peak = closedCurve(speeds, [&](double w) { return limits.highestTorque(w); });
  if (continuous) {
    envelope.lasting = closedCurve(speeds, [&](double w) { return envelope.continuousTorque(w); });
  }
  return envelope;
}

}  // namespace jw

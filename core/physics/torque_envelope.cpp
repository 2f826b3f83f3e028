#include "core/physics/torque_envelope.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <numbers>

#include "core/physics/bracketed_root.h"
#include "core/physics/bus_energy.h"
#include "core/physics/closed_curve.h"
#include "core/physics/controller_overload.h"

namespace jw {
namespace {

constexpr double kInfinity = std::numeric_limits<double>::infinity();

/// Largest root of a x² + 2 h x + c = 0; NaN if there is none.
double largerRoot(double a, double h, double c) {
  const double discriminant = h * h - a * c;
  if (discriminant < 0) return std::numeric_limits<double>::quiet_NaN();
  // The form without cancellation.
  const double root = std::sqrt(discriminant);
  return h > 0 ? -c / (h + root) : (root - h) / a;
}

/// Currents of the flat part of the envelope.
DqCurrent flatCurrent(const EnvelopeLimits& limits) {
  if (!limits.weakening || limits.machine.direct) return {0, limits.current};
  return limits.machine.dq().mostTorquePerAmp(limits.current);
}

/// Speed at which the current limit takes the whole voltage of a bus that does not sag.
double stiffCorner(const EnvelopeLimits& limits, const DqCurrent& i) {
  const MotorConstants& m = limits.machine;
  const double flux = m.emfPerSpeed + m.polePairs * m.inductance * i.d;
  const double cross = m.polePairs * m.inductanceQ * i.q;
  const double drop = m.resistance * limits.current;
  return largerRoot(flux * flux + cross * cross, m.resistance * (i.q * flux - i.d * cross),
                    drop * drop - limits.voltage * limits.voltage);
}

/// Speed at which the current limit takes the whole voltage that its own power leaves of the bus; 0
/// if it does so at rest.
double cornerSpeedOf(const EnvelopeLimits& limits) {
  const MotorConstants& m = limits.machine;
  if (!std::isfinite(limits.current)) return 0;
  const DqCurrent i = flatCurrent(limits);
  const double mostPower = limits.busVoltage * limits.busVoltage / (4 * limits.sourceResistance);
  const auto room = [&](double speed) {
    const double byVoltage = limits.voltageUnder(i, speed) - m.voltage(i, speed);
    return limits.sourceResistance == 0 || limits.busPower(i, speed) <= mostPower ? byVoltage
                                                                                  : -limits.voltage;
  };
  if (!(room(0) > 0)) return 0;
  const double stiff = stiffCorner(limits, i);
  return limits.sourceResistance == 0 ? stiff : bracketedRoot(room, 0, stiff);
}

/// Speed at which the voltage leaves no shaft torque: all the current goes into drag.
double noLoadSpeedOf(const EnvelopeLimits& limits) {
  constexpr double kFarthest = 1e4;  // times the speed without field weakening
  const double ideal = limits.voltage / limits.machine.emfPerSpeed;
  const auto shaftTorque = [&](double speed) {
    const double torque = limits.highestTorque(speed);
    return isSet(torque) ? torque : -1.0;
  };
  double from = ideal * 1e-12;
  if (shaftTorque(from) <= 0) return 0;
  double to = ideal;
  while (shaftTorque(to) > 0) {
    if (!limits.weakening || to > kFarthest * ideal) return limits.weakening ? kInfinity : to;
    from = to;
    to *= 1.5;
  }
  return shaftTorque(to) == 0 ? to : bracketedRoot(shaftTorque, from, to);
}

/// Speeds from -limit to limit with the corner among them, dense enough to look smooth.
Eigen::ArrayXd curveSpeeds(const EnvelopeLimits& limits, double corner) {
  const double ideal = limits.voltage / limits.machine.emfPerSpeed;
  const double last = std::isfinite(limits.speed) ? limits.speed : 4 * ideal;
  const double knee = std::clamp(corner, 1e-6 * last, last);
  Eigen::ArrayXd half(2 * kQuarter);
  // Not from 0: drag turns round there, and its step is to be drawn upright.
  half.head(kQuarter).setLinSpaced(1e-9 * last, knee);
  half.tail(kQuarter).setLinSpaced(knee, last);
  Eigen::ArrayXd speeds(4 * kQuarter);
  speeds << -half.reverse(), half;
  return speeds;
}

InputError missing(std::string_view path, std::string_view what) {
  return {std::string(what) + " is not given", std::string(path), "type it in"};
}

/// The factor between 0 and `outside` at which `inside` turns false, to 1e-13 of itself.
template <class Inside>
double edgeByHalving(const Inside& inside, double outside) {
  double low = outside > 1 ? outside / 2 : 0;
  double high = outside;
  while (high - low > 1e-13 * high && high > 1e-300) {
    const double middle = (low + high) / 2;
    (inside(middle) ? low : high) = middle;
  }
  return low;
}

double smallerSet(double a, double b) {
  if (!isSet(a)) return isSet(b) ? b : kInfinity;
  return isSet(b) ? std::min(a, b) : a;
}

}  // namespace

EnvelopeLimits envelopeLimits(const Variant& variant, const MotorConstants& machine) {
  const Motor& motor = variant.motor;
  EnvelopeLimits limits;
  limits.machine = machine;
  limits.controller = variant.controller;
  limits.controller.asWritten = {};
  limits.weakening = variant.controller.fieldWeakening && !machine.direct;
  limits.busVoltage = variant.supply.voltage;
  limits.sourceResistance = variant.supply.sourceResistance;
  limits.voltage = (1 - variant.controller.voltageReserve) *
                   voltageLimit(limits.busVoltage, limits.controller.modulation, machine.direct);
  limits.current = smallerSet(
      amplitudeOf(machine, motor.currentPeak, motor.currentPeakMeasure),
      amplitudeOf(machine, limits.controller.currentPeak, limits.controller.currentMeasure));
  limits.noLoadSpeed = noLoadSpeedOf(limits);
  limits.speed = smallerSet(motor.maxSpeed, limits.noLoadSpeed);
  return limits;
}

double voltageLimit(double busVoltage, Modulation modulation, bool direct) {
  if (direct) return busVoltage;
  switch (modulation) {
    case Modulation::SpaceVector: return busVoltage / std::numbers::sqrt3;
    case Modulation::SineTriangle: return busVoltage / 2;
    case Modulation::SixStep: return 2 * busVoltage / std::numbers::pi;
  }
  throw std::logic_error("unknown modulation");
}

/// The same at another voltage amplitude [V].
double EnvelopeLimits::currentUnder(double amplitude, double atSpeed) const {
  const MotorConstants& m = machine;
  const double reactance = m.polePairs * atSpeed * m.inductanceQ;
  const double emf = m.emfPerSpeed * atSpeed;
  return largerRoot(m.resistance * m.resistance + reactance * reactance, m.resistance * emf,
                    emf * emf - amplitude * amplitude);
}

SaggingVoltage EnvelopeLimits::source(double mechanicalPower) const {
  const double rms = machine.rmsFactor();
  return {.stiff = voltage,
          .sag = 4 * sourceResistance / (busVoltage * busVoltage),
          .fixedPower = mechanicalPower + controller.idlePower,
          .perAmp = controller.lossPerAmpere * rms,
          .perSquare = machine.copperLoss(1) + controller.lossResistance * rms * rms};
}

double EnvelopeLimits::busPower(const DqCurrent& i, double atSpeed) const {
  return source(machine.torque(i) * atSpeed).power(i.amplitude());
}

double EnvelopeLimits::voltageUnder(const DqCurrent& i, double atSpeed) const {
  if (sourceResistance == 0) return voltage;
  const double left = source(machine.torque(i) * atSpeed).at(i.amplitude());
  return isSet(left) ? left : voltage / 2;
}

std::optional<DqCurrent> EnvelopeLimits::strongestAt(double atSpeed, double amplitude,
                                                     double most) const {
  if (weakening) return machine.dq().strongest(atSpeed, amplitude, most);
  const double byVoltage = currentUnder(amplitude, atSpeed);
  if (!isSet(byVoltage)) return std::nullopt;
  return DqCurrent{0, std::min(most, byVoltage)};
}

/// With weakening on a sagging bus: the largest torque that has an operating point within the
/// current. Less current may be stronger there, as it leaves more voltage. By halving, until
/// current alone forbids the larger torque; from there on by the root of what is left of it.
std::optional<DqCurrent> EnvelopeLimits::strongestWeakened(double atSpeed, double stiff) const {
  const DqMachine dq = machine.dq();
  const auto pointFor = [&](double made) {
    return dq.operatingPoint(atSpeed, made, source(made * atSpeed));
  };
  const auto left = [&](double made) {
    const auto i = pointFor(made);
    return i ? current - i->amplitude() : kUnset;
  };
  constexpr double kClose = 1e-7;
  double low = 0;
  double high = stiff * (1 - kClose);
  if (left(high) >= 0) return pointFor(high);
  if (!(left(low) >= 0)) {
    const auto back = strongestAt(-atSpeed, voltage, current);
    if (back) low = -machine.torque(*back) * (1 - 1e-12);
    if (!(left(low) >= 0)) return std::nullopt;
  }
  for (int pass = 0; pass < 60 && high - low > kClose * std::abs(stiff); ++pass) {
    const double middle = (low + high) / 2;
    const double rest = left(middle);
    if (rest < 0) {
      const double edge = bracketedRoot(left, low, middle);
      return pointFor(left(edge) >= 0 ? edge : edge - kClose * std::abs(stiff));
    }
    (isSet(rest) ? low : high) = middle;
  }
  return pointFor(low);
}

/// Without weakening, at half the bus voltage, the source gives the most that it can: less current,
/// until that is enough.
std::optional<DqCurrent> EnvelopeLimits::mostFromSource(double atSpeed) const {
  const auto free = strongestAt(atSpeed, voltage / 2, current);
  const double most = busVoltage * busVoltage / (4 * sourceResistance);
  if (!free || busPower(*free, atSpeed) <= most) return free;
  const auto excess = [&](double amplitude) {
    const auto i = strongestAt(atSpeed, voltage / 2, amplitude);
    return i ? busPower(*i, atSpeed) - most : -most;
  };
  return strongestAt(atSpeed, voltage / 2, bracketedRoot(excess, 0, free->amplitude()));
}

std::optional<DqCurrent> EnvelopeLimits::strongest(double atSpeed) const {
  const auto stiff = strongestAt(atSpeed, voltage, current);
  if (!stiff || sourceResistance == 0 || voltageUnder(*stiff, atSpeed) >= voltage) return stiff;
  if (weakening) return strongestWeakened(atSpeed, machine.torque(*stiff));
  const auto surplus = [&](double amplitude) {
    const auto i = strongestAt(atSpeed, amplitude, current);
    return (i ? voltageUnder(*i, atSpeed) : voltage) - amplitude;
  };
  if (surplus(voltage / 2) <= 0) return mostFromSource(atSpeed);
  return strongestAt(atSpeed, bracketedRoot(surplus, voltage / 2, voltage), current);
}

double EnvelopeLimits::highestTorque(double atSpeed) const {
  const auto i = strongest(atSpeed);
  return i ? machine.torque(*i) - machine.drag(atSpeed) : kUnset;
}

/// Without weakening: positive inside the envelope, negative outside, falling along a ray from the
/// origin.
double EnvelopeLimits::room(double atSpeed, double torque) const {
  const double bySpeed = 1 - std::abs(atSpeed) / speed;
  const DqCurrent i{0, (torque + machine.drag(atSpeed)) / machine.torquePerAmp};
  const double byCurrent = 1 - std::abs(i.q) / current;
  const double byVoltage = 1 - machine.voltage(i, atSpeed) / voltageUnder(i, atSpeed);
  if (sourceResistance == 0) return std::min({bySpeed, byCurrent, byVoltage});
  const double most = busVoltage * busVoltage / (4 * sourceResistance);
  return std::min({bySpeed, byCurrent, byVoltage, 1 - busPower(i, atSpeed) / most});
}

std::optional<DqCurrent> EnvelopeLimits::feasiblePoint(double atSpeed, double torque) const {
  const double made = torque + machine.drag(atSpeed);
  return machine.dq().operatingPoint(atSpeed, made, source(made * atSpeed));
}

bool EnvelopeLimits::contains(double atSpeed, double torque) const {
  if (!(speed > 0) || !(voltage > 0)) return false;
  if (!weakening) return room(atSpeed, torque) >= 0;
  if (std::abs(atSpeed) > speed) return false;
  const auto i = feasiblePoint(atSpeed, torque);
  return i && i->amplitude() <= current;
}

double EnvelopeLimits::rayFactor(double atSpeed, double torque) const {
  if (atSpeed == 0 && torque == 0) return kInfinity;
  if (speed == 0 || voltage == 0) return 0;
  const auto inside = [&](double factor) { return contains(factor * atSpeed, factor * torque); };
  double outside = 1;
  while (inside(outside) && outside < 1e12) outside *= 2;
  if (inside(outside)) return kInfinity;
  if (!inside(0)) return 0;
  if (weakening) return edgeByHalving(inside, outside);
  return bracketedRoot([&](double f) { return room(f * atSpeed, f * torque); }, 0, outside);
}

DqCurrent EnvelopeLimits::operatingPoint(double atSpeed, double torque) const {
  const double made = torque + machine.drag(atSpeed);
  if (!weakening) return {0, made / machine.torquePerAmp};
  const auto i = feasiblePoint(atSpeed, torque);
  return i ? *i : machine.dq().leastCurrent(made);
}

double TorqueEnvelope::continuousTorque(double speed) const {
  return continuous ? lastingBelow(limits.highestTorque(speed), speed) : kUnset;
}

double TorqueEnvelope::lastingBelow(double highest, double speed) const {
  // Near the no-load speed the hot machine's own voltage limit is the nearer one.
  EnvelopeLimits hot = limits;
  hot.machine = continuous->machine;
  hot.current = std::min({continuous->current(speed), continuousCurrent, limits.current});
  const double warm = hot.highestTorque(speed);
  // Too little lasting current to weaken the field that far: nothing lasts at this speed.
  if (!isSet(warm)) return 0;
  const double torque = std::min(warm, highest);
  return speed > 0 ? std::max(torque, 0.0) : torque;
}

namespace {

/// Whether a point of the edge takes a search: field weakening on a bus that sags or with unequal
/// inductances.
bool isCostly(const EnvelopeLimits& limits) {
  return limits.weakening && (limits.sourceResistance > 0 || limits.machine.dq().salient());
}

EnvelopeCurve peakCurve(const EnvelopeLimits& limits, const Eigen::ArrayXd& speeds) {
  return closedCurve(speeds, isCostly(limits),
                     [&](Eigen::Index i) { return limits.highestTorque(speeds[i]); });
}

/// The limits that the verdicts count with: the same, or those at the lowest bus voltage.
void addLowestVoltage(const Variant& variant, const MotorConstants& inUse,
                      TorqueEnvelope& envelope) {
  envelope.lowest = envelope.limits;
  envelope.lowestPeak = envelope.peak;
  if (!(variant.supply.voltageMin < variant.supply.voltage)) return;
  Variant low = variant;
  low.supply.voltage = variant.supply.voltageMin;
  const EnvelopeLimits& limits = envelope.lowest = envelopeLimits(low, inUse);
  envelope.lowestPeak = peakCurve(limits, curveSpeeds(limits, cornerSpeedOf(limits)));
}

}  // namespace

tl::expected<TorqueEnvelope, InputError> torqueEnvelope(
    const Variant& variant, const MotorConstants& inUse,
    const std::optional<ContinuousLimit>& continuous) {
  if (!isSet(variant.supply.voltage)) {
    return tl::unexpected(missing("supply.voltage", "the bus voltage"));
  }
  TorqueEnvelope envelope;
  EnvelopeLimits& limits = envelope.limits;
  limits = envelopeLimits(variant, inUse);
  envelope.noLoadSpeed = limits.noLoadSpeed;
  envelope.stallTorque = limits.highestTorque(0);
  envelope.cornerSpeed = cornerSpeedOf(limits);
  const double lasting =
      amplitudeOf(inUse, variant.controller.currentContinuous, variant.controller.currentMeasure);
  envelope.continuousCurrent = isSet(lasting) ? lasting : kInfinity;
  envelope.continuous = continuous;
  const Eigen::ArrayXd speeds = curveSpeeds(limits, envelope.cornerSpeed);
  envelope.peak = peakCurve(limits, speeds);
  addLowestVoltage(variant, inUse, envelope);
  if (continuous) {
    envelope.lasting = closedCurve(speeds, isCostly(limits), [&](Eigen::Index i) {
      return envelope.lastingBelow(envelope.peak.torque[i], speeds[i]);
    });
  }
  return envelope;
}

}  // namespace jw

#include "core/studies/screening.h"

#include <algorithm>
#include <cmath>

#include "core/checks/check_writer.h"
#include "core/physics/controller_overload.h"
#include "core/studies/extreme_samples.h"

namespace jw {
namespace {

using Eigen::ArrayXd;
using Eigen::Index;

// Room for rounding: screening and evaluation sum in another order.
constexpr double kHair = 1e-9;

bool exceeds(double demand, double limit) { return demand > limit * (1 + kHair); }

double mean(const SampledCycle& cycle, const ArrayXd& values) {
  return (cycle.weight * values).sum() / cycle.period;
}

/// NaN where the check would be open.
double lastingLimit(const Controller& controller) {
  if (!isSet(controller.heatSink)) return controller.currentContinuous;
  const bool known = isSet(controller.deratingStart) && isSet(controller.deratingEnd);
  return known ? deratedContinuousCurrent(controller) : kUnset;
}

/// Whether a current of a given torque is known to be at least torque over constant: with a round
/// rotor weakening only adds to it.
bool knowsCurrent(const EnvelopeLimits* limits, const MotorConstants& machine) {
  return limits == nullptr || !limits->weakening || machine.inductance == machine.inductanceQ;
}

/// [N²m²] mean square of T + J alpha + drag; `drag` false leaves the drag out.
double meanSquare(const ChainScreen& c, const MotorScreen& m, bool drag) {
  const double j = m.inertia;
  const double own = c.torqueSquare + j * (2 * c.torqueAcceleration + j * c.accelerationSquare);
  if (!drag) return own;
  const double d = m.dragTorque, b = m.dragDamping;
  const double cross =
      d * (c.torqueSign + j * c.accelerationSign) + b * (c.torqueSpeed + j * c.accelerationSpeed);
  return own + 2 * cross + d * d * c.moving + b * (2 * d * c.speedAbs + b * c.speedSquare);
}

bool tooHot(const ChainScreen& chain, const MotorScreen& motor) {
  if (!motor.continuous) return false;
  const double square = meanSquare(chain, motor, false);
  const double speed = std::sqrt(chain.speedSquare);
  const ContinuousLimit& limit = *motor.continuous;
  const double most =
      std::max(0.0, limit.machine.torquePerAmp * limit.current(speed) - limit.machine.drag(speed));
  return square > most * most * (1 + kHair) && square > 0;
}

bool tooMuchCurrent(const ChainScreen& chain, const MotorScreen& motor) {
  if (!motor.currentByTorque || !isSet(motor.currentSquareMax)) return false;
  const double square = meanSquare(chain, motor, true);
  return exceeds(square, motor.currentSquareMax * motor.torquePerAmp * motor.torquePerAmp);
}

double shaftTorque(const ExtremeSample& sample, const MotorScreen& motor) {
  return sample.torque + motor.inertia * sample.acceleration;
}

bool tooHighPeak(const ExtremeSample& sample, const MotorScreen& motor) {
  if (!motor.currentByTorque || !isSet(motor.currentPeakMax)) return false;
  const double sign = sample.speed > 0 ? 1 : (sample.speed < 0 ? -1 : 0);
  const double drag = motor.dragTorque * sign + motor.dragDamping * sample.speed;
  return exceeds(std::abs(shaftTorque(sample, motor) + drag),
                 motor.currentPeakMax * motor.torquePerAmp);
}

bool outside(const ExtremeSample& sample, const MotorScreen& motor) {
  if (!motor.envelope) return false;
  const double torque = shaftTorque(sample, motor);
  if (sample.speed == 0 && torque == 0) return false;
  constexpr double kInside = 1 - kHair;
  return !motor.envelope->contains(kInside * sample.speed, kInside * torque);
}

/// Checks of a stage that look at that stage and what is behind it alone.
constexpr std::string_view kStageChecks[] = {"drive.torque_peak", "drive.torque_average",
                                             "drive.speed_peak",  "drive.speed_average",
                                             "drive.life",        "drive.torque_momentary"};

}  // namespace

ChainScreen closedChain(const Evaluation& evaluation) {
  const SampledCycle& cycle = *evaluation.cycle;
  const StageChain& chain = *evaluation.chain;
  const ArrayXd &torque = chain.motorTorque, &alpha = chain.motorAcceleration,
                &speed = chain.motorSpeed;
  const ArrayXd sign = speed.sign();
  ChainScreen screen;
  screen.torqueSquare = mean(cycle, torque.square());
  screen.torqueAcceleration = mean(cycle, torque * alpha);
  screen.accelerationSquare = mean(cycle, alpha.square());
  screen.torqueSign = mean(cycle, torque * sign);
  screen.torqueSpeed = mean(cycle, torque * speed);
  screen.accelerationSign = mean(cycle, alpha * sign);
  screen.accelerationSpeed = mean(cycle, alpha * speed);
  screen.moving = mean(cycle, sign.abs());
  screen.speedAbs = mean(cycle, speed.abs());
  screen.speedSquare = mean(cycle, speed.square());
  screen.speedPeak = speed.abs().maxCoeff();
  screen.inertia = chain.inertiaAtMotor;
  for (const Index at : extremeSamples(speed, torque, alpha, kMostExtremes)) {
    screen.extremes[screen.extremeCount++] = {speed[at], torque[at], alpha[at]};
  }
  return screen;
}

MotorScreen motorScreen(const Project& project, const Evaluation& evaluation) {
  MotorScreen screen;
  const Variant& variant = project.active();
  screen.inertia = variant.motor.rotorInertia + variant.motor.brakeInertia;
  screen.inertiaRatioMax = project.requirements.inertiaRatioMax;
  if (evaluation.envelope) {
    screen.envelope = evaluation.envelope->lowest;
    screen.speedMax = evaluation.envelope->lowest.speed;
    screen.continuous = evaluation.envelope->continuous;
  }
  if (!evaluation.motor) {
    screen.envelope.reset();
    return screen;
  }
  const MotorConstants& machine = *evaluation.motor;
  screen.torquePerAmp = machine.torquePerAmp;
  screen.dragTorque = machine.dragTorque;
  screen.dragDamping = machine.dragDamping;
  screen.currentByTorque =
      knowsCurrent(evaluation.envelope ? &evaluation.envelope->limits : nullptr, machine);
  const Controller& controller = variant.controller;
  const double lasting = amplitudeOf(machine, lastingLimit(controller), controller.currentMeasure);
  screen.currentSquareMax = lasting * lasting;
  screen.currentPeakMax = amplitudeOf(machine, controller.currentPeak, controller.currentMeasure);
  return screen;
}

std::string_view checkOf(Rejection rejection) {
  constexpr std::string_view kChecks[kRejections] = {"",
                                                     "motor.speed",
                                                     "joint.inertia_ratio",
                                                     "motor.continuous",
                                                     "controller.current_rms",
                                                     "controller.current_peak",
                                                     "motor.torque"};
  return kChecks[static_cast<std::size_t>(rejection)];
}

Rejection rejectedBy(const ChainScreen& chain, const MotorScreen& motor) {
  if (exceeds(chain.speedPeak, motor.speedMax)) return Rejection::Speed;
  if (!isSet(motor.inertia)) return Rejection::None;
  if (exceeds(chain.inertia, motor.inertiaRatioMax * motor.inertia)) {
    return Rejection::InertiaRatio;
  }
  if (tooHot(chain, motor)) return Rejection::Continuous;
  if (tooMuchCurrent(chain, motor)) return Rejection::CurrentRms;
  for (std::size_t k = 0; k < chain.extremeCount; ++k) {
    if (tooHighPeak(chain.extremes[k], motor)) return Rejection::CurrentPeak;
  }
  for (std::size_t k = 0; k < chain.extremeCount; ++k) {
    if (outside(chain.extremes[k], motor)) return Rejection::Torque;
  }
  return Rejection::None;
}

std::string_view chainRejectedBy(const Evaluation& evaluation, int firstOpen) {
  for (const Check& check : evaluation.checks) {
    if (check.stage <= firstOpen || check.state != CheckState::Short) continue;
    const auto found = std::find(std::begin(kStageChecks), std::end(kStageChecks), check.id);
    if (found != std::end(kStageChecks)) return *found;
  }
  return {};
}

}  // namespace jw

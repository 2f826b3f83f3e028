#include "core/checks/joint_figures.h"

#include <algorithm>
#include <cmath>
#include <limits>

#include "core/physics/holding.h"
#include "core/physics/plain_stages.h"
#include "core/physics/wind_up.h"

namespace jw {
namespace {

double peak(const Eigen::ArrayXd& values) { return values.abs().maxCoeff(); }

/// [N·m] of the motor against its motion, friction apart, the least at rest and at `speed`.
double brakingTorque(const TorqueEnvelope& envelope, double speed) {
  const EnvelopeLimits& limits = envelope.lowest;
  const double atSpeed = limits.highestTorque(-speed) - limits.machine.drag(speed);
  return std::min(limits.highestTorque(0), atSpeed);
}

bool needsEnvelope(const Evaluation& result, StopBy by) {
  return by == StopBy::Motor && !result.envelope;
}

bool hasStiffness(const std::vector<StageData>& stages) {
  return std::any_of(stages.begin(), stages.end(),
                     [](const StageData& one) { return one.stage.stiffness.first > 0; });
}

/// [kg·m²] at the joint, of all but the load.
double motorSideInertia(const Project& project, const Evaluation& result) {
  const Motor& motor = project.active().motor;
  const double ratio = result.chain->ratio;
  const double all = motor.rotorInertia + motor.brakeInertia + result.chain->inertiaAtMotor;
  return ratio * ratio * all - result.load->largestInertia;
}

template <class Part>
double sumOf(const Project& project, double motor, Part part) {
  for (const Stage& stage : project.active().transmission) motor += part(stage);
  return motor;
}

}  // namespace

WorstStatic worstStatic(const Project& project, const Evaluation& result) {
  const Requirements& wanted = project.requirements;
  const SampledCycle& cycle = *result.cycle;
  const double low = isSet(wanted.travelMin) ? wanted.travelMin : cycle.angle.minCoeff();
  const double high = isSet(wanted.travelMax) ? wanted.travelMax : cycle.angle.maxCoeff();
  WorstStatic worst{low, 0};
  for (const Segment& segment : project.cycle.segments) {
    if (segment.disabled) continue;
    const double mass = payloadOf(project.load, segment);
    const StaticPose pose =
        worstStaticPose(project.load, mass, std::min(low, high), std::max(low, high));
    if (std::abs(pose.torque) >= std::abs(worst.torque)) worst = {pose.angle, pose.torque};
  }
  return worst;
}

std::optional<StopCase> stopCase(const Project& project, const Evaluation& result, StopBy by) {
  const Motor& motor = project.active().motor;
  if (!result.chain || !isSet(motor.rotorInertia) || needsEnvelope(result, by)) return std::nullopt;
  if (by == StopBy::Brake && !isSet(motor.brakeTorque)) return std::nullopt;
  const double ratio = std::abs(result.chain->ratio);
  StopCase about;
  about.inertia = motorSideInertia(project, result) + result.load->largestInertia;
  about.speed = peak(result.cycle->speed);
  about.driving = std::abs(worstStatic(project, result).torque);
  about.braking = ratio * (by == StopBy::Brake
                               ? motor.brakeTorque
                               : brakingTorque(*result.envelope, peak(result.chain->motorSpeed)));
  about.delay = by == StopBy::Brake ? motor.brakeDelay : 0;
  return about;
}

std::optional<Stop> stopOf(const Project& project, const Evaluation& result, StopBy by) {
  const auto about = stopCase(project, result, by);
  if (!about) return std::nullopt;
  return stopUnderSteadyTorques(*about);
}

double torqueOfStop(const Evaluation& result, const StopCase& about, const Stop& stop) {
  return result.load->largestInertia * std::max(0.0, stop.deceleration) + about.driving;
}

std::optional<TwoMass> twoMass(const Project& project, const Evaluation& result, double torque) {
  const double rotor = project.active().motor.rotorInertia;
  if (!result.chain || !isSet(rotor) || !hasStiffness(*result.stages)) return std::nullopt;
  const double stiffness = chainStiffness(plainStages(*result.stages), torque).value_or(kUnset);
  if (!std::isfinite(stiffness)) return std::nullopt;
  return TwoMass{motorSideInertia(project, result), result.load->largestInertia, stiffness, 0};
}

double momentaryTorqueAtJoint(const Evaluation& result) {
  double least = std::numeric_limits<double>::infinity();
  double behind = 1;
  for (auto one = result.stages->rbegin(); one != result.stages->rend(); ++one) {
    if (isSet(one->stage.momentaryTorque)) {
      least = std::min(least, one->stage.momentaryTorque * behind);
    }
    behind *= one->stage.ratio;
  }
  return std::isinf(least) ? kUnset : least;
}

double collisionSpeed(const Project& project, const Evaluation& result) {
  const double wanted = project.requirements.collisionSpeed;
  return isSet(wanted) ? wanted : peak(result.cycle->speed);
}

double collisionTorque(const Project& project, const Evaluation& result) {
  if (!result.chain) return kUnset;
  const double limit = momentaryTorqueAtJoint(result);
  const auto two = twoMass(project, result, isSet(limit) ? limit : peak(result.load->total));
  if (!two) return kUnset;
  return torqueOfImpact(collisionSpeed(project, result), two->motor, two->stiffness) +
         std::abs(worstStatic(project, result).torque);
}

std::optional<ErrorBudget> errorBudget(const Project& project, const Evaluation& result) {
  const Motor& motor = project.active().motor;
  if (!result.chain) return std::nullopt;
  ErrorBudget budget;
  if (motor.jointEncoderSteps > 0) {
    budget.encoder = encoderStep(motor.jointEncoderSteps, 1);
    return budget;
  }
  budget.encoder = encoderStep(motor.encoderSteps, std::abs(result.chain->ratio));
  const std::vector<Stage> stages = plainStages(*result.stages);
  const double torque = peak(result.load->total);
  double behind = 1;
  for (auto stage = stages.rbegin(); stage != stages.rend(); ++stage) {
    budget.play += stage->backlash / 2 / behind;
    if (isSet(stage->hysteresis)) budget.hysteresis += stage->hysteresis / 2 / behind;
    if (isSet(stage->transmissionError)) {
      budget.transmission += stage->transmissionError / 2 / behind;
    }
    behind *= stage->ratio;
  }
  const bool twists = stages.empty() || hasStiffness(*result.stages);
  budget.windUp = twists ? chainWindUpAngle(stages, torque).value_or(kUnset) : kUnset;
  return budget;
}

double reachOf(const Project& project) {
  const double wanted = project.requirements.reach;
  return isSet(wanted) ? wanted : project.load.payloadDistance;
}

double actuatorMass(const Project& project) {
  return sumOf(project, project.active().motor.mass, [](const Stage& s) { return s.mass; });
}

double actuatorLength(const Project& project) {
  return sumOf(project, project.active().motor.length, [](const Stage& s) { return s.length; });
}

double actuatorDiameter(const Project& project) {
  double largest = project.active().motor.diameter;
  for (const Stage& stage : project.active().transmission) {
    if (!isSet(stage.diameter) || stage.diameter > largest) largest = stage.diameter;
    if (!isSet(largest)) return kUnset;
  }
  return largest;
}

}  // namespace jw

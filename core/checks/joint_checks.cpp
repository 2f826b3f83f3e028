#include <algorithm>
#include <array>
#include <cmath>
#include <span>

#include "core/checks/check_writer.h"
#include "core/physics/holding.h"

namespace jw {
namespace {

void inertiaRatio(const CheckContext& context, CheckWriter& w) {
  w.formula("\u03ba = J_refl / (J_m + J_b) against \u03ba_max, J_refl = \u2211 J / N\u00b2");
  w.source("Guideline for the controllability of a joint; common practice, no source");
  w.note("With the largest payload of the cycle. Stiff drives tolerate more than soft ones.");
  const Motor& motor = context.variant().motor;
  const double limit =
      w.input(context.project.requirements.inertiaRatioMax, "requirements.inertiaRatioMax");
  w.input(motor.rotorInertia, "motor.rotorInertia");
  if (motor.brakeInertia > 0) w.input(motor.brakeInertia, "motor.brakeInertia");
  if (!w.has(Part::Chain)) return;
  const double reflected =
      w.value(context.result.chain->inertiaAtMotor,
              {"J_refl", "Stages and load at the motor shaft", Quantity::Inertia, "kg*cm^2"});
  const double ratio = w.value(reflected / (motor.rotorInertia + motor.brakeInertia),
                               {"\u03ba", "Inertia ratio", Quantity::Number, "1"});
  w.compare(ratio, limit);
}

/// The worst static pose over the travel, with the heaviest and with the lightest payload.
StaticPose worstPose(const CheckContext& context) {
  const Requirements& wanted = context.project.requirements;
  const SampledCycle& cycle = *context.result.cycle;
  const double low = isSet(wanted.travelMin) ? wanted.travelMin : cycle.angle.minCoeff();
  const double high = isSet(wanted.travelMax) ? wanted.travelMax : cycle.angle.maxCoeff();
  StaticPose worst{low, 0};
  for (const Segment& segment : context.project.cycle.segments) {
    if (segment.disabled) continue;
    const double mass = payloadOf(context.project.load, segment);
    const StaticPose pose =
        worstStaticPose(context.project.load, mass, std::min(low, high), std::max(low, high));
    if (std::abs(pose.torque) >= std::abs(worst.torque)) worst = pose;
  }
  return worst;
}

double holdingCapacity(const CheckContext& context, CheckWriter& w) {
  const Motor& motor = context.variant().motor;
  if (context.project.requirements.holdingMeans == HoldingMeans::Brake) {
    w.note(
        "Held by the brake on the motor shaft. A brake sized to hold is not thereby fit for "
        "repeated emergency stops.");
    return w.input(motor.brakeTorque, "motor.brakeTorque");
  }
  w.note("Held by the motor: the joint falls when power or controller fails.");
  const bool envelope = w.has(Part::Envelope);
  if (!w.has(Part::Continuous) || !envelope) return kUnset;
  return w.value(
      context.result.envelope->continuousTorque(0),
      {"T_c", "Lasting torque at standstill, of motor and controller", Quantity::Torque, "N*m"});
}

bool mustHold(const CheckContext& context) {
  return context.project.requirements.holdingMeans != HoldingMeans::NotNeeded;
}

void holding(const CheckContext& context, CheckWriter& w) {
  w.formula("T_h = S_h |T_stat| / N against what holds, both at the motor shaft");
  w.source("Static equilibrium; friction is not counted on to hold (conservative)");
  w.note(
      "Gravity loads can kill: holding is a safety function to be judged under ISO 12100 and "
      "local codes.");
  const double factor =
      w.input(context.project.requirements.holdingFactor, "requirements.holdingFactor");
  const double capacity = holdingCapacity(context, w);
  if (!w.has(Part::Chain)) return;
  const StaticPose pose = worstPose(context);
  w.value(pose.torque,
          {"T_stat", "Largest static torque over the travel", Quantity::Torque, "N*m"});
  // A pose found in closed form may miss 0 by rounding.
  w.value(std::abs(pose.angle) < 1e-12 ? 0.0 : pose.angle,
          {"q", "at the joint angle", Quantity::Angle, "deg"});
  const double ratio = w.value(std::abs(context.result.chain->ratio),
                               {"N", "Ratio from motor to joint", Quantity::Ratio, "1"});
  const double torque =
      w.value(factor * std::abs(pose.torque) / ratio,
              {"T_h", "Torque to hold at the motor shaft", Quantity::Torque, "N*m"});
  w.compare(torque, capacity);
}

constexpr std::array kKinds{
    CheckKind{"joint.inertia_ratio", "Inertia ratio", Quantity::Number, "1", false, false, nullptr,
              &inertiaRatio},
    CheckKind{"joint.holding", "Holding", Quantity::Torque, "N*m", false, false, &mustHold,
              &holding},
};

}  // namespace

std::span<const CheckKind> jointChecks() { return kKinds; }

}  // namespace jw

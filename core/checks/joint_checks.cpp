#include <algorithm>
#include <array>
#include <cmath>
#include <span>

#include "core/checks/check_writer.h"
#include "core/checks/joint_check_works.h"
#include "core/checks/joint_figures.h"

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
                               {"\u03ba", "Inertia ratio", Quantity::Number, "1", "derived",
                                motor.brakeInertia > 0 ? "J_refl / (J_m + J_b)" : "J_refl / J_m"});
  w.follows("\u03ba", "\u03ba_max");
  w.compare(ratio, limit);
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
      {"T_c", "Continuous torque at standstill, of motor and controller", Quantity::Torque, "N*m"});
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
  const WorstStatic pose = worstStatic(context.project, context.result);
  w.value(pose.torque,
          {"T_stat", "Largest static torque over the travel", Quantity::Torque, "N*m"});
  // A pose found in closed form may miss 0 by rounding.
  w.value(std::abs(pose.angle) < 1e-12 ? 0.0 : pose.angle,
          {"q", "at the joint angle", Quantity::Angle, "deg"});
  const double ratio = w.value(std::abs(context.result.chain->ratio),
                               {"N", "Ratio from motor to joint", Quantity::Ratio, "1"});
  const double torque = w.value(factor * std::abs(pose.torque) / ratio,
                                {"T_h", "Torque to hold at the motor shaft", Quantity::Torque,
                                 "N*m", "derived", "S_h · |T_stat| / N"});
  const bool brake = context.project.requirements.holdingMeans == HoldingMeans::Brake;
  w.follows("T_h", brake ? "T_b" : "T_c");
  w.compare(torque, capacity);
}

bool brakeStops(const CheckContext& context) {
  return context.project.requirements.holdingMeans == HoldingMeans::Brake;
}

bool hasStages(const CheckContext& context) { return !context.variant().transmission.empty(); }

bool wantsHand(const CheckContext& context) {
  return isSet(context.project.requirements.handTorque);
}

constexpr std::array kKinds{
    CheckKind{"joint.inertia_ratio", "Inertia ratio", Quantity::Number, "1", false, false, nullptr,
              &inertiaRatio},
    CheckKind{"joint.holding", "Holding", Quantity::Torque, "N*m", false, false, &mustHold,
              &holding},
    CheckKind{"joint.stopping", "Stopping time", Quantity::Time, "ms", false, false, nullptr,
              &joint_checks::stopTime},
    CheckKind{"joint.stopping_angle", "Stopping angle", Quantity::Angle, "deg", false, false,
              nullptr, &joint_checks::stopAngle},
    CheckKind{"joint.stopping_torque", "Drive torque in an emergency stop", Quantity::Torque, "N*m",
              false, false, &hasStages, &joint_checks::stopTorque},
    CheckKind{"joint.stopping_energy", "Brake energy in a stop", Quantity::Energy, "J", false,
              false, &brakeStops, &joint_checks::stopEnergy},
    CheckKind{"joint.stopping_power", "Brake power of repeated stops", Quantity::Power, "W", false,
              false, &brakeStops, &joint_checks::stopPower},
    CheckKind{"joint.collision", "Collision", Quantity::Torque, "N*m", false, false, &hasStages,
              &joint_checks::collision},
    CheckKind{"joint.positioning", "Positioning at the tool", Quantity::Length, "mm", false, false,
              nullptr, &joint_checks::positioning},
    CheckKind{"joint.resonance", "Resonance", Quantity::Frequency, "Hz", false, true, &hasStages,
              &joint_checks::resonance},
    CheckKind{"joint.backdrive", "Moving by hand", Quantity::Torque, "N*m", false, false,
              &wantsHand, &joint_checks::backdrive},
    CheckKind{"joint.mass", "Mass", Quantity::Mass, "kg", false, false, nullptr,
              &joint_checks::mass},
    CheckKind{"joint.size", "Length", Quantity::Length, "mm", false, false, nullptr,
              &joint_checks::length},
    CheckKind{"joint.diameter", "Diameter", Quantity::Length, "mm", false, false, nullptr,
              &joint_checks::diameter},
};

}  // namespace

std::span<const CheckKind> jointChecks() { return kKinds; }

}  // namespace jw

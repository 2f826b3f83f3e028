#include <cmath>

#include <fmt/format.h>

#include "core/checks/joint_check_works.h"
#include "core/checks/joint_figures.h"

namespace jw::joint_checks {
namespace {

constexpr std::string_view kStopEnergy = "T_br · \u03c9_1² / (2 · a)";

void noteStop(CheckWriter& w, StopBy by) {
  w.source("Newton's second law about a fixed axis, steady torques");
  w.note(
      "A bound: the highest speed, the largest load inertia and the worst static torque together. "
      "Friction is not counted. This is no validation of a safety function (ISO 12100, "
      "ISO 13849).");
  w.note(by == StopBy::Brake
             ? "Stopped by the brake on the motor shaft, power off at once."
             : "Stopped by the motor at its peak torque, at the lowest bus voltage.");
}

/// The inputs of a stop; false if one is missing.
bool stopInputs(const CheckContext& context, CheckWriter& w, StopBy by) {
  const Motor& motor = context.variant().motor;
  w.input(motor.rotorInertia, "motor.rotorInertia");
  if (by == StopBy::Brake) {
    w.input(motor.brakeTorque, "motor.brakeTorque");
    w.input(motor.brakeDelay, "motor.brakeDelay");
  }
  const bool envelope = by == StopBy::Brake || w.has(Part::Envelope);
  return w.has(Part::Chain) && envelope;
}

StopBy meansOf(const CheckContext& context) {
  return context.project.requirements.holdingMeans == HoldingMeans::Brake ? StopBy::Brake
                                                                          : StopBy::Motor;
}

/// Every stage's momentary torque times the ratios behind it, of which the least counts; shows the
/// ratios that it needs.
std::string leastOfStages(const CheckContext& context, CheckWriter& w) {
  std::string least, behind;
  if (!w.explains()) return least;
  const auto& stages = *context.result.stages;
  for (std::size_t k = stages.size(); k-- > 0;) {
    if (isSet(context.variant().transmission[k].momentaryTorque)) {
      const std::string one = fmt::format("T_m{}{}", k + 1, behind);
      least = least.empty() ? one : fmt::format("min({}, {})", least, one);
    }
    if (k == 0) break;
    const std::string ratio = fmt::format("N_{}", k + 1);
    w.value(stages[k].stage.ratio,
            {ratio, fmt::format("Ratio of stage {}", k + 1), Quantity::Ratio, "1"});
    behind += " · " + ratio;
  }
  return least;
}

/// The momentary torque of the chain; opens the check if no stage states one.
double momentaryLimit(const CheckContext& context, CheckWriter& w) {
  const auto& stages = context.variant().transmission;
  bool stated = false;
  for (std::size_t k = 0; k < stages.size(); ++k) {
    if (!isSet(stages[k].momentaryTorque)) continue;
    stated = true;
    w.input(stages[k].momentaryTorque, fmt::format("transmission[{}].momentaryTorque", k));
  }
  if (!stated) {
    w.input(kUnset, fmt::format("transmission[{}].momentaryTorque", stages.size() - 1));
    return kUnset;
  }
  if (!w.has(Part::Chain)) return kUnset;
  const std::string least = leastOfStages(context, w);
  return w.value(momentaryTorqueAtJoint(context.result),
                 {"T_m,J", "Momentary torque that all stages allow, at the joint", Quantity::Torque,
                  "N*m", "derived", least});
}

}  // namespace

std::string WorkedStop::orNever(std::string_view expression) const {
  if (stop.speed == 0) return "0";
  return std::string(stop.deceleration > 0 ? expression : "\u221e");
}

std::string timeOfStop(const WorkedStop& worked) {
  return worked.orNever(worked.delayed() ? "t_b + \u03c9_1 / a" : "\u03c9_1 / a");
}

std::string angleOfStop(const WorkedStop& worked) {
  return worked.orNever(worked.delayed() ? "t_b · (\u03c9_0 + \u03c9_1) / 2 + \u03c9_1² / (2 · a)"
                                         : "\u03c9_1² / (2 · a)");
}

std::string energyOfStop(const WorkedStop& worked) { return worked.orNever(kStopEnergy); }

std::optional<WorkedStop> workedStop(const CheckContext& context, CheckWriter& w, StopBy by) {
  noteStop(w, by);
  if (!stopInputs(context, w, by)) return std::nullopt;
  const auto about = stopCase(context.project, context.result, by);
  if (!about) return std::nullopt;
  const Stop stop = stopUnderSteadyTorques(*about);
  w.value(about->speed,
          {"\u03c9_0", "Highest joint speed", Quantity::AngularSpeed, "rad/s", "from the cycle"});
  w.value(about->inertia, {"J", "All inertia, at the joint", Quantity::Inertia, "kg*m^2"});
  w.value(about->driving,
          {"T_stat", "Largest static torque over the travel", Quantity::Torque, "N*m"});
  const bool brake = by == StopBy::Brake;
  w.value(std::abs(context.result.chain->ratio),
          {"N", "Ratio from motor to joint", Quantity::Ratio, "1"});
  w.value(about->braking, {"T_br", "Braking torque at the joint", Quantity::Torque, "N*m",
                           "derived", brake ? "N · T_b" : ""});
  w.value(stop.speed, {"\u03c9_1", "Speed when it begins to brake", Quantity::AngularSpeed, "rad/s",
                       "derived", brake ? "\u03c9_0 + T_stat · t_b / J" : "\u03c9_0"});
  w.value(stop.deceleration, {"a", "Deceleration", Quantity::AngularAcceleration, "rad/s^2",
                              "derived", "(T_br − T_stat) / J"});
  return WorkedStop{*about, stop};
}

void stopTime(const CheckContext& context, CheckWriter& w) {
  w.formula("t = t_b + \u03c9_1 / a against t_stop");
  const double limit = w.input(context.project.requirements.stopTime, "requirements.stopTime");
  const auto worked = workedStop(context, w, meansOf(context));
  if (!worked) return;
  w.follows(timeOfStop(*worked), "t_stop");
  w.compare(worked->stop.time, limit);
}

void stopAngle(const CheckContext& context, CheckWriter& w) {
  w.formula("q = t_b (\u03c9_0 + \u03c9_1) / 2 + \u03c9_1\u00b2 / (2 a) against q_stop");
  const double limit = w.input(context.project.requirements.stopAngle, "requirements.stopAngle");
  const auto worked = workedStop(context, w, meansOf(context));
  if (!worked) return;
  w.follows(angleOfStop(*worked), "q_stop");
  w.compare(worked->stop.angle, limit);
}

void stopTorque(const CheckContext& context, CheckWriter& w) {
  w.formula("T = J_L a + T_stat against T_m,J");
  w.input(context.project.requirements.stopTime, "requirements.stopTime");
  const double limit = momentaryLimit(context, w);
  const auto worked = workedStop(context, w, meansOf(context));
  if (!worked) return;
  w.value(context.result.load->largestInertia,
          {"J_L", "Largest load inertia", Quantity::Inertia, "kg*m^2"});
  w.follows("J_L · max(0, a) + T_stat", "T_m,J");
  w.compare(torqueOfStop(context.result, worked->about, worked->stop), limit);
}

void stopEnergy(const CheckContext& context, CheckWriter& w) {
  w.formula("W = T_br \u03c9_1\u00b2 / (2 a) against W_b");
  const double limit = w.input(context.variant().motor.brakeStopEnergy, "motor.brakeStopEnergy");
  const auto worked = workedStop(context, w, meansOf(context));
  if (!worked) return;
  w.follows(energyOfStop(*worked), "W_b");
  w.compare(worked->stop.energy, limit);
}

void stopPower(const CheckContext& context, CheckWriter& w) {
  w.formula("P = z W / 3600 s against P_b, W = T_br \u03c9_1\u00b2 / (2 a)");
  const double limit = w.input(context.variant().motor.brakePower, "motor.brakePower");
  const double stops =
      w.input(context.project.requirements.stopsPerHour, "requirements.stopsPerHour");
  const auto worked = workedStop(context, w, meansOf(context));
  if (!worked) return;
  const double energy = w.value(
      worked->stop.energy,
      {"W", "Brake energy in a stop", Quantity::Energy, "J", "derived", energyOfStop(*worked)});
  w.follows(stops == 0 ? "0" : "z · W / 3600", "P_b");
  w.compare(stops == 0 ? 0 : stops * energy / 3600, limit);
}

double showCollision(const CheckContext& context, CheckWriter& w, double torque) {
  const auto two = twoMass(context.project, context.result, torque);
  if (!two) return kUnset;
  const bool stated = isSet(context.project.requirements.collisionSpeed);
  const double speed = w.value(collisionSpeed(context.project, context.result),
                               {"\u03c9", "Joint speed at the collision", Quantity::AngularSpeed,
                                "rad/s", stated ? "typed" : "from the cycle: its highest"});
  if (!stated) w.note("No collision speed is given: the highest joint speed of the cycle counts.");
  w.value(two->stiffness, {"K", "Stiffness at the joint", Quantity::TorsionalStiffness, "N*m/rad"});
  w.value(two->motor, {"J_M", "Motor side, at the joint", Quantity::Inertia, "kg*m^2"});
  const double still = w.value(worstStatic(context.project, context.result).torque,
                               {"T_stat", "Largest static torque", Quantity::Torque, "N*m"});
  return torqueOfImpact(speed, two->motor, two->stiffness) + std::abs(still);
}

void collision(const CheckContext& context, CheckWriter& w) {
  w.formula("T = \u03c9 \u221a(K J_M) + |T_stat| against T_m,J");
  w.source(
      "Energy balance of an elastic impact, J \u03c9\u00b2/2 = T\u00b2/(2 K); the load locked");
  w.note(
      "The motor side runs into the drive's compliance, counted at its stiffness under the "
      "momentary torque; damping and slip are not counted on. No risk assessment (ISO 12100).");
  const double limit = momentaryLimit(context, w);
  w.input(context.variant().motor.rotorInertia, "motor.rotorInertia");
  w.optionalInput(context.project.requirements.collisionSpeed, "requirements.collisionSpeed");
  if (!w.has(Part::Chain) || !isSet(context.variant().motor.rotorInertia)) return;
  const double torque = showCollision(context, w, limit);
  if (!isSet(torque)) {
    w.input(kUnset,
            fmt::format("transmission[{}].stiffness", context.variant().transmission.size() - 1));
    return;
  }
  w.follows("\u03c9 · \u221a(K · J_M) + |T_stat|", "T_m,J");
  w.compare(torque, limit);
}

}  // namespace jw::joint_checks

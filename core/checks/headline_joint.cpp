// Headline figures of the joint as a whole: stops, swing, precision, mass.
#include <array>
#include <cmath>
#include <numbers>
#include <span>
#include <string>

#include "core/checks/headline_rows.h"
#include "core/checks/joint_check_works.h"
#include "core/checks/joint_figures.h"

namespace jw {
namespace {

using namespace headline;

double timeOf(const std::optional<Stop>& stop) { return stop ? stop->time : kUnset; }
double angleOf(const std::optional<Stop>& stop) { return stop ? stop->angle : kUnset; }
double energyOf(const std::optional<Stop>& stop) { return stop ? stop->energy : kUnset; }

/// [Hz] of a swing of motor side and load at the cycle's largest joint torque.
double resonance(const Project& project, const Evaluation& result,
                 double (TwoMass::*frequency)() const) {
  const auto two = twoMass(project, result, peak(result.load->total));
  return two ? ((*two).*frequency)() / (2 * std::numbers::pi) : kUnset;
}

/// [m] at the tool.
double toolError(const Project& project, const Evaluation& result,
                 double (ErrorBudget::*sum)() const) {
  const auto budget = errorBudget(project, result);
  return budget ? reachOf(project) * ((*budget).*sum)() : kUnset;
}

/// The stop with what `expression` makes of it.
void stopBy(C context, W w, StopBy by, std::string (*expression)(const joint_checks::WorkedStop&)) {
  const auto worked = joint_checks::workedStop(context, w, by);
  if (worked) w.follows(expression(*worked));
}

void collision(C context, W w) {
  const double limit = momentaryTorqueAtJoint(context.result);
  const double torque = isSet(limit) ? limit : peak(context.result.load->total);
  joint_checks::showCollision(context, w, torque);
  w.follows("\u03c9 · \u221a(K · J_M) + |T_stat|");
}

void resonanceOf(C context, W w, std::string_view expression) {
  const auto two = twoMass(context.project, context.result, peak(context.result.load->total));
  if (!two) return;
  joint_checks::showTwoMass(*two, w);
  w.follows(expression);
}

void toolErrorOf(C context, W w, std::string_view expression) {
  const auto budget = errorBudget(context.project, context.result);
  if (!budget) return;
  joint_checks::showToolError(context, *budget, w);
  w.follows(expression);
}

/// [N·m/kg]
double torquePerMass(const Project& project, const Evaluation& result) {
  return peak(result.load->total) / actuatorMass(project);
}

void torquePerMassOf(C context, W w) {
  w.value(peak(context.result.load->total),
          {"T", "Peak joint torque", Quantity::Torque, "N*m", "from the cycle"});
  w.follows("T / (" + joint_checks::showMasses(context, w) + ")");
}

void massOf(C context, W w) { w.follows(joint_checks::showMasses(context, w)); }
void lengthOf(C context, W w) { w.follows(joint_checks::showLengths(context, w)); }

constexpr Headline kRows[] = {
    {"joint.stop_time_brake", "Stopping time by the brake", Quantity::Time, "ms", hasChain,
     [](P p, E e) { return timeOf(stopOf(p, e, StopBy::Brake)); }, "t = t_b + \u03c9_1 / a",
     "Newton's second law about a fixed axis, steady torques",
     [](C c, W w) { stopBy(c, w, StopBy::Brake, joint_checks::timeOfStop); }},
    {"joint.stop_angle_brake", "Stopping angle by the brake", Quantity::Angle, "deg", hasChain,
     [](P p, E e) { return angleOf(stopOf(p, e, StopBy::Brake)); },
     "q = t_b (\u03c9_0 + \u03c9_1) / 2 + \u03c9_1² / (2 a)",
     "Newton's second law about a fixed axis, steady torques",
     [](C c, W w) { stopBy(c, w, StopBy::Brake, joint_checks::angleOfStop); }},
    {"joint.stop_energy_brake", "Brake energy in a stop", Quantity::Energy, "J", hasChain,
     [](P p, E e) { return energyOf(stopOf(p, e, StopBy::Brake)); }, "W = T_br \u03c9_1² / (2 a)",
     "Newton's second law about a fixed axis, steady torques",
     [](C c, W w) { stopBy(c, w, StopBy::Brake, joint_checks::energyOfStop); }},
    {"joint.stop_time_motor", "Stopping time by the motor", Quantity::Time, "ms", hasChain,
     [](P p, E e) { return timeOf(stopOf(p, e, StopBy::Motor)); }, "t = \u03c9_1 / a",
     "Newton's second law about a fixed axis, steady torques",
     [](C c, W w) { stopBy(c, w, StopBy::Motor, joint_checks::timeOfStop); }},
    {"joint.stop_angle_motor", "Stopping angle by the motor", Quantity::Angle, "deg", hasChain,
     [](P p, E e) { return angleOf(stopOf(p, e, StopBy::Motor)); }, "q = \u03c9_1² / (2 a)",
     "Newton's second law about a fixed axis, steady torques",
     [](C c, W w) { stopBy(c, w, StopBy::Motor, joint_checks::angleOfStop); }},
    {"joint.collision_torque", "Joint torque of a collision", Quantity::Torque, "N*m", hasChain,
     [](P p, E e) { return collisionTorque(p, e); }, "T = \u03c9 \u221a(K J_M) + |T_stat|",
     "Energy balance of an elastic impact, J \u03c9²/2 = T²/(2 K); the load "
     "locked",
     &collision},
    {"joint.resonance_locked", "Resonance, motor locked", Quantity::Frequency, "Hz", hasChain,
     [](P p, E e) { return resonance(p, e, &TwoMass::locked); }, "f = \u221a(K / J_L) / (2\u03c0)",
     "Two masses on a spring; mechanics of vibration",
     [](C c, W w) { resonanceOf(c, w, "\u221a(K / J_L) / (2 · \u03c0)"); }},
    {"joint.resonance_free", "Resonance, motor free", Quantity::Frequency, "Hz", hasChain,
     [](P p, E e) { return resonance(p, e, &TwoMass::free); },
     "f = \u221a(K (1/J_L + 1/J_M)) / (2\u03c0)", "Two masses on a spring; mechanics of vibration",
     [](C c, W w) { resonanceOf(c, w, "\u221a(K · (1 / J_L + 1 / J_M)) / (2 · \u03c0)"); }},
    {"joint.tool_error_worst", "Tool error, worst case", Quantity::Length, "mm", hasChain,
     [](P p, E e) { return toolError(p, e, &ErrorBudget::worst); },
     "e = R (\u03c6_b + \u03c6_h + \u03b8 + \u03c6_e + \u03b4)", "Worst case: sum of half widths",
     [](C c, W w) { toolErrorOf(c, w, "R · (\u03c6_b + \u03c6_h + \u03b8 + \u03c6_e + \u03b4)"); }},
    {"joint.tool_error_rss", "Tool error, root sum of squares", Quantity::Length, "mm", hasChain,
     [](P p, E e) { return toolError(p, e, &ErrorBudget::rootSumSquare); },
     "e = R \u221a(\u03c6_b² + \u03c6_h² + \u03b8² + \u03c6_e² + \u03b4²)",
     "Root sum of squares, for independent contributions: JCGM 100:2008, 5.1.2",
     [](C c, W w) {
       toolErrorOf(c, w, "R · \u221a(\u03c6_b² + \u03c6_h² + \u03b8² + \u03c6_e² + \u03b4²)");
     }},
    {"joint.mass", "Mass of motor and transmission", Quantity::Mass, "kg", hasStages,
     [](P p, E) { return actuatorMass(p); }, "m = m_m + \u2211 m_k",
     "Sum over motor and stages, housing and wiring apart", &massOf},
    {"joint.length", "Length of motor and transmission", Quantity::Length, "mm", hasStages,
     [](P p, E) { return actuatorLength(p); }, "l = l_m + \u2211 l_k",
     "Motor and stages in line; housing and wiring apart", &lengthOf},
    {"joint.torque_per_mass", "Peak joint torque over mass, N·m/kg", Quantity::Number, "1", hasLoad,
     torquePerMass, "T / m, m = m_m + \u2211 m_k", "Definition", &torquePerMassOf},
};

}  // namespace

std::span<const Headline> jointHeadlines() { return kRows; }

}  // namespace jw

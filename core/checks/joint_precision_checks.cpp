#include <algorithm>
#include <cmath>
#include <numbers>

#include <fmt/format.h>

#include "core/checks/joint_check_works.h"
#include "core/checks/joint_figures.h"
#include "core/physics/backdriving.h"

namespace jw::joint_checks {
namespace {

/// The play of every stage, each of which the check needs.
void playInputs(const CheckContext& context, CheckWriter& w) {
  const auto& stages = context.variant().transmission;
  for (std::size_t k = 0; k < stages.size(); ++k) {
    w.input(stages[k].backlash, fmt::format("transmission[{}].backlash", k));
  }
}

void missStiffness(const CheckContext& context, CheckWriter& w) {
  const std::size_t last = context.variant().transmission.size() - 1;
  w.input(kUnset, fmt::format("transmission[{}].stiffness", last));
}

bool encoderInputs(const CheckContext& context, CheckWriter& w) {
  const Motor& motor = context.variant().motor;
  if (motor.jointEncoderSteps > 0) {
    w.input(motor.jointEncoderSteps, "motor.jointEncoderSteps");
    w.note(
        "The encoder at the joint closes the loop over the drive: its own step alone is counted.");
    return true;
  }
  w.input(motor.encoderSteps > 0 ? motor.encoderSteps : kUnset, "motor.encoderSteps");
  playInputs(context, w);
  return motor.encoderSteps > 0;
}

void showBudget(const ErrorBudget& budget, CheckWriter& w) {
  const auto angle = [&](double value, std::string_view symbol, std::string_view label) {
    w.value(value, {symbol, label, Quantity::Angle, "arcsec"});
  };
  angle(budget.play, "\u03c6_b", "Half of the play, at the joint");
  angle(budget.hysteresis, "\u03c6_h", "Half of the hysteresis, where given");
  angle(budget.windUp, "\u03b8", "Wind-up at the largest joint torque");
  angle(budget.transmission, "\u03c6_e", "Half of the transmission error, where given");
  angle(budget.encoder, "\u03b4", "One step of the encoder");
}

/// Every stage's and the motor's value of one kind; NaN if one is missing.
using StageValue = double Stage::*;

void sizeInputs(const CheckContext& context, CheckWriter& w, double motor, StageValue part,
                std::string_view key) {
  w.input(motor, fmt::format("motor.{}", key));
  const auto& stages = context.variant().transmission;
  for (std::size_t k = 0; k < stages.size(); ++k) {
    w.input(stages[k].*part, fmt::format("transmission[{}].{}", k, key));
  }
}

/// "m_m + m_1 + m_2": the motor's and every stage's.
std::string overStages(const CheckContext& context, std::string all, std::string_view stage,
                       std::string_view join) {
  for (std::size_t k = 0; k < context.variant().transmission.size(); ++k) {
    all += fmt::format("{}{}{}", join, stage, k + 1);
  }
  return all;
}

}  // namespace

std::string showBackdriving(const std::vector<StageData>& stages, double torque, CheckWriter& w) {
  std::string before = "T_0";
  if (!w.explains()) return before;
  for (std::size_t k = 0; k < stages.size(); ++k) {
    const StageData& data = stages[k];
    if (data.efficiency.selfLocking()) return "∞";
    const double gain = data.stage.ratio / data.efficiency.backdriving;
    const double own =
        isSet(data.stage.backdrivingTorque) ? data.stage.backdrivingTorque : data.starting() * gain;
    torque = torque * gain + own;
    const std::string n = std::to_string(k + 1);
    w.value(data.stage.ratio, {"N_" + n, "Ratio of stage " + n, Quantity::Ratio, "1"});
    w.value(data.efficiency.backdriving,
            {"\u03b7_" + n, "Efficiency of stage " + n + " driven back", Quantity::Fraction, "%"});
    w.value(own,
            {"T_b" + n, "Own torque of stage " + n + ", at its output", Quantity::Torque, "N*m"});
    const std::string sum = fmt::format("{} · N_{} / \u03b7_{} + T_b{}", before, n, n, n);
    before = "T_o" + n;
    w.value(torque, {before, "Behind stage " + n, Quantity::Torque, "N*m", "derived", sum});
  }
  return before;
}

void showToolError(const CheckContext& context, const ErrorBudget& budget, CheckWriter& w) {
  showBudget(budget, w);
  const double wanted = context.project.requirements.reach;
  if (isSet(wanted)) {
    w.input(wanted, "requirements.reach");
  } else {
    w.value(reachOf(context.project), {"R", "Axis to the payload", Quantity::Length, "m"});
  }
}

void showTwoMass(const TwoMass& two, CheckWriter& w) {
  w.value(two.stiffness, {"K", "Stiffness at the joint, at its peak torque",
                          Quantity::TorsionalStiffness, "N*m/rad"});
  w.value(two.load, {"J_L", "Largest load inertia", Quantity::Inertia, "kg*m^2"});
  w.value(two.motor, {"J_M", "Motor side, at the joint", Quantity::Inertia, "kg*m^2"});
}

std::string showMasses(const CheckContext& context, CheckWriter& w) {
  sizeInputs(context, w, context.variant().motor.mass, &Stage::mass, "mass");
  return overStages(context, "m_m", "m_", " + ");
}

std::string showLengths(const CheckContext& context, CheckWriter& w) {
  sizeInputs(context, w, context.variant().motor.length, &Stage::length, "length");
  return overStages(context, "l_m", "l_", " + ");
}

void positioning(const CheckContext& context, CheckWriter& w) {
  w.formula("e = R (\u03c6_b + \u03c6_h + \u03b8 + \u03c6_e + \u03b4) against e_max");
  w.source(
      "Worst case: sum of half widths; root sum of squares: JCGM 100:2008, 5.1.2, for "
      "independent contributions");
  w.note("The verdict counts the worst case. The arc is taken as the error at the tool.");
  const double limit = w.input(context.project.requirements.toolError, "requirements.toolError");
  const bool encoder = encoderInputs(context, w);
  if (!w.has(Part::Chain) || !encoder) return;
  const auto budget = errorBudget(context.project, context.result);
  if (!isSet(budget->windUp)) return missStiffness(context, w);
  showToolError(context, *budget, w);
  const double reach = reachOf(context.project);
  w.value(reach * budget->rootSumSquare(),
          {"e_rss", "Root sum of squares, at the tool", Quantity::Length, "mm", "derived",
           "R · \u221a(\u03c6_b² + \u03c6_h² + \u03b8² + \u03c6_e² + \u03b4²)"});
  w.follows("R · (\u03c6_b + \u03c6_h + \u03b8 + \u03c6_e + \u03b4)", "e_max");
  w.compare(reach * budget->worst(), limit);
}

void resonance(const CheckContext& context, CheckWriter& w) {
  w.formula("f = \u221a(K / J_L) / (2\u03c0), motor locked, against f_b");
  w.source("Two masses on a spring; mechanics of vibration");
  w.note(
      "With the largest load inertia, the lowest frequency. A loop is commonly kept well below it, "
      "to a third (common practice, no source): raise the wanted bandwidth to count that in.");
  const double wanted = w.input(context.project.requirements.bandwidth, "requirements.bandwidth");
  w.input(context.variant().motor.rotorInertia, "motor.rotorInertia");
  if (!w.has(Part::Chain) || !isSet(context.variant().motor.rotorInertia)) return;
  const double torque = context.result.load->total.abs().maxCoeff();
  const auto two = twoMass(context.project, context.result, torque);
  if (!two) return missStiffness(context, w);
  showTwoMass(*two, w);
  const double turn = 2 * std::numbers::pi;
  w.value(two->free() / turn, {"f_2", "Free resonance", Quantity::Frequency, "Hz", "derived",
                               "\u221a(K · (1 / J_L + 1 / J_M)) / (2 · \u03c0)"});
  const auto& inertia = context.result.load->segmentInertia;
  const double least = w.value(*std::min_element(inertia.begin(), inertia.end()),
                               {"J_s", "Smallest load inertia", Quantity::Inertia, "kg*m^2"});
  w.value(std::sqrt(two->stiffness / least) / turn,
          {"f_s", "Motor locked, with the smallest load inertia", Quantity::Frequency, "Hz",
           "derived", "\u221a(K / J_s) / (2 · \u03c0)"});
  w.follows("f_b", "\u221a(K / J_L) / (2 · \u03c0)");
  w.compare(wanted, two->locked() / turn);
}

void backdrive(const CheckContext& context, CheckWriter& w) {
  w.formula("T_out = T_in N / \u03b7_back + T_b0, from the motor out, against T_hand");
  w.source("Power balance of each stage driven from its output");
  w.note("At rest and with the power off; gravity is not counted.");
  const double limit = w.input(context.project.requirements.handTorque, "requirements.handTorque");
  const bool motor = w.has(Part::Motor);
  if (!w.has(Part::Stages) || !motor) return;
  const double drag = w.value(context.result.motor->dragTorque,
                              {"T_0", "No-load torque of the motor", Quantity::Torque, "N*m"});
  w.follows(showBackdriving(*context.result.stages, drag, w), "T_hand");
  w.compare(backdrivingTorqueAtJoint(*context.result.stages, drag), limit);
}

void mass(const CheckContext& context, CheckWriter& w) {
  w.formula("m = m_m + \u2211 m_k against m_max");
  w.source("Sum over motor and stages, housing and wiring apart");
  const double limit = w.input(context.project.requirements.massMax, "requirements.massMax");
  w.follows(showMasses(context, w), "m_max");
  w.compare(actuatorMass(context.project), limit);
}

void length(const CheckContext& context, CheckWriter& w) {
  w.formula("l = l_m + \u2211 l_k against l_max");
  w.source("Motor and stages in line; housing and wiring apart");
  const double limit = w.input(context.project.requirements.lengthMax, "requirements.lengthMax");
  w.follows(showLengths(context, w), "l_max");
  w.compare(actuatorLength(context.project), limit);
}

void diameter(const CheckContext& context, CheckWriter& w) {
  w.formula("D = largest of D_m and D_k against D_max");
  w.source("Motor and stages on one axis");
  const double limit =
      w.input(context.project.requirements.diameterMax, "requirements.diameterMax");
  sizeInputs(context, w, context.variant().motor.diameter, &Stage::diameter, "diameter");
  if (w.explains()) w.follows("max(" + overStages(context, "D_m", "D_", ", ") + ")", "D_max");
  w.compare(actuatorDiameter(context.project), limit);
}

}  // namespace jw::joint_checks

// Headline figures of the chain from motor to joint.
#include <array>
#include <cmath>
#include <span>
#include <string>

#include <fmt/format.h>

#include "core/checks/headline_rows.h"
#include "core/checks/joint_check_works.h"
#include "core/physics/backdriving.h"
#include "core/physics/plain_stages.h"
#include "core/physics/wind_up.h"

namespace jw {
namespace {

using namespace headline;

/// Ratio and efficiency of stage `k`, counted from 0.
void showStage(C context, W w, std::size_t k, bool efficiency) {
  const StageData& data = (*context.result.stages)[k];
  const std::string n = std::to_string(k + 1);
  w.value(data.stage.ratio, {"N_" + n, "Ratio of stage " + n, Quantity::Ratio, "1"});
  if (!efficiency) return;
  w.value(data.efficiency.driving,
          {"\u03b7_" + n, "Efficiency of stage " + n, Quantity::Fraction, "%"});
}

void ratio(C context, W w) {
  if (!w.explains()) return;
  std::string product;
  for (std::size_t k = 0; k < context.result.stages->size(); ++k) {
    showStage(context, w, k, false);
    product += fmt::format("{}N_{}", k > 0 ? " · " : "", k + 1);
  }
  w.follows(product.empty() ? "1" : product);
}

void inertiaAtMotor(C context, W w) {
  const Motor& motor = context.variant().motor;
  w.input(motor.rotorInertia, "motor.rotorInertia");
  w.input(motor.brakeInertia, "motor.brakeInertia");
  w.value(context.result.chain->inertiaAtMotor,
          {"J_refl", "Stages and load at the motor shaft", Quantity::Inertia, "kg*m^2"});
  w.follows("J_m + J_b + J_refl");
}

void startingTorque(C context, W w) {
  if (!w.explains()) return;
  std::string sum, gain;
  for (std::size_t k = 0; k < context.result.stages->size(); ++k) {
    const std::string n = std::to_string(k + 1);
    w.value(
        (*context.result.stages)[k].starting(),
        {"T_s" + n, "Starting torque of stage " + n + ", at its input", Quantity::Torque, "N*m"});
    showStage(context, w, k, true);
    sum += fmt::format("{}T_s{}{}", k > 0 ? " + " : "", n, gain.empty() ? "" : " / (" + gain + ")");
    gain += fmt::format("{}N_{} · \u03b7_{}", k > 0 ? " · " : "", n, n);
  }
  w.follows(sum.empty() ? "0" : sum);
}

void backdriving(C context, W w) {
  const double drag = w.value(context.result.motor->dragTorque,
                              {"T_0", "No-load torque of the motor", Quantity::Torque, "N*m"});
  w.follows(joint_checks::showBackdriving(*context.result.stages, drag, w));
}

/// "N_2 · N_3" of the stages behind stage `k`.
std::string behind(std::size_t k, std::size_t count) {
  std::string product;
  for (std::size_t j = k + 1; j < count; ++j) {
    product += fmt::format("{}N_{}", product.empty() ? "" : " · ", j + 1);
  }
  return product;
}

/// Every stage's stiffness at its share of the joint's peak torque.
void stiffness(C context, W w) {
  if (!w.explains()) return;
  const std::vector<Stage> stages = plainStages(*context.result.stages);
  double torque = peak(context.result.load->total);
  std::string sum;
  for (std::size_t k = stages.size(); k-- > 0;) {
    const std::string n = std::to_string(k + 1);
    const double own = chainStiffness({stages[k]}, torque).value_or(kUnset);
    torque /= stages[k].ratio;
    showStage(context, w, k, false);
    if (!std::isfinite(own)) continue;  // counts as rigid
    w.value(own, {"k_" + n, "Stiffness of stage " + n + ", at its output",
                  Quantity::TorsionalStiffness, "N*m/rad"});
    const std::string ratio = behind(k, stages.size());
    sum += fmt::format("{}1 / (k_{}{})", sum.empty() ? "" : " + ", n,
                       ratio.empty() ? "" : " · (" + ratio + ")²");
  }
  w.follows(sum.empty() ? "∞" : "1 / (" + sum + ")");
}

void backlash(C context, W w) {
  if (!w.explains()) return;
  const std::size_t count = context.result.stages->size();
  std::string sum;
  for (std::size_t k = count; k-- > 0;) {
    const std::string n = std::to_string(k + 1);
    w.value((*context.result.stages)[k].stage.backlash,
            {"b_" + n, "Backlash of stage " + n + ", at its output", Quantity::Angle, "arcmin"});
    showStage(context, w, k, false);
    const std::string ratio = behind(k, count);
    sum += fmt::format("{}b_{}{}", sum.empty() ? "" : " + ", n,
                       ratio.empty() ? "" : " / (" + ratio + ")");
  }
  w.follows(sum.empty() ? "0" : sum);
}

/// [rad] sum of b_k / prod_{i>k} N_i; unset where a stage's is not given.
double jointBacklash(const std::vector<StageData>& stages) {
  double sum = 0;
  for (const StageData& one : stages) sum = sum / one.stage.ratio + one.stage.backlash;
  return sum;
}

constexpr Headline kRows[] = {
    {"chain.ratio", "Ratio from motor to joint", Quantity::Ratio, "1", hasChain,
     [](P, E e) { return std::abs(e.chain->ratio); }, "N = product of all stages", "Definition",
     &ratio},
    {"chain.inertia_at_motor", "Inertia at the motor shaft, motor included", Quantity::Inertia,
     "kg*m^2", hasDemand,
     [](P p, E e) {
       const Motor& motor = p.active().motor;
       return motor.rotorInertia + motor.brakeInertia + e.chain->inertiaAtMotor;
     },
     "J = J_m + J_b + J_refl, J_refl = \u2211 J / N²", "Equal kinetic energy; textbook mechanics",
     &inertiaAtMotor},
    {"chain.starting_torque", "Torque at the motor that starts the unloaded chain",
     Quantity::Torque, "N*m", hasChain, [](P, E e) { return startingTorqueAtMotor(*e.stages); },
     "T = \u2211 T_s / product of N \u03b7 before", "Power balance of each stage", &startingTorque},
    {"chain.backdriving_torque", "Torque at the joint that drives everything back",
     Quantity::Torque, "N*m", hasChainAndMotor,
     [](P, E e) { return backdrivingTorqueAtJoint(*e.stages, e.motor->dragTorque); },
     "T_out = T_in N / \u03b7_back + T_b, from the motor out",
     "Power balance of each stage driven from its output", &backdriving},
    {"chain.stiffness", "Stiffness at the joint, at its peak torque", Quantity::TorsionalStiffness,
     "N*m/arcmin", hasChain,
     [](P, E e) {
       return chainStiffness(plainStages(*e.stages), peak(e.load->total)).value_or(kUnset);
     },
     "1 / K = \u2211 1 / (k N_behind²)", "Springs in series; textbook mechanics", &stiffness},
    {"chain.backlash", "Backlash at the joint", Quantity::Angle, "arcmin", hasChain,
     [](P, E e) { return jointBacklash(*e.stages); }, "b = \u2211 b_k / N_behind", "Plain geometry",
     &backlash},
};

}  // namespace

std::span<const Headline> chainHeadlines() { return kRows; }

}  // namespace jw

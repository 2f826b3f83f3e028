// The working of each check: complete, and its symbols give the verdict again by its own formula.
#include <algorithm>
#include <cmath>
#include <map>

#include <gtest/gtest.h>

#include "core/checks/check_writer.h"
#include "core/checks/evaluation.h"
#include "core/model/field_catalogue.h"
#include "tests/core/checks/example_project.h"

namespace jw {
namespace {

/// A check with its working, the symbols by name.
struct Explained {
  Check check;
  Working working;
  std::map<std::string, double> symbol;

  double at(const std::string& name) const {
    EXPECT_TRUE(symbol.contains(name)) << check.title << " does not show " << name;
    return symbol.contains(name) ? symbol.at(name) : kUnset;
  }
};

std::vector<Explained> explainedChecks(const Project& project) {
  const Evaluation evaluation = evaluate(project);
  std::vector<Explained> all;
  for (const Check& check : evaluation.checks) {
    Explained one{check, explain(project, evaluation, check), {}};
    for (const WorkingSymbol& symbol : one.working.symbols) {
      one.symbol[symbol.symbol] = symbol.value;
    }
    all.push_back(std::move(one));
  }
  return all;
}

Explained explained(std::string_view id, int stage = -1) {
  for (const Explained& one : explainedChecks(exampleProject())) {
    if (one.check.id == id && one.check.stage == stage) return one;
  }
  ADD_FAILURE() << id << " is not among the checks";
  return {};
}

TEST(Explain, EveryCheckHasFormulaSourceAndSymbols) {
  for (const Explained& one : explainedChecks(exampleProject())) {
    SCOPED_TRACE(one.check.title);
    EXPECT_FALSE(one.working.formula.empty());
    EXPECT_FALSE(one.working.source.empty());
    EXPECT_FALSE(one.working.result.empty());
    EXPECT_FALSE(one.working.symbols.empty());
  }
}

// What is known is shown even while the check is open.
TEST(Explain, OpenChecksShowWhatIsKnown) {
  Project project = exampleProject();
  ASSERT_TRUE(setField(project, "motor.rotorInertia", "").has_value());
  for (const Explained& one : explainedChecks(project)) {
    if (one.check.stage >= 0) continue;
    SCOPED_TRACE(one.check.title);
    EXPECT_FALSE(one.working.symbols.empty());
  }
}

// x_max = max x / ((I_pk² - I_c²) t_pk)
TEST(Explain, ControllerOverload) {
  const Explained one = explained("controller.overload");
  EXPECT_EQ(one.at("x_max"), one.check.demand);
  EXPECT_EQ(one.check.capacity, 1);
  EXPECT_EQ(one.at("t_pk"), 0.5);
}

// margin = (T_lim - T_a) / (T_peak - T_a) - 1, from the ambient
TEST(Explain, Temperatures) {
  const Explained winding = explained("motor.temperature_winding");
  EXPECT_EQ(winding.at("T_peak"), winding.check.demand);
  EXPECT_EQ(winding.at("T_lim"), winding.check.capacity);
  EXPECT_NEAR(
      (winding.at("T_lim") - winding.at("T_a")) / (winding.at("T_peak") - winding.at("T_a")),
      winding.check.margin + 1, 1e-12);
  EXPECT_LT(winding.at("T_mean"), winding.at("T_peak"));
  EXPECT_LT(winding.at("\u03c1"), 1);
  const Explained housing = explained("motor.temperature_housing");
  EXPECT_EQ(housing.at("T_peak"), housing.check.demand);
  EXPECT_EQ(housing.at("T_h,max"), housing.check.capacity);
  const Explained touch = explained("motor.touch_temperature");
  EXPECT_EQ(touch.at("T_housing"), touch.check.demand);
  EXPECT_EQ(touch.at("T_burn"), touch.check.capacity);
  EXPECT_EQ(touch.check.capacity, 65);
}

// I_dm (1 + alpha (T_mag - T_dm))
TEST(Explain, Magnet) {
  const Explained one = explained("motor.magnet");
  EXPECT_EQ(one.at("I_peak"), one.check.demand);
  const std::string alpha = "\u03b1_dm";
  EXPECT_NEAR(one.at("I_dm") * (1 + one.at(alpha) * (one.at("T_mag") - one.at("T_dm"))),
              one.check.capacity, 1e-12 * one.check.capacity);
}

// Peak and mean power, C (V² - V_dc²) / 2 and the resistor's shares of its ratings.
TEST(Explain, Supply) {
  const Explained peak = explained("supply.power_peak");
  EXPECT_EQ(peak.at("P"), peak.check.demand);
  EXPECT_EQ(peak.at("P_pk"), peak.check.capacity);
  const double period = evaluate(exampleProject()).cycle->period;
  const Explained mean = explained("supply.power_mean");
  EXPECT_NEAR((mean.at("E_drawn") - mean.at("E_returned")) / period, mean.check.demand, 1e-12);
  EXPECT_EQ(mean.at("P_c"), mean.check.capacity);
  const Explained rise = explained("supply.voltage_rise");
  EXPECT_EQ(rise.at("V"), rise.check.demand);
  EXPECT_EQ(rise.at("V_lim"), rise.check.capacity);
  const Explained brake = explained("supply.brake_resistor");
  EXPECT_EQ(
      std::max(brake.at("P_mean") / brake.at("P_br,c"), brake.at("P_peak") / brake.at("P_br")),
      brake.check.demand);
}

TEST(Explain, EveryKindOfCheckIsInTheExample) {
  const std::vector<Explained> all = explainedChecks(exampleProject());
  for (const CheckKind& kind : checkKinds()) {
    const bool there = std::any_of(all.begin(), all.end(),
                                   [&](const Explained& one) { return one.check.id == kind.id; });
    EXPECT_TRUE(there) << kind.id;
  }
}

TEST(Explain, SymbolsAreInUnitsOfTheirQuantityAndPathsExist) {
  const Project project = exampleProject();
  for (const Explained& one : explainedChecks(project)) {
    for (const WorkingSymbol& symbol : one.working.symbols) {
      SCOPED_TRACE(one.check.title + ": " + symbol.symbol);
      EXPECT_TRUE(isUnitOf(symbol.unit, symbol.quantity));
      EXPECT_FALSE(symbol.label.empty());
      if (symbol.path.empty()) continue;
      const auto field = findField(project, symbol.path);
      ASSERT_TRUE(field.has_value());
      EXPECT_EQ(field->number(), symbol.value);
    }
  }
}

TEST(Explain, WorkingDoesNotChangeTheVerdict) {
  const Project project = exampleProject();
  const Evaluation evaluation = evaluate(project);
  for (const Check& check : evaluation.checks) {
    for (const CheckKind& kind : checkKinds()) {
      if (kind.id != check.id) continue;
      Working working;
      const Check again = workOut(kind, {project, evaluation, check.stage}, &working);
      EXPECT_EQ(again.demand, check.demand);
      EXPECT_EQ(again.capacity, check.capacity);
      EXPECT_EQ(again.state, check.state);
    }
  }
}

// L = L_r (T_r / T_av)^p n_r / n_av
TEST(Explain, Life) {
  const Explained one = explained("drive.life", 1);
  const double life = one.at("L_r") * std::pow(one.at("T_r") / one.at("T_av"), one.at("p")) *
                      one.at("n_r") / one.at("n_av");
  EXPECT_NEAR(life, one.check.capacity, 1e-9 * life);
  EXPECT_EQ(one.at("L"), one.check.capacity);
  EXPECT_EQ(one.check.demand, exampleProject().requirements.life);
}

TEST(Explain, DriveLimits) {
  const Explained peak = explained("drive.torque_peak", 1);
  EXPECT_EQ(peak.at("T_out"), peak.check.demand);
  EXPECT_EQ(peak.at("T_p"), peak.check.capacity);
  const Explained average = explained("drive.torque_average", 1);
  EXPECT_EQ(average.at("T_av"), average.check.demand);
  EXPECT_EQ(average.at("T_A"), average.check.capacity);
  const Explained speed = explained("drive.speed_peak", 1);
  EXPECT_EQ(speed.at("n_in"), speed.check.demand);
  EXPECT_EQ(speed.at("n_p"), speed.check.capacity);
  const Explained mean = explained("drive.speed_average", 1);
  EXPECT_EQ(mean.at("n_av"), mean.check.demand);
  EXPECT_EQ(mean.at("n_A"), mean.check.capacity);
}

// I_peak = (T + T_drag) / K_t
TEST(Explain, ControllerCurrents) {
  const Explained peak = explained("controller.current_peak");
  EXPECT_NEAR(std::abs(peak.at("T") + peak.at("T_drag")) / peak.at("K_t"), peak.check.demand,
              1e-12 * peak.check.demand);
  EXPECT_EQ(peak.at("I_peak"), peak.check.demand);
  EXPECT_EQ(peak.at("I_pk"), peak.check.capacity);
  const Explained rms = explained("controller.current_rms");
  EXPECT_EQ(rms.at("I_rms"), rms.check.demand);
  EXPECT_EQ(rms.at("I_c"), rms.check.capacity);
}

// T_h = S_h |T_stat| / N
TEST(Explain, Holding) {
  const Explained one = explained("joint.holding");
  EXPECT_NEAR(one.at("S_h") * std::abs(one.at("T_stat")) / one.at("N"), one.check.demand,
              1e-12 * one.check.demand);
  EXPECT_EQ(one.at("T_b"), one.check.capacity);
}

// kappa = J_refl / (J_m + J_b)
TEST(Explain, InertiaRatio) {
  const Explained one = explained("joint.inertia_ratio");
  EXPECT_NEAR(one.at("J_refl") / (one.at("J_m") + one.at("J_b")), one.check.demand,
              1e-12 * one.check.demand);
}

TEST(Explain, MotorTorqueAndSpeed) {
  const Explained torque = explained("motor.torque");
  EXPECT_EQ(std::abs(torque.at("T")), torque.check.demand);
  EXPECT_NEAR(torque.at("f") - 1, torque.check.margin, 1e-12);
  const Explained speed = explained("motor.speed");
  EXPECT_EQ(speed.at("n_peak"), speed.check.demand);
  EXPECT_EQ(std::min(speed.at("n_0"), speed.at("n_max")), speed.check.capacity);
}

// T_c(n_rms) = K_t I_c - T_drag and P_Cu (R_12 + R_2) + P_drag R_2 = T_w,max - T_a
TEST(Explain, ContinuousTorque) {
  const Explained one = explained("motor.continuous");
  EXPECT_EQ(one.at("T_rms"), one.check.demand);
  EXPECT_NEAR(one.at("K_t") * one.at("I_c") - one.at("T_drag"), one.check.capacity, 1e-12);
  EXPECT_NEAR(one.at("P_Cu") * (one.at("R_12") + one.at("R_2")) + one.at("P_drag") * one.at("R_2"),
              one.at("T_w,max") - one.at("T_a"), 1e-9);
}

TEST(Explain, OpenCheckSaysSo) {
  Project project = exampleProject();
  ASSERT_TRUE(setField(project, "transmission[1].ratedLife", "").has_value());
  for (const Explained& one : explainedChecks(project)) {
    if (one.check.id != "drive.life") continue;
    EXPECT_NE(one.working.result.find("open"), std::string::npos);
    EXPECT_TRUE(std::isnan(one.at("L_r")));
  }
}

}  // namespace
}  // namespace jw

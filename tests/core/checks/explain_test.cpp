// The working of each check: complete, and its symbols give the verdict again by its own formula.
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

TEST(Explain, EveryKindOfCheckIsInTheExample) {
  for (const CheckKind& kind : checkKinds()) {
    explained(kind.id, kind.perStage ? 1 : -1);
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

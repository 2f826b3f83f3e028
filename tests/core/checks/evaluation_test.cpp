// The evaluation as a whole: which parts it makes, what it remarks, where the load is tightest.
#include <cmath>
#include <limits>
#include <stop_token>

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "core/checks/evaluation.h"
#include "tests/core/checks/every_project.h"

namespace jw {
namespace {

// Copper at 80 °C has 1 + 0.00393 * 60 of its resistance at 20 °C.
TEST(Evaluation, PeakFiguresAreAtTheTemperatureInUse) {
  Project project = exampleProject();
  EXPECT_NEAR(evaluate(project).motor->resistance, 0.175 * (1 + 0.00393 * 60), 1e-15);
  EXPECT_NEAR(evaluate(project).motor->torquePerRmsAmp(), 0.11 * (1 - 0.0012 * 60), 1e-15);
  project.active().motor.windingTemperature = kUnset;
  EXPECT_NEAR(evaluate(project).motor->resistance, 0.175, 1e-15);
}

TEST(Evaluation, EmptyProjectIsOpenAndHasNoNumbers) {
  const Evaluation evaluation = evaluate(Project{});
  EXPECT_FALSE(evaluation.cycle || evaluation.load || evaluation.chain || evaluation.motor ||
               evaluation.demand || evaluation.envelope);
  EXPECT_FALSE(evaluation.missing.empty());
  EXPECT_FALSE(evaluation.checks.empty());
  for (const Check& check : evaluation.checks) {
    EXPECT_EQ(check.state, CheckState::Open) << check.title;
    EXPECT_FALSE(check.missing.empty()) << check.title;
  }
  for (const NamedQuantity& quantity : evaluation.quantities) {
    EXPECT_TRUE(std::isnan(quantity.value)) << quantity.id;
  }
}

TEST(Evaluation, MotionIsKnownBeforeTheMotor) {
  Project project = exampleProject();
  project.active().motor = Motor{};
  const Evaluation evaluation = evaluate(project);
  EXPECT_GT(quantityValue(evaluation, "joint.torque_peak"), 0);
  EXPECT_GT(quantityValue(evaluation, "motor.speed_peak"), 0);
  EXPECT_TRUE(std::isnan(quantityValue(evaluation, "motor.torque_peak")));
  EXPECT_TRUE(std::isnan(quantityValue(evaluation, "no.such.figure")));
}

TEST(Evaluation, StopsWhenAsked) {
  std::stop_source source;
  source.request_stop();
  EXPECT_TRUE(evaluate(exampleProject(), source.get_token()).stopped);
  EXPECT_FALSE(evaluate(exampleProject()).stopped);
}

bool remarksOn(const Evaluation& evaluation, const std::string& path) {
  return std::any_of(evaluation.notices.begin(), evaluation.notices.end(),
                     [&](const Notice& notice) { return notice.text.where == path; });
}

TEST(Evaluation, RemarksOnContradictingFigures) {
  Project project = exampleProject();
  project.active().motor.backEmfConstant = 0.11 / std::sqrt(3) * 1.029;
  EXPECT_FALSE(remarksOn(evaluate(project), "motor.backEmfConstant"));
  project.active().motor.backEmfConstant = 0.11 / std::sqrt(3) * 1.031;
  EXPECT_TRUE(remarksOn(evaluate(project), "motor.backEmfConstant"));
}

TEST(Evaluation, RemarksOnSelfLocking) {
  Project project = exampleProject();
  EXPECT_TRUE(evaluate(project).notices.empty());
  project.active().transmission[1].backdrivingEfficiency = -0.1;
  EXPECT_TRUE(remarksOn(evaluate(project), "transmission[1].backdrivingEfficiency"));
}

TEST(Evaluation, WeakeningAsksForTheInductanceOfTheMagnetsAxis) {
  Project project = exampleProject();
  project.active().controller.fieldWeakening = true;
  project.active().motor.inductance = kUnset;
  EXPECT_TRUE(evaluate(project).motor);  // none at all counts as 0
  project.active().motor.inductanceQ = 0.5e-3;
  const Evaluation lacking = evaluate(project);
  EXPECT_FALSE(lacking.motor || lacking.demand);
  ASSERT_EQ(lacking.missing.size(), 1u);
  EXPECT_EQ(lacking.missing.front().where, "motor.inductance");
  project.active().controller.fieldWeakening = false;
  EXPECT_TRUE(evaluate(project).demand);  // without weakening the q axis alone counts
}

TEST(Evaluation, TemperaturesAreTightestAtTheirPeak) {
  const Evaluation e = evaluate(exampleProject());
  int found = 0;
  for (const Check& check : e.checks) {
    const bool winding = check.id == "motor.temperature_winding";
    if (!winding && check.id != "motor.temperature_housing") continue;
    const Eigen::ArrayXd& node = winding ? e.heat->periodic.winding : e.heat->periodic.housing;
    Eigen::Index at = 0;
    EXPECT_EQ(node.maxCoeff(&at), check.demand) << check.id;
    EXPECT_EQ(check.time, e.cycle->time[at]) << check.id;
    ++found;
  }
  EXPECT_EQ(found, 2);
}

TEST(Evaluation, TightestPointIsTheTightestOfAll) {
  for (const NamedProject& one : everyProject()) {
    SCOPED_TRACE(one.name);
    const Evaluation e = evaluate(one.project);
    double least = std::numeric_limits<double>::infinity();
    for (Eigen::Index i = 0; i < e.cycle->size(); ++i) {
      least = std::min(least,
                       e.envelope->lowest.rayFactor(e.chain->motorSpeed[i], e.demand->torque[i]));
    }
    EXPECT_NEAR(e.tightest->factor, least, 1e-9 * least);
  }
}

}  // namespace
}  // namespace jw

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

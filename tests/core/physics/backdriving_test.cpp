#include "core/physics/backdriving.h"

#include <cmath>
#include <numbers>

#include <gtest/gtest.h>

#include "core/checks/evaluation.h"
#include "tests/core/checks/example_project.h"

namespace jw {
namespace {

StageData stageOf(double ratio, double starting, double back) {
  Stage stage;
  stage.family = StageFamily::GivenRatio;
  stage.ratio = ratio;
  stage.efficiency = 0.9;
  stage.backdrivingEfficiency = back;
  stage.startingTorque = starting;
  return *completeStage(stage, 20, "stage");
}

// 0.02 + 0.06 / (4 x 0.9), by hand.
TEST(Backdriving, StartingTorquesAddUpAtTheMotor) {
  EXPECT_NEAR(startingTorqueAtMotor({stageOf(4, 0.02, 0.8), stageOf(10, 0.06, 0.8)}),
              0.02 + 0.06 / 3.6, 1e-15);
  EXPECT_EQ(startingTorqueAtMotor({}), 0);
}

// ((0.01 + 0.02) 4 / 0.8 + 0.06) 10 / 0.5 = 4.2, by hand.
TEST(Backdriving, TorqueAtTheJointGoesThroughEveryStage) {
  EXPECT_NEAR(backdrivingTorqueAtJoint({stageOf(4, 0.02, 0.8), stageOf(10, 0.06, 0.5)}, 0.01), 4.2,
              1e-14);
  EXPECT_EQ(backdrivingTorqueAtJoint({}, 0.01), 0.01);
  StageData stated = stageOf(10, 0.06, 0.5);
  stated.stage.backdrivingTorque = 3;
  EXPECT_NEAR(backdrivingTorqueAtJoint({stated}, 0.1), 0.1 * 10 / 0.5 + 3, 1e-14);
}

TEST(Backdriving, AStageThatLocksItselfCannotBeDrivenBack) {
  EXPECT_TRUE(std::isinf(backdrivingTorqueAtJoint({stageOf(40, 0.1, -0.2)}, 0)));
}

// Through ratios 2 and 80: b = 3'/80 + 1', 1/K = 1/(400 x 80²) + 1/9000, by hand.
TEST(Backdriving, PlayAndStiffnessAreReferredToTheJoint) {
  constexpr double kArcmin = std::numbers::pi / 10800;
  Project project = exampleProject();
  auto& stages = project.active().transmission;
  stages[0].backlash = 3 * kArcmin;
  stages[1].backlash = kArcmin;
  stages[0].stiffness.first = 400;
  stages[1].stiffness.first = 9000;
  const Evaluation result = evaluate(project);
  EXPECT_NEAR(quantityValue(result, "chain.backlash"), 1.0375 * kArcmin, 1e-12);
  EXPECT_NEAR(quantityValue(result, "chain.stiffness"), 1 / (1 / (400.0 * 6400) + 1 / 9000.0),
              1e-6);
  stages[0].backlash = kUnset;
  EXPECT_TRUE(std::isnan(quantityValue(evaluate(project), "chain.backlash")));
}

}  // namespace
}  // namespace jw

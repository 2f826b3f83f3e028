// The chain of stages: signs in all quadrants, the split of the catalogue's efficiency, locking.
#include <cmath>

#include <gtest/gtest.h>

#include "core/physics/stage_chain.h"
#include "tests/core/physics/hand_cycle.h"

namespace jw {
namespace {

Stage stageOf(double ratio, double efficiency) {
  Stage stage;
  stage.ratio = ratio;
  stage.efficiency = efficiency;
  return stage;
}

StageChain chainOf(const std::vector<Stage>& stages, double torque, double speed,
                   double acceleration = 0) {
  const auto chain = reflectThroughChain(stages, oneInstant(speed, acceleration),
                                         Eigen::ArrayXd::Constant(1, torque), 0);
  EXPECT_TRUE(chain.has_value()) << (chain ? "" : describe(chain.error()));
  return *chain;
}

double motorTorque(const std::vector<Stage>& stages, double torque, double speed,
                   double acceleration = 0) {
  return chainOf(stages, torque, speed, acceleration).motorTorque[0];
}

TEST(StageChain, IdealReducer) {
  const StageChain chain = chainOf({stageOf(100, 1)}, 42, 2, 3);
  EXPECT_DOUBLE_EQ(chain.motorTorque[0], 0.42);
  EXPECT_DOUBLE_EQ(chain.motorSpeed[0], 200);
  EXPECT_DOUBLE_EQ(chain.motorAcceleration[0], 300);
  EXPECT_DOUBLE_EQ(chain.stages[0].loss[0], 0);
}

TEST(StageChain, DirectDriveIsTransparent) {
  const StageChain chain = chainOf({}, 42, 2, 3);
  EXPECT_EQ(chain.motorTorque[0], 42);
  EXPECT_EQ(chain.motorSpeed[0], 2);
  EXPECT_EQ(chain.ratio, 1);
}

// Own arithmetic: 10 : 1, efficiency 0.8, backward 0.7, drag 0.05 N·m: driving 40/8 + 0.05 = 5.05;
// driven 40/10 * 0.7 - 0.05 = 2.75. The drag opposes the input's turning in every quadrant.
TEST(StageChain, FourQuadrants) {
  Stage stage = stageOf(10, kUnset);
  stage.dragTorque = 0.05;
  stage.backdrivingEfficiency = 0.7;
  stage.ratedTorque = 40;
  stage.efficiency = 4 / 5.05;  // 40 N·m ideally take 4 N·m, really 5.05
  EXPECT_NEAR(motorTorque({stage}, 40, 1), 5.05, 1e-12);
  EXPECT_NEAR(motorTorque({stage}, -40, -1), -5.05, 1e-12);
  EXPECT_NEAR(motorTorque({stage}, 40, -1), 2.75, 1e-12);
  EXPECT_NEAR(motorTorque({stage}, -40, 1), -2.75, 1e-12);
  stage.reverses = true;
  EXPECT_NEAR(motorTorque({stage}, 40, 1), -5.05, 1e-12);
  EXPECT_NEAR(motorTorque({stage}, -40, -1), 5.05, 1e-12);
  EXPECT_NEAR(motorTorque({stage}, 40, -1), -2.75, 1e-12);
  EXPECT_NEAR(motorTorque({stage}, -40, 1), 2.75, 1e-12);
}

TEST(StageChain, StandstillCountsNoFriction) {
  Stage stage = stageOf(10, 0.6);
  stage.dragTorque = 0.05;
  stage.ratedTorque = 40;
  EXPECT_EQ(motorTorque({stage}, 40, 0), 4);
  EXPECT_EQ(motorTorque({stage}, -40, 0), -4);
}

TEST(StageChain, LossIsNeverNegative) {
  Stage stage = stageOf(10, 0.6);
  stage.dragTorque = 0.05;
  stage.ratedTorque = 40;
  for (const double backdriving : {-3.0, 0.0, 0.4, 1.0}) {
    stage.backdrivingEfficiency = backdriving;
    for (const double speed : {-2.0, -1e-9, 0.0, 1e-9, 2.0}) {
      for (const double torque : {-60.0, -0.1, 0.0, 0.1, 60.0}) {
        EXPECT_GE(chainOf({stage}, torque, speed).stages[0].loss[0], 0);
      }
    }
  }
}

// The data sheet's figure holds at rated torque, drag included: it must come back exactly there,
// and part load must be worse.
TEST(StageChain, CatalogueEfficiencyComesBackAtRatedTorque) {
  Stage stage = stageOf(80, 0.75);
  stage.dragTorque = 0.03;
  stage.ratedTorque = 60;
  const auto overall = [&](double torque) {
    const StageChain chain = chainOf({stage}, torque, 1.3);
    return torque * 1.3 / (chain.motorTorque[0] * chain.motorSpeed[0]);
  };
  EXPECT_NEAR(overall(60), 0.75, 1e-14);
  EXPECT_LT(overall(30), overall(60));
  EXPECT_LT(overall(6), overall(30));
  EXPECT_GT(overall(120), 0.75);
  // By hand: mesh = 0.75/(1 - 0.75 * 0.03 * 80/60) = 0.773196; at a tenth of the rated torque
  // 6/80/0.773196 + 0.03 = 0.127 N·m, efficiency 0.075/0.127 = 0.590551.
  EXPECT_NEAR(stageEfficiency(stage, "")->driving, 0.773196, 5e-7);
  EXPECT_NEAR(overall(6), 0.590551, 5e-7);
}

TEST(StageChain, BackdrivingEstimate) {
  const StageEfficiency efficiency = *stageEfficiency(stageOf(5, 0.8), "");
  EXPECT_TRUE(efficiency.backdrivingEstimated);
  EXPECT_NEAR(efficiency.backdriving, 2 - 1 / 0.8, 1e-15);
  EXPECT_FALSE(efficiency.selfLocking());
}

// Efficiency 0.4 means 2 - 1/0.4 = -0.5: the load cannot drive it; the motor pushes it down with
// half of the ideal torque, in the direction of motion.
TEST(StageChain, SelfLockingHasToBePushedDown) {
  const Stage stage = stageOf(50, 0.4);
  EXPECT_TRUE(stageEfficiency(stage, "")->selfLocking());
  EXPECT_NEAR(motorTorque({stage}, 100, -1), -1, 1e-12);
}

TEST(StageChain, TwoStagesMultiply) {
  Stage belt = stageOf(2, 0.97);
  Stage gear = stageOf(80, 0.75);
  gear.reverses = true;
  EXPECT_NEAR(motorTorque({belt, gear}, 97, 1), -97 / (160 * 0.97 * 0.75), 1e-12);
  EXPECT_EQ(chainOf({belt, gear}, 97, 1).ratio, -160);
  // The first stage's output is the second's input.
  const StageChain chain = chainOf({belt, gear}, 97, 1);
  EXPECT_EQ(chain.stages[0].outputSpeed[0], chain.stages[1].inputSpeed[0]);
  EXPECT_EQ(chain.stages[0].outputTorque[0], chain.stages[1].inputTorque[0]);
}

// Inertias by hand, lossless 2 : 1 and 5 : 1: at the motor J1 + (J1' + J2)/4 + (J2' + J)/100.
TEST(StageChain, InertiasAtEveryShaft) {
  Stage first = stageOf(2, 1);
  first.inertia = 0.3;
  first.outputInertia = 0.8;
  Stage second = stageOf(5, 1);
  second.inertia = 0.4;
  second.outputInertia = 10;
  const double expected = 0.3 + (0.8 + 0.4) / 4 + (10 + 50) / 100.0;
  const double acceleration = 0.7;
  const auto chain = reflectThroughChain({first, second}, oneInstant(1, acceleration),
                                         Eigen::ArrayXd::Constant(1, 50 * acceleration), 50);
  EXPECT_NEAR(chain->inertiaAtMotor, expected, 1e-14);
  EXPECT_NEAR(chain->motorTorque[0], expected * 10 * acceleration, 1e-12);
}

// While braking, a stage's own inertia can turn the power of the stages before it around: 1 kg·m²
// at the output of the gear, driven by 3 N·m from the joint, braked with 5 rad/s²: 3 - 5 = -2 N·m.
TEST(StageChain, DirectionOfPowerIsJudgedAtEachStage) {
  Stage stage = stageOf(10, 0.8);
  stage.backdrivingEfficiency = 0.5;
  stage.outputInertia = 1;
  EXPECT_NEAR(motorTorque({stage}, 3, 1, -5), -2.0 / 10 * 0.5, 1e-14);
  EXPECT_NEAR(motorTorque({stage}, 3, 1, 0), 3.0 / 8, 1e-14);
}

TEST(StageChain, SaysWhatIsMissing) {
  const auto where = [](const std::vector<Stage>& stages) {
    const auto chain = reflectThroughChain(stages, oneInstant(1, 0), Eigen::ArrayXd::Zero(1), 0);
    return chain ? std::string() : chain.error().where;
  };
  const Stage good = stageOf(5, 0.9);
  EXPECT_EQ(where({good, stageOf(kUnset, 0.9)}), "transmission[1].ratio");
  EXPECT_EQ(where({stageOf(5, kUnset), good}), "transmission[0].efficiency");
  Stage drag = good;
  drag.dragTorque = 0.1;
  EXPECT_EQ(where({good, drag}), "transmission[1].ratedTorque");
  // At 10 N·m the whole loss is 2/0.9 - 2 = 0.222 N·m at the input: a drag of 0.1 fits, 0.3 does
  // not.
  drag.ratedTorque = 10;
  EXPECT_EQ(where({good, drag}), "");
  drag.dragTorque = 0.3;
  EXPECT_EQ(where({good, drag}), "transmission[1].dragTorque");
}

}  // namespace
}  // namespace jw

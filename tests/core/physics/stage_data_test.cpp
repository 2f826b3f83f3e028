#include "core/physics/stage_data.h"

#include <cmath>

#include <gtest/gtest.h>

#include "core/physics/grease_table.h"
#include "core/physics/stage_chain.h"
#include "tests/core/physics/hand_cycle.h"

namespace jw {
namespace {

Stage gearStage() {
  Stage stage;
  stage.family = StageFamily::StrainWave;
  stage.ratio = 100;
  stage.efficiency = 0.8;
  stage.ratedTorque = 50;
  stage.ratedSpeed = 200;
  return stage;
}

// Straight lines between the points by hand, held beyond the ends.
TEST(GreaseTable, InterpolatesAndHoldsTheEnds) {
  const auto table = readGreaseTable(" 20 degC 1; -20 degC 2.4\n0 °C 1.5 ;");
  ASSERT_TRUE(table.has_value());
  EXPECT_DOUBLE_EQ(table->factorAt(-20), 2.4);
  EXPECT_DOUBLE_EQ(table->factorAt(-10), 1.95);
  EXPECT_DOUBLE_EQ(table->factorAt(10), 1.25);
  EXPECT_DOUBLE_EQ(table->factorAt(-60), 2.4);
  EXPECT_DOUBLE_EQ(table->factorAt(90), 1);
  EXPECT_DOUBLE_EQ(readGreaseTable("")->factorAt(5), 1);
}

TEST(GreaseTable, RefusesWhatItCannotRead) {
  for (const char* text : {"20 degC", "1.5", "20 degC 0", "20 degC -1", "20 kg 1",
                           "20 degC 1; 20 degC 2", "20 degC nan", "a b c", "20 degC 1e9"}) {
    const auto table = readGreaseTable(text);
    ASSERT_FALSE(table.has_value()) << text;
    EXPECT_FALSE(table.error().what.empty()) << text;
    EXPECT_NE(table.error().remedy.find("-20 degC"), std::string::npos) << text;
  }
}

TEST(StageData, GreaseFactorScalesTheNoLoadTorqueOnly) {
  Stage stage = gearStage();
  stage.dragTorque = 0.02;
  stage.dragDamping = 1e-4;
  stage.greaseTable = "-20 degC 3; 20 degC 1";
  const auto cold = completeStage(stage, 0, "s");
  const auto warm = completeStage(stage, 20, "s");
  ASSERT_TRUE(cold && warm);
  EXPECT_DOUBLE_EQ(cold->dragFactor, 2);
  EXPECT_DOUBLE_EQ(warm->drag(200), 0.04);
  EXPECT_DOUBLE_EQ(cold->drag(200), 0.08);
  EXPECT_DOUBLE_EQ(cold->efficiency.driving, warm->efficiency.driving);
  // eta_mesh = 0.5 / (0.5/0.8 - 0.04) by hand.
  EXPECT_NEAR(warm->efficiency.driving, 0.5 / 0.585, 1e-12);
}

TEST(StageData, NamesWhatIsMissing) {
  Stage stage;
  stage.family = StageFamily::StrainWave;
  EXPECT_EQ(completeStage(stage, 20, "t[0]").error().where, "t[0].ratio");
  stage.ratio = 50;
  EXPECT_EQ(completeStage(stage, 20, "t[0]").error().where, "t[0].efficiency");
  stage.efficiency = 0.8;
  EXPECT_TRUE(completeStage(stage, 20, "t[0]").has_value());
  stage.dragDamping = 1e-4;
  EXPECT_EQ(completeStage(stage, 20, "t[0]").error().where, "t[0].ratedTorque");
  stage.ratedTorque = 20;
  EXPECT_EQ(completeStage(stage, 20, "t[0]").error().where, "t[0].ratedSpeed");
  stage.greaseTable = "cold";
  EXPECT_EQ(completeStage(stage, 20, "t[0]").error().where, "t[0].greaseTable");
}

// Energy: the loss is what goes in less what comes out, never negative, in all four quadrants.
TEST(StageData, CreepLosesPowerAndRatio) {
  Stage stage;
  stage.family = StageFamily::Traction;
  stage.ratio = 8;
  stage.efficiency = 1;
  StageData data = *completeStage(stage, 20, "s");
  data.slipTorque = 40;
  data.creepAtSlip = 0.02;
  for (const double torque : {20.0, -20.0}) {
    for (const double speed : {5.0, -5.0}) {
      const StageChain chain =
          reflectThroughChain({data}, oneInstant(speed, 0), Eigen::ArrayXd::Constant(1, torque), 0);
      const double creep = torque * speed > 0 ? 0.01 : -0.01;
      EXPECT_NEAR(chain.motorSpeed[0], 8 * speed * (1 + creep), 1e-12);
      EXPECT_NEAR(chain.stages[0].loss[0], 20 * 5 * 0.01, 1e-12);
    }
  }
}

TEST(StageData, StartingTorqueCountsWhereAMotionStarts) {
  Stage stage = gearStage();
  stage.dragTorque = 0.02;
  stage.startingTorque = 0.05;
  SampledCycle cycle = oneInstant(0, 0);
  cycle.speed.resize(4);
  cycle.speed << 0, 1, 0, 0;
  cycle.acceleration = Eigen::ArrayXd::Zero(4);
  const auto chain = reflectThroughChain({stage}, cycle, Eigen::ArrayXd::Zero(4), 0);
  EXPECT_DOUBLE_EQ(chain->motorTorque[0], 0.05);
  EXPECT_DOUBLE_EQ(chain->motorTorque[1], 0.02);
  EXPECT_DOUBLE_EQ(chain->motorTorque[2], 0);
  EXPECT_DOUBLE_EQ(chain->motorTorque[3], 0);
}

}  // namespace
}  // namespace jw

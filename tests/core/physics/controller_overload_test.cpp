// Overload of the controller by hand numbers.
#include <cmath>

#include <gtest/gtest.h>

#include "core/physics/controller_overload.h"
#include "tests/core/physics/hand_cycle.h"

namespace jw {
namespace {

/// Steps of one second between the samples.
SampledCycle seconds(Eigen::Index samples) {
  Eigen::ArrayXd weight = Eigen::ArrayXd::Ones(samples);
  weight[0] = weight[samples - 1] = 0.5;
  const Eigen::ArrayXd zero = Eigen::ArrayXd::Zero(samples);
  return handCycle(zero, zero, weight);
}

Eigen::ArrayXd amps(std::initializer_list<double> values) {
  Eigen::ArrayXd all(static_cast<Eigen::Index>(values.size()));
  std::copy(values.begin(), values.end(), all.begin());
  return all;
}

// I_c = 5, I_pk = 15 A for 2 s: 400 A²s may gather. 10 A for 2 s gather 150 A²s; 0 A then recover
// 25 A² per second, and half a square on the ramp: (100 + 0)/2 - 25 = 25 before it falls.
TEST(ControllerOverload, GathersAndRecovers) {
  const Eigen::ArrayXd current = amps({10, 10, -10, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 10});
  // The last ramp is +25 too, so each cycle starts with 25: 25 + 75 + 75 + 25 = 200.
  EXPECT_NEAR(overloadShare(seconds(14), current, 5, 15, 2), 200.0 / 400, 1e-12);
}

TEST(ControllerOverload, NothingAboveTheContinuousCurrent) {
  EXPECT_EQ(overloadShare(seconds(4), amps({5, -5, 5, 5}), 5, 15, 2), 0);
}

TEST(ControllerOverload, GatheringFromCycleToCycleNeverEnds) {
  EXPECT_TRUE(std::isinf(overloadShare(seconds(4), amps({6, 6, 6, 6}), 5, 15, 2)));
  EXPECT_TRUE(std::isinf(overloadShare(seconds(4), amps({6, 0, 0, 0}), 5, 5, 2)));  // no reserve
}

// The peak current for its whole time, from rest, is the whole share.
TEST(ControllerOverload, PeakForItsTimeIsTheWhole) {
  Eigen::ArrayXd current = Eigen::ArrayXd::Zero(60);
  current.segment(20, 3).setConstant(15);
  const double ramps = 2 * (225.0 / 2 - 25);
  EXPECT_NEAR(overloadShare(seconds(60), current, 5, 15, 2), (2 * 200 + ramps) / 400, 1e-12);
}

TEST(ControllerOverload, DeratesInAStraightLine) {
  Controller controller;
  controller.currentContinuous = 10;
  EXPECT_EQ(deratedContinuousCurrent(controller), 10);
  controller.deratingStart = 60;
  controller.deratingEnd = 100;
  EXPECT_EQ(deratedContinuousCurrent(controller), 10);  // no heat sink given
  controller.heatSink = 50;
  EXPECT_EQ(deratedContinuousCurrent(controller), 10);
  controller.heatSink = 70;
  EXPECT_NEAR(deratedContinuousCurrent(controller), 7.5, 1e-12);
  controller.heatSink = 101;
  EXPECT_EQ(deratedContinuousCurrent(controller), 0);
}

TEST(ControllerOverload, LossesOfTheElectronics) {
  Controller controller;
  controller.idlePower = 3;
  controller.lossPerAmpere = 0.5;
  controller.lossResistance = 0.02;
  EXPECT_NEAR(controllerLoss(controller, 10.0), 3 + 5 + 2, 1e-12);
}

}  // namespace
}  // namespace jw

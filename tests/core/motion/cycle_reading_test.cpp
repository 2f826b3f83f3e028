#include "core/motion/cycle_reading.h"

#include <cmath>

#include <gtest/gtest.h>

namespace jw {
namespace {

// A constant-speed stretch of 2 s with a jump at 1 s, sampled by hand with trapezoid weights.
SampledCycle steps() {
  SampledCycle cycle;
  cycle.time = (Eigen::ArrayXd(5) << 0, 1, 1, 1.5, 2).finished();
  cycle.weight = (Eigen::ArrayXd(5) << 0.5, 0.5, 0.25, 0.5, 0.25).finished();
  cycle.period = 2;
  return cycle;
}

TEST(CycleReading, MeanAndRmsOfASineAreTheTextbookOnes) {
  // Over full periods the mean of a sine is 0 and its rms is the amplitude over sqrt(2) (any
  // textbook on alternating current; common practice). Simpson's rule over many samples is exact
  // to far below the tolerance.
  Cycle source;
  Segment wave;
  wave.law = MotionLaw::Sinusoid;
  wave.travel = 0.5;
  wave.duration = 2;
  source.segments = {wave};
  const auto cycle = sampleCycle(source);
  ASSERT_TRUE(cycle);
  EXPECT_NEAR(cycleMean(*cycle, cycle->angle), 0, 1e-9);
  EXPECT_NEAR(cycleRms(*cycle, cycle->angle), 0.5 / std::sqrt(2.0), 1e-9);
}

TEST(CycleReading, ReadsBetweenSamplesAndAfterAJump) {
  // Linear interpolation worked by hand.
  const SampledCycle cycle = steps();
  const Eigen::ArrayXd values = (Eigen::ArrayXd(5) << 0, 10, 20, 30, 20).finished();
  EXPECT_DOUBLE_EQ(valueAt(cycle, values, 0.25), 2.5);
  EXPECT_DOUBLE_EQ(valueAt(cycle, values, 1), 20) << "at a jump the value after it counts";
  EXPECT_DOUBLE_EQ(valueAt(cycle, values, 1.75), 25);
}

TEST(CycleReading, StaysAtTheEndsOutsideTheCycle) {
  const SampledCycle cycle = steps();
  const Eigen::ArrayXd values = (Eigen::ArrayXd(5) << 7, 10, 20, 30, 9).finished();
  EXPECT_DOUBLE_EQ(valueAt(cycle, values, -1), 7);
  EXPECT_DOUBLE_EQ(valueAt(cycle, values, 5), 9);
  EXPECT_EQ(sampleAt(cycle, -1), 0);
  EXPECT_EQ(sampleAt(cycle, 1), 2);
}

}  // namespace
}  // namespace jw

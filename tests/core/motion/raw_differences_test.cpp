// A parabola through three points is exact on parabolas, however irregular the steps.
#include "core/motion/raw_differences.h"

#include <gtest/gtest.h>

namespace jw {
namespace {

TEST(RawDifferences, AreExactOnParabolas) {
  const std::vector<double> time{0, 0.1, 0.15, 0.4, 0.7, 0.75};
  std::vector<double> values;
  for (const double t : time) values.push_back(3 * t * t - 2 * t + 5);
  const std::vector<double> slope = rawSlope(time, values);
  const std::vector<double> curvature = rawCurvature(time, values);
  for (std::size_t i = 0; i < time.size(); ++i) {
    EXPECT_NEAR(slope[i], 6 * time[i] - 2, 1e-12) << i;
    EXPECT_NEAR(curvature[i], 6, 1e-10) << i;
  }
}

// One wrong value of 1 at equal steps of h: central differences give slopes of 1/2h beside it and
// a curvature of -2/h² at it.
TEST(RawDifferences, SmoothNothing) {
  const std::vector<double> time{0, 0.5, 1, 1.5, 2};
  const std::vector<double> values{0, 0, 1, 0, 0};
  EXPECT_DOUBLE_EQ(rawSlope(time, values)[1], 1);
  EXPECT_DOUBLE_EQ(rawSlope(time, values)[2], 0);
  EXPECT_DOUBLE_EQ(rawCurvature(time, values)[2], -8);
}

}  // namespace
}  // namespace jw

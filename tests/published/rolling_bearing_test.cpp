// Rolling bearings against published examples. FOSSEE = textbook companions of the FOSSEE project,
// where the books' examples were read second-hand.
#include <cmath>
#include <numbers>

#include <gtest/gtest.h>

#include "core/physics/rolling_bearing.h"
#include "tests/core/physics/hand_cycle.h"

namespace jw {
namespace {

constexpr double kRpm = std::numbers::pi / 30;
constexpr double kHour = 3600;

// T. H. Wentzell, Machine Design, ex. 20.1 (FOSSEE): C = 5050 lb, P = 2400 lb, 1750 rpm, ball ->
// 88.73 h. U. C. Jindal, Machine Design, ex. 18-4 (FOSSEE): 41 and 20 kN, 720 rpm -> 8.615 million
// turns, 199.42 h.
TEST(PublishedBearing, RatingLife) {
  EXPECT_NEAR(ratingLife(5050, 2400, 3, 1750 * kRpm) / kHour, 88.73, 5e-3);
  EXPECT_NEAR(ratingLife(41e3, 20e3, 3, 720 * kRpm) / kHour, 199.42, 5e-3);
  EXPECT_NEAR(ratingLifeTurns(41e3, 20e3, 3), 8.615e6, 5e2);
  EXPECT_TRUE(std::isinf(ratingLife(41e3, 0, 3, 1)));
  EXPECT_TRUE(std::isinf(ratingLife(41e3, 1, 3, 0)));
}

// Jindal ex. 18-2 (FOSSEE): 0.56·1250 + 1.2·625 = 1450 N, C = 5590 N -> 57.3 million turns.
TEST(PublishedBearing, RadialAndAxialLoad) {
  EXPECT_NEAR(ratingLifeTurns(5590, 0.56 * 1250 + 1.2 * 625, 3), 57.3e6, 5e4);
}

// Jindal ex. 18-9 (FOSSEE): 3, 4, 5 kN at 1440, 1080, 720 rpm for 1/4, 1/2, 1/4 of the time ->
// 3954.34 N.
TEST(PublishedBearing, MeanLoad) {
  const SampledCycle cycle = handCycle(Eigen::Array3d(1440, 1080, 720) * kRpm,
                                       Eigen::Array3d::Zero(), Eigen::Array3d(0.25, 0.5, 0.25));
  EXPECT_NEAR(equivalentLoad(cycle, Eigen::Array3d(3000, 4000, 5000), cycle.speed, 3), 3954.34,
              5e-3);
}

// a1 of ISO 281:2007 (table from memory; also seen in a secondary public source), which rounds the
// closed form: 0.638, 0.555, 0.465, 0.366, 0.248.
TEST(PublishedBearing, ReliabilityFactor) {
  const double reliability[] = {0.90, 0.95, 0.96, 0.97, 0.98, 0.99};
  const double table[] = {1.00, 0.64, 0.55, 0.47, 0.37, 0.25};
  const double closed[] = {1.000, 0.638, 0.555, 0.465, 0.366, 0.248};
  for (int i = 0; i < 6; ++i) {
    EXPECT_NEAR(reliabilityFactor(reliability[i]), table[i], 6e-3) << reliability[i];
    EXPECT_NEAR(reliabilityFactor(reliability[i]), closed[i], 5.1e-4) << reliability[i];
  }
}

// ISO 76 (from memory), own arithmetic: 1000 N radial and 2000 N axial -> 1600 N.
TEST(PublishedBearing, DeepGrooveStaticLoad) {
  EXPECT_DOUBLE_EQ(deepGrooveStaticLoad(1000, 2000), 1600);
  EXPECT_DOUBLE_EQ(deepGrooveStaticLoad(1000, 100), 1000);
}

}  // namespace
}  // namespace jw

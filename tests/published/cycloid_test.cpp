// Cycloidal discs against published geometry and the published load estimate.
#include <algorithm>
#include <cmath>
#include <numbers>

#include <gtest/gtest.h>

#include "core/physics/cycloid_forces.h"
#include "tests/core/physics/cycloid_support.h"

namespace jw {
namespace {

constexpr double kPi = std::numbers::pi;

// The sheet behind sheetCycloid(): eccentricity below R/N = 7.5 mm, K = 0.533333, ratio 11 reversed
// with the pins held.
TEST(PublishedCycloid, Sheet) {
  const CycloidGeometry g = sheetCycloid();
  EXPECT_NEAR(cycloidShape(g)->shortening(), 0.533333, 5e-7);
  EXPECT_EQ(cycloidRatio(g)->ratio, 11);
  EXPECT_TRUE(cycloidRatio(g)->reverses);
  const GeometryConditions conditions = cycloidConditions(g);
  EXPECT_NEAR(conditions[1].capacity, 7.5e-3, 1e-15);
  EXPECT_EQ(conditions[1].field, "eccentricity");
}

// Own arithmetic: radii from R - r - e = 79 mm to R - r + e = 87 mm, eleven lobes.
TEST(PublishedCycloid, RadiiAndLobes) {
  const CycloidProfile p = cycloidProfile(*cycloidShape(sheetCycloid()), 100);
  const Eigen::ArrayXd radius = (p.x.square() + p.y.square()).sqrt();
  EXPECT_NEAR(radius.minCoeff(), 0.079, 1e-12);
  EXPECT_NEAR(radius.maxCoeff(), 0.087, 1e-12);
  int lobes = 0;
  for (Eigen::Index i = 1; i + 1 < radius.size(); ++i) {
    if (radius[i] > radius[i - 1] && radius[i] > radius[i + 1]) ++lobes;
  }
  EXPECT_EQ(lobes, 11);
}

// University of Waterloo student robotics team's design journal: X = R cos t - r cos(t + psi)
// - e cos(N t), Y = -R sin t + r sin(t + psi) + e sin(N t), tan psi = sin((1 - N) t) / (R/(e N)
// - cos((1 - N) t)); mirrored against this profile.
TEST(PublishedCycloid, ProfileOfTheDesignJournal) {
  const CycloidProfile p = cycloidProfile(*cycloidShape(sheetCycloid()), 30);
  const auto count = static_cast<double>(p.x.size() - 1);
  for (Eigen::Index i = 0; i < p.x.size(); ++i) {
    const double t = 2 * kPi * static_cast<double>(i) / count;
    const double psi = std::atan2(std::sin(-11 * t), 0.090 / (0.004 * 12) - std::cos(-11 * t));
    EXPECT_NEAR(p.x[i], 0.090 * std::cos(t) - 0.007 * std::cos(t + psi) - 0.004 * std::cos(12 * t),
                1e-14);
    EXPECT_NEAR(-p.y[i],
                -0.090 * std::sin(t) + 0.007 * std::sin(t + psi) + 0.004 * std::sin(12 * t), 1e-14);
  }
}

// Own, calculated by brute force: least convex radius of the pins' path 27.9916 mm, its valley's
// radius 3.62963 mm = R (1 - K)²/(N K - 1), hollow.
TEST(PublishedCycloid, RadiiOfCurvature) {
  const CycloidShape shape = *cycloidShape(sheetCycloid());
  EXPECT_NEAR(leastConvexRadius(shape), 27.9916e-3, 5e-8);
  EXPECT_NEAR(pinPathRadius(shape, 0), -3.62963e-3, 5e-9);
}

// Standard estimate 4 T / (N e (N - 1)) (from memory; cf. Malhotra and Parameswaran 1983): 757.58 N
// at 100 N·m. Own: with the sum over the pins half a pitch on, a pin of the largest possible lever
// e (N - 1) has 756.57 N; no pin stands there, so that the largest is a little less.
TEST(PublishedCycloid, LargestPinForce) {
  CycloidGeometry g = sheetCycloid();
  g.discs = 1;
  const CycloidShape shape = *cycloidShape(g);
  EXPECT_NEAR(largestPinForceEstimate(shape, 100), 757.58, 5e-3);
  const CycloidForces forces = *cycloidForces(g, {}, 100);
  EXPECT_NEAR(forces.crankAngle[15], kPi / 12, 1e-15);
  for (int j = 0; j < 12; ++j) {
    const double share = -pinContact(shape, kPi / 12, kPi / 6 * j).lever / (0.004 * 11);
    EXPECT_NEAR(forces.pinForce(j, 15), std::max(0.0, share) * 756.57, 5e-3);
  }
  EXPECT_NEAR(forces.largestPinForce, 757.58, 7.6);  // within 1 % over the turn
}

}  // namespace
}  // namespace jw

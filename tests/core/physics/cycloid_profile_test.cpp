// The disc's profile against brute force, and what can be built.
#include <algorithm>
#include <cmath>
#include <limits>
#include <numbers>

#include <gtest/gtest.h>

#include "core/physics/cycloid_profile.h"
#include "tests/core/physics/cycloid_support.h"

namespace jw {
namespace {

constexpr double kPi = std::numbers::pi;

CycloidShape shapeOf(int pins, double shortening) {
  return {pins, 0.1, 0.004, shortening * 0.1 / pins};
}

// Own, by brute force: from each pin's centre to the nearest of many points of the disc in its pose
// is one pin radius, neither gap nor overlap. The points are 14 µm apart, off by less than 2e-9 m.
TEST(CycloidProfile, TouchesEveryPin) {
  const CycloidShape shape = *cycloidShape(sheetCycloid());
  const CycloidProfile p = cycloidProfile(shape, 4000);
  for (const double crank : {0.0, 0.7, 2.0, -1.3, 40.0}) {
    const DiscPose pose = discPose(shape, crank);
    const double c = std::cos(pose.turn), s = std::sin(pose.turn);
    const Eigen::ArrayXd x = pose.x + c * p.x - s * p.y;
    const Eigen::ArrayXd y = pose.y + s * p.x + c * p.y;
    for (int j = 0; j < shape.pins; ++j) {
      const double angle = 2 * kPi * j / shape.pins;
      const double nearest = std::sqrt(((x - shape.pinCircleRadius * std::cos(angle)).square() +
                                        (y - shape.pinCircleRadius * std::sin(angle)).square())
                                           .minCoeff());
      EXPECT_NEAR(nearest, shape.pinRadius, 5e-9) << crank << " pin " << j;
    }
  }
}

TEST(CycloidProfile, IsClosed) {
  const CycloidProfile p = cycloidProfile(*cycloidShape(sheetCycloid()), 50);
  EXPECT_EQ(p.x.size(), 551);
  EXPECT_EQ(p.x[0], p.x[550]);
  EXPECT_EQ(p.y[0], p.y[550]);
  EXPECT_EQ(p.normalX[0], p.normalX[550]);
}

// Normals stand across the chord of the neighbours, and the turn of the normal over the chord is
// one over the radius (central differences, the step's square off).
TEST(CycloidProfile, NormalsAndRadii) {
  const CycloidProfile p = cycloidProfile(*cycloidShape(sheetCycloid()), 4000);
  for (Eigen::Index i = 1; i + 1 < p.x.size(); i += 37) {
    const double dx = p.x[i + 1] - p.x[i - 1], dy = p.y[i + 1] - p.y[i - 1];
    const double length = std::hypot(dx, dy);
    EXPECT_NEAR((dx * p.normalX[i] + dy * p.normalY[i]) / length, 0, 1e-5);
    EXPECT_LT(dx * p.normalY[i] - dy * p.normalX[i],
              -0.99 * length);  // out is on the right, going round
    const double turn =
        std::asin(p.normalX[i - 1] * p.normalY[i + 1] - p.normalY[i - 1] * p.normalX[i + 1]);
    EXPECT_NEAR(turn / length, 1 / p.radius[i], 1e-3 * std::abs(1 / p.radius[i]) + 2e-3);
  }
}

// Own, by brute force over a lobe, on both sides of K = (N - 2)/(2 N - 1).
TEST(CycloidProfile, LeastConvexRadius) {
  for (const int pins : {6, 12, 40}) {
    for (const double k : {0.1, 0.3, 0.45, 0.55, 0.7, 0.95}) {
      const CycloidShape shape = shapeOf(pins, k);
      double least = std::numeric_limits<double>::infinity();
      for (int i = 0; i <= 200000; ++i) {
        const double radius = pinPathRadius(shape, kPi * i / 200000 / (pins - 1));
        if (radius > 0) least = std::min(least, radius);
      }
      EXPECT_NEAR(leastConvexRadius(shape) / least, 1, 1e-8) << pins << " " << k;
    }
  }
}

// Willis: pins held (N - 1), reversed; output pins held N, the same way round. Other differences
// have a ratio, but no disc of this kind.
TEST(CycloidProfile, Ratio) {
  CycloidGeometry g = sheetCycloid();
  g.held = CycloidHeld::OutputPins;
  EXPECT_EQ(cycloidRatio(g)->ratio, 12);
  EXPECT_FALSE(cycloidRatio(g)->reverses);
  g.lobes = 10;
  EXPECT_EQ(cycloidRatio(g)->ratio, 6);
  EXPECT_FALSE(cycloidShape(g));
  g.lobes = 12;
  EXPECT_FALSE(cycloidRatio(g));
  EXPECT_FALSE(cycloidRatio({}));
  EXPECT_FALSE(cycloidShape({}));
}

/// The field that the only broken condition names.
std::string_view brokenField(const CycloidGeometry& geometry) {
  std::string_view field = "none";
  for (const GeometryCondition& c : cycloidConditions(geometry)) {
    if (!c.holds()) field = field == "none" ? c.field : "several";
  }
  return field;
}

// Each limit broken on its own, from a stage that keeps all.
TEST(CycloidProfile, Conditions) {
  const CycloidGeometry whole = wholeCycloid();
  EXPECT_EQ(cycloidConditions(whole).size(), 8u);
  EXPECT_EQ(brokenField(whole), "none");
  EXPECT_TRUE(cycloidConditions({}).empty());

  CycloidGeometry g = whole;
  g.lobes = 10;
  EXPECT_EQ(brokenField(g), "lobes");
  g = sheetCycloid();
  g.eccentricity = 0.0076;
  EXPECT_EQ(brokenField(g), "eccentricity");
  g = sheetCycloid();
  g.pinRadius = 0.0235;  // neighbours are 46.6 mm apart; the sharpest lobe has 28 mm
  EXPECT_EQ(brokenField(g), "pinRadius");
  g = whole;
  g.outputPins = 2;
  EXPECT_EQ(brokenField(g), "outputPins");
  g = whole;
  g.outputPins = 20;
  EXPECT_EQ(brokenField(g), "outputPinRadius");
  g = whole;
  g.outputPinCircleRadius = 0.070;
  EXPECT_EQ(brokenField(g), "outputPinCircleRadius");
  g = whole;
  g.bearingRadius = 0.043;
  EXPECT_EQ(brokenField(g), "bearingRadius");
}

// A large shortening sharpens the lobes: 40 pins, K = 0.95 on R = 100 mm leave 7.4 mm by the
// closed form; neighbours are 15.7 mm apart, so a pin of 7.6 mm undercuts without touching one.
TEST(CycloidProfile, Undercut) {
  CycloidGeometry g;
  g.pins = 40;
  g.pinCircleRadius = 0.1;
  g.eccentricity = 0.95 * 0.1 / 40;
  const double least = leastConvexRadius({40, 0.1, 0.001, g.eccentricity});
  g.pinRadius = least * 0.999;
  EXPECT_EQ(brokenField(g), "none");
  g.pinRadius = least * 1.001;
  EXPECT_EQ(brokenField(g), "pinRadius");
}

}  // namespace
}  // namespace jw

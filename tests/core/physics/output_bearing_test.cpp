// Forces on the output bearing against statics and dynamics of a point mass.
#include <cmath>
#include <numbers>

#include <gtest/gtest.h>
#include <Eigen/Geometry>

#include "core/physics/rolling_bearing.h"
#include "tests/core/physics/hand_cycle.h"

namespace jw {
namespace {

constexpr double kG = 9.80665;

/// 2 kg at 0.5 m.
Load pointMass() {
  Load load;
  load.linkMass = 2;
  load.linkDistance = 0.5;
  return load;
}

Cycle oneSegment() {
  Cycle source;
  source.segments.resize(1);
  return source;
}

OutputBearingForces forcesAt(const Load& load, double angle, double speed, double acceleration) {
  SampledCycle cycle = oneInstant(speed, acceleration);
  cycle.angle[0] = angle;
  return outputBearingForces(cycle, oneSegment(), load);
}

// Classical mechanics textbooks (from memory): a pendulum let go level pulls with nothing at
// first, with 3 m g at the bottom, where q'^2 = 2 g / r.
TEST(OutputBearing, FallingPendulum) {
  EXPECT_NEAR(forcesAt(pointMass(), 0, 0, -kG / 0.5).radial[0], 0, 1e-12);
  const double bottom = std::sqrt(2 * kG / 0.5);
  EXPECT_NEAR(forcesAt(pointMass(), -std::numbers::pi / 2, bottom, 0).radial[0], 3 * 2 * kG, 1e-9);
}

// Own, by brute force: the force is the mass times gravity less the second difference of its
// position, with the payload at an angle.
TEST(OutputBearing, ForceIsGravityLessAcceleration) {
  Load load = pointMass();
  load.payloadMass = 3;
  load.payloadDistance = 0.8;
  load.payloadAngle = 0.7;
  load.axisTilt = 0.3;
  const double q = 0.4, speed = 1.3, acceleration = -2.1, step = 1e-4;
  const auto place = [&](double t) {  // sum of m r
    const double angle = q + speed * t + acceleration * t * t / 2;
    return Eigen::Vector2d(std::cos(angle) + 2.4 * std::cos(angle + 0.7),
                           std::sin(angle) + 2.4 * std::sin(angle + 0.7));
  };
  const Eigen::Vector2d inertia = (place(step) - 2 * place(0) + place(-step)) / (step * step);
  const Eigen::Vector2d force = Eigen::Vector2d(0, -5 * kG * std::cos(0.3)) - inertia;
  const OutputBearingForces found = forcesAt(load, q, speed, acceleration);
  EXPECT_NEAR(found.radial[0], force.norm(), 1e-6);
  EXPECT_NEAR(found.axial[0], 5 * kG * std::sin(0.3), 1e-12);
}

// Statics: with a vertical axis the weight hangs on the axis at its distance; with a horizontal one
// it tilts by the overhang.
TEST(OutputBearing, TiltingMoment) {
  Load load = pointMass();
  load.axisTilt = std::numbers::pi / 2;
  EXPECT_NEAR(forcesAt(load, 1, 0, 0).moment[0], 2 * kG * 0.5, 1e-12);
  EXPECT_NEAR(forcesAt(load, 1, 0, 0).axial[0], 2 * kG, 1e-12);
  load.axisTilt = 0;
  load.overhang = 0.1;
  EXPECT_NEAR(forcesAt(load, 1, 0, 0).moment[0], 2 * kG * 0.1, 1e-12);
}

// Own, by brute force: moments as cross products in space for both sides of the overhang.
TEST(OutputBearing, MomentIsTheWorseSideOfTheOverhang) {
  Load load = pointMass();
  load.axisTilt = 0.6;
  load.overhang = 0.2;
  const double q = 0.9;
  double worse = 0;
  for (const double side : {-0.2, 0.2}) {
    const Eigen::Vector3d place(0.5 * std::cos(q), 0.5 * std::sin(q), side);
    const Eigen::Vector3d weight(0, -2 * kG * std::cos(0.6), -2 * kG * std::sin(0.6));
    worse = std::max(worse, place.cross(weight).head<2>().norm());
  }
  EXPECT_NEAR(forcesAt(load, q, 0, 0).moment[0], worse, 1e-12);
}

TEST(OutputBearing, ForcesOfTheProcessAdd) {
  Load load = pointMass();
  const OutputBearingForces bare = forcesAt(load, 0.3, 1, 2);
  load.radialForce = -100;
  load.axialForce = 200;
  load.tiltingMoment = 30;
  const OutputBearingForces more = forcesAt(load, 0.3, 1, 2);
  EXPECT_NEAR(more.radial[0], bare.radial[0] + 100, 1e-12);
  EXPECT_NEAR(more.axial[0], bare.axial[0] + 200, 1e-12);
  EXPECT_NEAR(more.moment[0], bare.moment[0] + 30, 1e-12);
}

// Factors 1 and 0.45, beyond 1.5 both 0.67; 0.44 at rest (common practice, no source, from
// memory). 2·50/0.2 = 500 N of moment.
TEST(OutputBearing, EquivalentLoads) {
  EXPECT_DOUBLE_EQ(slewingDynamicLoad({500, 1000, 50}, 0.2), 1000 + 450);
  EXPECT_DOUBLE_EQ(slewingDynamicLoad({500, 3000, 50}, 0.2), 0.67 * 4000);
  EXPECT_NEAR(slewingDynamicLoad({500, 1500, 50}, 0.2),
              slewingDynamicLoad({500, 1500.0001, 50}, 0.2), 1e-3);
  EXPECT_DOUBLE_EQ(slewingStaticLoad({500, 1000, 50}, 0.2), 1000 + 440);
}

// A constant load of 1000 N at 2 rad/s: C = 8 kN lasts 8^(10/3) = 1024 million turns.
TEST(OutputBearing, LifeAndSafety) {
  Load load;
  load.radialForce = 1000;
  OutputBearing bearing;
  EXPECT_FALSE(outputBearingLoad(oneInstant(2, 0), oneSegment(), load, bearing));
  bearing.pitchDiameter = 0.2;
  const auto open = outputBearingLoad(oneInstant(2, 0), oneSegment(), load, bearing);
  ASSERT_TRUE(open);
  EXPECT_FALSE(open->life);
  EXPECT_FALSE(open->staticSafety);
  bearing.dynamicRating = 8000;
  bearing.staticRating = 12000;
  const auto known = outputBearingLoad(oneInstant(-2, 0), oneSegment(), load, bearing);
  EXPECT_NEAR(*known->life, 1024e6 * std::numbers::pi, 1);
  EXPECT_NEAR(known->equivalentLoad, 1000, 1e-9);
  EXPECT_DOUBLE_EQ(*known->staticSafety, 12);
  EXPECT_EQ(known->worstMoment, 0);
}

// The payload of each segment counts, not the load's.
TEST(OutputBearing, PayloadChangesFromSegmentToSegment) {
  Load load = pointMass();
  load.payloadMass = 3;
  Cycle source;
  source.segments.resize(2);
  source.segments[1].payloadMass = 10;
  SampledCycle cycle =
      handCycle(Eigen::Array2d::Zero(), Eigen::Array2d::Zero(), Eigen::Array2d::Constant(1));
  cycle.segment << 0, 1;
  const OutputBearingForces found = outputBearingForces(cycle, source, load);
  EXPECT_NEAR(found.radial[0], 5 * kG, 1e-12);
  EXPECT_NEAR(found.radial[1], 12 * kG, 1e-12);
}

}  // namespace
}  // namespace jw

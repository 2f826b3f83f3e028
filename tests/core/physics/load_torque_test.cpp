// Load torque: gravity against the slope of the potential energy, friction, counterbalance,
// payloads.
#include <cmath>
#include <numbers>

#include <gtest/gtest.h>

#include "core/physics/load_torque.h"
#include "tests/core/physics/hand_cycle.h"

namespace jw {
namespace {

Load exampleLoad() {
  Load load;
  load.inertia = 1.5;
  load.linkMass = 6;
  load.linkDistance = 0.25;
  load.linkAngle = 0.2;
  load.payloadMass = 3;
  load.payloadDistance = 0.6;
  load.payloadAngle = -0.4;
  load.axisTilt = 0.5;
  return load;
}

double heightEnergy(const Load& load, double q) {
  return load.gravity * std::cos(load.axisTilt) *
         (load.linkMass * load.linkDistance * std::sin(q + load.linkAngle) +
          load.payloadMass * load.payloadDistance * std::sin(q + load.payloadAngle));
}

// Principle of virtual work: the holding torque is the slope of the potential energy; with a
// spring, of 1/2 k (q - q0)² as well. Central difference, error below 1e-8.
TEST(LoadTorque, StaticTorqueIsTheSlopeOfTheEnergy) {
  Load load = exampleLoad();
  load.springStiffness = 20;
  load.springAngle = 0.3;
  load.balanceTorque = 4;
  const auto energy = [&](double q) {
    return heightEnergy(load, q) + 10 * (q - 0.3) * (q - 0.3) - 4 * q;
  };
  for (double q = -7; q < 7; q += 0.37) {
    const double step = 1e-5;
    const double slope = (energy(q + step) - energy(q - step)) / (2 * step);
    EXPECT_NEAR(staticTorque(load, q, load.payloadMass), slope, 1e-7);
  }
}

// 1 kg at 1 m, horizontal: 9.80665 N·m to lift; none with a vertical axis; half at a tilt of 60°.
TEST(LoadTorque, OneKilogramAtOneMetre) {
  Load load;
  load.linkMass = 1;
  load.linkDistance = 1;
  EXPECT_DOUBLE_EQ(staticTorque(load, 0, 0), 9.80665);
  EXPECT_NEAR(staticTorque(load, std::numbers::pi / 2, 0), 0, 1e-14);
  load.axisTilt = std::numbers::pi / 2;
  EXPECT_NEAR(staticTorque(load, 0, 0), 0, 1e-14);
  load.axisTilt = std::numbers::pi / 3;
  EXPECT_NEAR(staticTorque(load, 0, 0), 9.80665 / 2, 1e-14);
}

LoadTorque torqueOf(const Load& load, double speed, double acceleration) {
  Cycle source;
  source.segments.resize(1);
  return loadTorque(oneInstant(speed, acceleration), source, load);
}

TEST(LoadTorque, FrictionOpposesMotionInBothDirections) {
  Load load;
  load.inertia = 0;
  load.coulombFriction = 2;
  load.viscousFriction = 0.5;
  EXPECT_DOUBLE_EQ(torqueOf(load, 3, 0).total[0], 3.5);
  EXPECT_DOUBLE_EQ(torqueOf(load, -3, 0).total[0], -3.5);
  EXPECT_DOUBLE_EQ(torqueOf(load, 0, 0).total[0], 0);
}

// Steiner: payload 3 kg at 0.6 m with 0.02 kg·m² of its own adds 1.1 kg·m².
TEST(LoadTorque, InertiaWithPayload) {
  Load load = exampleLoad();
  load.payloadInertia = 0.02;
  EXPECT_NEAR(loadInertia(load, 3), 1.5 + 0.02 + 3 * 0.36, 1e-15);
  EXPECT_EQ(loadInertia(load, 0), 1.5);
  EXPECT_NEAR(torqueOf(load, 0, 2).inertia[0], 2 * 2.6, 1e-14);
}

TEST(LoadTorque, AtRestItIsTheStaticTorque) {
  Load load = exampleLoad();
  load.springStiffness = 20;
  load.springAngle = 0.3;
  load.balanceTorque = 4;
  load.externalTorque = 5;
  Cycle source;
  source.segments.resize(1);
  for (double q = -4; q < 4; q += 0.37) {
    SampledCycle cycle = oneInstant(0, 0);
    cycle.angle[0] = q;
    EXPECT_NEAR(loadTorque(cycle, source, load).total[0],
                staticTorque(load, q, load.payloadMass) + 5, 1e-12);
  }
}

TEST(LoadTorque, PayloadChangesFromSegmentToSegment) {
  const Load load = exampleLoad();
  Cycle source;
  source.segments.resize(3);
  source.segments[1].payloadMass = 0;
  source.segments[1].externalTorque = 7;
  source.segments[2].payloadMass = 10;
  SampledCycle cycle =
      handCycle(Eigen::Array3d::Zero(), Eigen::Array3d::Constant(1), Eigen::Array3d::Constant(1));
  cycle.segment << 0, 1, 2;
  const LoadTorque torque = loadTorque(cycle, source, load);
  EXPECT_DOUBLE_EQ(torque.total[0], staticTorque(load, 0, 3) + loadInertia(load, 3));
  EXPECT_DOUBLE_EQ(torque.total[1], staticTorque(load, 0, 0) + loadInertia(load, 0) + 7);
  EXPECT_DOUBLE_EQ(torque.total[2], staticTorque(load, 0, 10) + loadInertia(load, 10));
  EXPECT_EQ(torque.largestInertia, loadInertia(load, 10));
}

}  // namespace
}  // namespace jw

// Forces and losses of a cycloidal stage against equilibrium, energy and limits.
#include <cmath>
#include <numbers>

#include <gtest/gtest.h>

#include "core/physics/cycloid_efficiency.h"
#include "core/physics/cycloid_forces.h"
#include "core/physics/hertz_contact.h"
#include "tests/core/physics/cycloid_support.h"

namespace jw {
namespace {

using Eigen::Vector2d;
constexpr double kPi = std::numbers::pi;

Vector2d direction(double angle) { return {std::cos(angle), std::sin(angle)}; }
double cross(const Vector2d& a, const Vector2d& b) { return a.x() * b.y() - a.y() * b.x(); }

/// Sum of forces and moments about the ring's centre, built up from points of contact.
struct Wrench {
  Vector2d force = Vector2d::Zero();
  double moment = 0;
  void add(const Vector2d& at, const Vector2d& push) {
    force += push;
    moment += cross(at, push);
  }
};

Wrench ringWrench(const CycloidForces& f, const CycloidGeometry& g, Eigen::Index at) {
  Wrench sum;
  for (Eigen::Index j = 0; j < f.pinForce.rows(); ++j) {
    const double angle = 2 * kPi * static_cast<double>(j) / g.pins;
    const PinContact pin = pinContact(*cycloidShape(g), f.crankAngle[at], angle);
    const Vector2d normal(pin.normalX, pin.normalY);
    sum.add(g.pinCircleRadius * direction(angle) - g.pinRadius * normal,
            -f.pinForce(j, at) * normal);
  }
  return sum;
}

Wrench outputWrench(const CycloidForces& f, const CycloidGeometry& g, Eigen::Index at) {
  Wrench sum;
  const double crank = f.crankAngle[at];
  for (Eigen::Index k = 0; k < f.outputPinForce.rows(); ++k) {
    const double angle = 2 * kPi * static_cast<double>(k) / g.outputPins - crank / (g.pins - 1);
    sum.add(g.outputPinCircleRadius * direction(angle) - g.outputPinRadius * direction(crank),
            -f.outputPinForce(k, at) * direction(crank));
  }
  return sum;
}

// Statics of the disc: ring pins, output pins and bearing balance in force and moment; output pins
// carry half of the stage's torque each disc, the pins a crank torque of T/(2·11).
TEST(CycloidForces, DiscIsInBalance) {
  const CycloidGeometry g = wholeCycloid();
  const CycloidForces f = *cycloidForces(g, {}, 300);
  EXPECT_EQ(f.discTorque, 150);
  for (Eigen::Index at = 0; at < 360; at += 7) {
    const Wrench ring = ringWrench(f, g, at), output = outputWrench(f, g, at);
    const Vector2d bearing(f.bearingX[at], f.bearingY[at]);
    const Vector2d centre = g.eccentricity * direction(f.crankAngle[at]);
    EXPECT_NEAR((ring.force + output.force + bearing).norm(), 0, 1e-9);
    EXPECT_NEAR(ring.moment + output.moment + cross(centre, bearing), 0, 1e-10);
    EXPECT_NEAR(output.moment, 150, 1e-10);
    EXPECT_NEAR(ring.moment - cross(centre, ring.force), -150, 1e-10);
    EXPECT_NEAR(f.crankTorque[at], 300.0 / 11, 1e-10);
  }
}

// With the ring as the output its pins carry the torque, and the crank T/12.
TEST(CycloidForces, RingAsTheOutput) {
  CycloidGeometry g = wholeCycloid();
  g.held = CycloidHeld::OutputPins;
  const CycloidForces f = *cycloidForces(g, {}, 300, 36);
  for (Eigen::Index at = 0; at < 36; ++at) {
    EXPECT_NEAR(ringWrench(f, g, at).moment, -150, 1e-10);
    EXPECT_NEAR(f.crankTorque[at], 25, 1e-10);
  }
}

// All normals meet at the pitch point, e N from the ring's centre along the crank; the lever's
// largest is its distance e (N - 1) from the disc's, and no pin pulls.
TEST(CycloidForces, NormalsMeetAtThePitchPoint) {
  const CycloidGeometry g = sheetCycloid();
  const CycloidForces f = *cycloidForces(g, {}, 100);
  for (const double crank : {0.0, 0.9, 4.0}) {
    for (int j = 0; j < 12; ++j) {
      const PinContact pin = pinContact(*cycloidShape(g), crank, kPi / 6 * j);
      const Vector2d arm =
          g.pinCircleRadius * direction(kPi / 6 * j) - g.eccentricity * 12 * direction(crank);
      EXPECT_NEAR(cross(arm, {pin.normalX, pin.normalY}), 0, 1e-15);
      EXPECT_NEAR(arm.norm() - g.pinRadius, pin.reach, 1e-15);
      EXPECT_LE(std::abs(pin.lever), 0.044 + 1e-15);
    }
  }
  EXPECT_GE(f.pinForce.minCoeff(), 0);
  EXPECT_EQ((f.pinForce.col(1) > 0).count(), 6);  // half of them push
}

// An even number of ring and output pins: opposed discs load the crank with nothing but a couple.
// Three discs likewise for numbers that 3 divides; one disc not at all.
TEST(CycloidForces, OpposedDiscsBalance) {
  CycloidGeometry g = wholeCycloid();
  EXPECT_LT(cycloidForces(g, {}, 300)->largestShaftForce, 1e-8);
  g.outputPins = 9;
  g.outputPinRadius = 0.005;
  g.discs = 3;
  EXPECT_LT(cycloidForces(g, {}, 300)->largestShaftForce, 1e-8);
  g.discs = 1;
  const CycloidForces alone = *cycloidForces(g, {}, 300);
  EXPECT_NEAR(alone.largestShaftForce, alone.largestBearingForce, 1e-9);
}

// Without output pins there are ring pins alone, without a torque nothing.
TEST(CycloidForces, WhatIsNotGiven) {
  const CycloidForces f = *cycloidForces(sheetCycloid(), {}, 300, 12);
  EXPECT_EQ(f.bearingX.size(), 0);
  EXPECT_EQ(f.outputPinForce.size(), 0);
  EXPECT_EQ(f.pinPressure.size(), 0);
  EXPECT_FALSE(isSet(f.largestBearingForce));
  EXPECT_FALSE(isSet(f.largestPinPressure));
  EXPECT_TRUE(cycloidPressureConditions(f, {}).empty());
  EXPECT_FALSE(cycloidForces(sheetCycloid(), {}, kUnset));
  EXPECT_FALSE(cycloidForces({}, {}, 300));
}

// Pressure by Hertz with the profile's own curvature: pin of radius r against the disc's p - r,
// p the radius of the pins' path there; the output pin in a hole e larger.
TEST(CycloidForces, Pressures) {
  const CycloidGeometry g = wholeCycloid();
  ContactMaterial material;
  material.allowedPressure = 1500e6;
  const CycloidForces f = *cycloidForces(g, material, 300);
  const double modulus = contactSurfaces(material).reducedModulus;
  const CycloidShape shape = *cycloidShape(g);
  for (Eigen::Index j = 0; j < 12; ++j) {
    // In the disc's axes the pin stands at its own angle less the disc's turn.
    const double t = kPi / 6 * static_cast<double>(j) - discPose(shape, f.crankAngle[50]).turn;
    const double radius = relativeRadius(0.007, pinPathRadius(shape, t) - 0.007);
    const double expected = lineContactPressure(f.pinForce(j, 50), 0.012, radius, modulus);
    EXPECT_NEAR(f.pinPressure(j, 50), expected, 1e-6 * expected + 1e-3);
  }
  const double hole =
      lineContactPressure(f.largestOutputPinForce, 0.012, 0.006 * 0.010 / 0.004, modulus);
  EXPECT_NEAR(f.largestOutputPinPressure, hole, 1e-9 * hole);
  const GeometryConditions conditions = cycloidPressureConditions(f, material);
  ASSERT_EQ(conditions.size(), 2u);
  EXPECT_EQ(conditions[0].demand, f.largestPinPressure);
  EXPECT_EQ(conditions[0].capacity, 1500e6);
}

CycloidEfficiency efficiencyOf(CycloidGeometry g, double scale = 1) {
  g.pinFriction *= scale;
  g.outputPinFriction *= scale;
  g.bearingFriction *= scale;
  return *cycloidEfficiency(g, 360);
}

// Energy: what comes in less what goes out is the work of friction at the contacts, counted there
// as force times sliding.
TEST(CycloidEfficiency, LossesMakeUpTheDifference) {
  for (const CycloidHeld held : {CycloidHeld::Pins, CycloidHeld::OutputPins}) {
    CycloidGeometry g = wholeCycloid();
    g.held = held;
    for (const double scale : {0.1, 1.0, 3.0}) {
      const CycloidEfficiency e = efficiencyOf(g, scale);
      EXPECT_NEAR(e.pinShare + e.outputPinShare + e.bearingShare, 1 - e.driving, 1e-11) << scale;
      EXPECT_GT(e.driving, 0.5);
      EXPECT_LT(e.driving, 1);
    }
  }
}

TEST(CycloidEfficiency, NoFrictionNoLoss) {
  const CycloidEfficiency e = efficiencyOf(wholeCycloid(), 0);
  EXPECT_NEAR(e.driving, 1, 1e-12);
  EXPECT_NEAR(e.backdriving, 1, 1e-12);
}

// Own, to first order in the coefficients: friction of the forces without friction times their
// sliding, over the output's power; the efficiency driven back is 2 - 1/eta. Both off by the
// square.
TEST(CycloidEfficiency, FirstOrder) {
  const CycloidGeometry g = wholeCycloid();
  const double scale = 1e-4;
  const CycloidForces f = *cycloidForces(g, {}, 300);
  double loss = 0;  // of one disc, per speed of the crank, mean over the turn
  const double relative = 12.0 / 11;
  for (Eigen::Index at = 0; at < 360; ++at) {
    for (Eigen::Index j = 0; j < 12; ++j) {
      const PinContact pin =
          pinContact(*cycloidShape(g), f.crankAngle[at], kPi / 6 * static_cast<double>(j));
      loss += 0.03 * f.pinForce(j, at) * pin.reach / 11 / 360;
    }
    loss += 0.05 * f.outputPinForce.col(at).sum() * 0.004 * relative / 360;
    loss += 0.002 * 0.030 * std::hypot(f.bearingX[at], f.bearingY[at]) * relative / 360;
  }
  const CycloidEfficiency e = efficiencyOf(g, scale);
  const double share = loss * scale / (150.0 / 11);
  EXPECT_NEAR((1 / e.driving - 1) / share, 1, 1e-3);
  EXPECT_NEAR((1 - e.backdriving) / share, 1, 1e-3);
}

// With more and more friction it first locks itself when driven back, then jams when driving.
TEST(CycloidEfficiency, LocksItselfThenJams) {
  const CycloidEfficiency smooth = efficiencyOf(wholeCycloid(), 1);
  EXPECT_GT(smooth.backdriving, 0.5);
  EXPECT_LT(smooth.backdriving, smooth.driving);
  const CycloidEfficiency rough = efficiencyOf(wholeCycloid(), 10);
  EXPECT_EQ(rough.backdriving, 0);
  EXPECT_GT(rough.driving, 0.1);
  EXPECT_EQ(efficiencyOf(wholeCycloid(), 40).driving, 0);
}

// Few angles are enough: the mean hardly changes from 90 to 3600.
TEST(CycloidEfficiency, DefaultAnglesSuffice) {
  const CycloidGeometry g = wholeCycloid();
  EXPECT_NEAR(cycloidEfficiency(g)->driving, cycloidEfficiency(g, 3600)->driving, 5e-5);
  EXPECT_NEAR(cycloidEfficiency(g)->backdriving, cycloidEfficiency(g, 3600)->backdriving, 5e-5);
}

TEST(CycloidEfficiency, NeedsEveryFriction) {
  CycloidGeometry g = wholeCycloid();
  g.pinFriction = kUnset;
  EXPECT_FALSE(cycloidEfficiency(g));
  g = wholeCycloid();
  g.bearingRadius = kUnset;
  EXPECT_FALSE(cycloidEfficiency(g));
  g.bearingFriction = 0;
  EXPECT_TRUE(cycloidEfficiency(g));
  g.outputPins = kUnset;
  EXPECT_FALSE(cycloidEfficiency(g));
}

}  // namespace
}  // namespace jw

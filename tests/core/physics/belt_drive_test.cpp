// The open belt: its run against the hull of two circles, its forces against vectors.
#include <algorithm>
#include <cmath>
#include <numbers>

#include <gtest/gtest.h>

#include "core/physics/belt_drive.h"
#include "tests/core/physics/conditions_support.h"

namespace jw {
namespace {

using std::numbers::pi;

BeltGeometry beltOf(double motorTeeth = 20, double jointTeeth = 60) {
  BeltGeometry belt;
  belt.motorPulleyTeeth = motorTeeth;
  belt.jointPulleyTeeth = jointTeeth;
  belt.pitch = 5e-3;
  belt.centreDistance = 0.12;
  belt.spanPretension = 150;
  belt.specificStiffness = 300e3;
  return belt;
}

// Cauchy: the length round a convex body is the integral of its reach over all directions. A tight
// belt is the hull of its two pitch circles; own, integrated numerically. The directions in which
// the small circle reaches further are the wrap on it.
TEST(BeltDrive, RunIsTheHullOfTwoCircles) {
  for (const auto& [motor, joint] : {std::pair{20.0, 60.0}, {60.0, 20.0}, {32.0, 32.0}}) {
    const BeltGeometry belt = beltOf(motor, joint);
    const double r1 = motor * 5e-3 / (2 * pi), r2 = joint * 5e-3 / (2 * pi);
    double length = 0, small = 0;
    constexpr int kSteps = 2000000;
    for (int i = 0; i < kSteps; ++i) {
      const double onJoint = 0.12 * std::cos(2 * pi * (i + 0.5) / kSteps) + r2;
      length += std::max(r1, onJoint) * 2 * pi / kSteps;
      const bool motorReaches = r1 > onJoint;
      if (motorReaches == (r1 <= r2)) small += 2 * pi / kSteps;
    }
    const BeltRun run = *beltRun(belt);
    EXPECT_NEAR(run.length, length, 1e-9);
    EXPECT_NEAR(run.smallWrap, small, 1e-5);
    EXPECT_NEAR(run.smallWrap + run.largeWrap, 2 * pi, 1e-12);
    EXPECT_NEAR(run.teethInMesh, std::min(motor, joint) * small / (2 * pi), 1e-4);
    const double arcs = run.smallWrap * std::min(r1, r2) + run.largeWrap * std::max(r1, r2);
    EXPECT_NEAR(run.length, arcs + 2 * run.freeLength, 1e-12);
  }
}

TEST(BeltDrive, NearestBeltHasWholeTeeth) {
  for (const double distance : {0.08, 0.1, 0.1234, 0.5}) {
    BeltGeometry belt = beltOf();
    belt.centreDistance = distance;
    const BeltLength nearest = *nearestBelt(belt);
    EXPECT_EQ(nearest.wholeTeeth, std::round(nearest.teeth));
    EXPECT_NEAR(nearest.centreDistance, distance, 0.4 * belt.pitch);
    belt.centreDistance = nearest.centreDistance;
    EXPECT_NEAR(beltRun(belt)->length / belt.pitch, nearest.wholeTeeth, 1e-9);
  }
}

// Own arithmetic: r = 60 · 5 mm/(2 pi), 2 · 150 N.
TEST(BeltDrive, SlackAtTwicePretension) {
  const BeltGeometry belt = beltOf();
  const double radius = 60 * 5e-3 / (2 * pi);
  const double slack = *slackTorque(belt);
  EXPECT_NEAR(slack, 300 * radius, 1e-12);
  EXPECT_NEAR(beltForces(belt, slack)->slack, 0, 1e-9);
  EXPECT_NEAR(beltForces(belt, slack)->tight, 300, 1e-9);
  const BeltForces beyond = *beltForces(belt, 2 * slack);
  EXPECT_EQ(beyond.slack, 0);
  EXPECT_NEAR(beyond.tight, 600, 1e-9);
  EXPECT_NEAR(beyond.shaft, 600, 1e-9);
  const GeometryConditions below = beltConditions(belt, 0.99 * slack);
  EXPECT_TRUE(conditionWith(below, "slack").holds());
  const GeometryCondition above = conditionWith(beltConditions(belt, -1.01 * slack), "slack");
  EXPECT_FALSE(above.holds());
  EXPECT_NEAR(above.demand, 1.01 * 150, 1e-9);
  EXPECT_EQ(above.capacity, 150);
}

// Own: the tangents that touch both circles, as vectors from the small pulley's axis.
TEST(BeltDrive, ShaftLoadIsTheSumOfVectors) {
  const BeltGeometry belt = beltOf();
  const BeltForces forces = *beltForces(belt, 8);
  const double r1 = 20 * 5e-3 / (2 * pi), r2 = 60 * 5e-3 / (2 * pi);
  const double across = (r2 - r1) / 0.12, along = std::sqrt(1 - across * across);
  const double x = (forces.tight + forces.slack) * along;
  const double y = (forces.tight - forces.slack) * across;
  EXPECT_NEAR(forces.shaft, std::hypot(x, y), 1e-9);
  EXPECT_NEAR((forces.tight - forces.slack) * r2, 8, 1e-12);
}

// The joint's pulley turned by a little with the motor's held: each span is pulled or let go by
// r dphi and the torque is that of the two tensions; own. At the input it is smaller by ratio².
TEST(BeltDrive, StiffnessFromASmallTurn) {
  const BeltGeometry belt = beltOf();
  const BeltStiffness stiffness = *beltStiffness(belt);
  const double r2 = 60 * 5e-3 / (2 * pi), turn = 1e-4;
  const double change = 300e3 * r2 * turn / beltRun(belt)->freeLength;
  EXPECT_NEAR(stiffness.outputBoth, 2 * change * r2 / turn, 1e-6);
  EXPECT_NEAR(stiffness.outputOne, change * r2 / turn, 1e-6);
  EXPECT_NEAR(stiffness.outputBoth / stiffness.inputBoth, 9, 1e-12);
  EXPECT_NEAR(stiffness.outputOne / stiffness.inputOne, 9, 1e-12);
}

TEST(BeltDrive, PulleysAndTeethInMesh) {
  BeltGeometry belt = beltOf(12, 72);
  belt.centreDistance = 0.06;
  const auto close = beltConditions(belt, kUnset);
  EXPECT_FALSE(conditionWith(close, "clear").holds());
  EXPECT_FALSE(conditionWith(close, "in mesh").holds());
  EXPECT_EQ(conditionWith(close, "in mesh").demand, 6);
  belt.teethInMeshMin = 2;  // 2.5 of them are
  EXPECT_TRUE(conditionWith(beltConditions(belt, kUnset), "in mesh").holds());
  EXPECT_TRUE(allHold(beltConditions(beltOf(), 5)));
}

TEST(BeltDrive, NothingFromWhatIsNotGiven) {
  const BeltGeometry none;
  EXPECT_FALSE(beltRatio(none));
  EXPECT_FALSE(beltRun(none));
  EXPECT_FALSE(nearestBelt(none));
  EXPECT_FALSE(beltStiffness(none));
  EXPECT_FALSE(slackTorque(none));
  EXPECT_FALSE(beltForces(beltOf(), kUnset));
  EXPECT_TRUE(beltConditions(none, 5).empty());
  BeltGeometry inside = beltOf();
  inside.centreDistance = 0.01;  // the small pulley within the large one
  EXPECT_FALSE(beltRun(inside));
  EXPECT_FALSE(nearestBelt(inside));
}

}  // namespace
}  // namespace jw

// Clearance to the end stops, and the torque of running into one.
#include <cmath>
#include <limits>
#include <numbers>

#include <gtest/gtest.h>

#include "core/checks/evaluation.h"
#include "tests/core/checks/example_project.h"

namespace jw {
namespace {

const Check* endStops(const Evaluation& e) {
  for (const Check& check : e.checks) {
    if (check.id == "joint.end_stops") return &check;
  }
  return nullptr;
}

Check judged(const Project& project) {
  const Evaluation e = evaluate(project);
  const Check* check = endStops(e);
  EXPECT_NE(check, nullptr);
  return check == nullptr ? Check{} : *check;
}

// By hand: the cycle runs from -0.3 rad to a quarter turn more, 1.270796 rad.
TEST(EndStops, FarthestFromTheMiddleBetweenThem) {
  Project project = exampleProject();  // stops at -1 and 2 rad
  EXPECT_NEAR(judged(project).demand, 0.8, 1e-9);
  EXPECT_NEAR(judged(project).capacity, 1.5, 1e-12);
  project.load.stopLow = -0.25;
  EXPECT_EQ(judged(project).state, CheckState::Short);
  project.load.stopLow = 5;  // above the upper one
  EXPECT_EQ(judged(project).state, CheckState::Short);
}

TEST(EndStops, WithOneStopFromTheFarEndOfTheCycle) {
  Project project = exampleProject();
  project.load.stopHigh = kUnset;
  EXPECT_NEAR(judged(project).demand, std::numbers::pi / 2, 1e-9);
  EXPECT_NEAR(judged(project).capacity, std::numbers::pi / 2 + 0.7, 1e-9);
  project.load.stopLow = kUnset, project.load.stopHigh = 1.3;
  EXPECT_NEAR(judged(project).capacity, 1.6, 1e-9);
  EXPECT_EQ(judged(project).state, CheckState::Close);
  project.load.stopHigh = kUnset;
  EXPECT_EQ(endStops(evaluate(project)), nullptr);
}

// A joint that stands still clears its stop without limit, or is beyond it.
TEST(EndStops, StandingStill) {
  Project project = exampleProject();
  project.cycle.segments = {project.cycle.segments[1]};  // a dwell at -0.3 rad
  project.load.stopLow = kUnset;
  EXPECT_EQ(judged(project).margin, std::numeric_limits<double>::infinity());
  project.load.stopHigh = -0.4;
  EXPECT_EQ(judged(project).state, CheckState::Short);
}

// Energy: J w² / 2 of all that turns equals T² / (2 k) of the stop's spring.
TEST(EndStops, ImpactTakesUpTheKineticEnergy) {
  const Project project = exampleProject();
  const Evaluation e = evaluate(project);
  const Working working = explain(project, e, *endStops(e));
  double torque = 0;
  for (const WorkingSymbol& symbol : working.symbols) {
    if (symbol.symbol == "T_st") torque = symbol.value;
  }
  const double motorSpeed = quantityValue(e, "motor.speed_peak");
  const double inertia = quantityValue(e, "chain.inertia_at_motor");
  EXPECT_NEAR(torque * torque / (2 * project.load.stopStiffness),
              inertia * motorSpeed * motorSpeed / 2, 1e-9);
}

}  // namespace
}  // namespace jw

#include "core/motion/joins.h"

#include <numbers>

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "tests/core/motion/make_cycle.h"

namespace jw {
namespace {

using testing::HasSubstr;

constexpr double kDegree = std::numbers::pi / 180;

Segment move(double travel) {
  Segment segment;
  segment.law = MotionLaw::Polynomial345;
  segment.travel = travel;
  segment.duration = 1;
  return segment;
}

Segment table(std::vector<double> angle, std::vector<double> speed) {
  Segment segment;
  segment.law = MotionLaw::Table;
  segment.name = "Log";
  segment.table = {{0, 1, 2}, std::move(angle), std::move(speed), {0, 0, 0}};
  return segment;
}

std::vector<InputError> warningsOf(const Cycle& cycle) {
  return sampleCycle(cycle)->warnings;
}

TEST(Joins, AClosedCycleHasNoWarnings) {
  EXPECT_TRUE(warningsOf(makeCycle({move(1), move(-1)})).empty());
}

TEST(Joins, AnOpenCycleSaysByHowMuch) {
  const auto warnings = warningsOf(makeCycle({move(1), move(-1 + 5 * kDegree)}, 2));
  ASSERT_EQ(warnings.size(), 1u);
  EXPECT_THAT(warnings[0].what, HasSubstr("the cycle does not return to its start"));
  EXPECT_THAT(warnings[0].what, HasSubstr("5"));
  EXPECT_EQ(warnings[0].where, "cycle.segments[1]");
}

TEST(Joins, WholeTurnsMayBeMeant) {
  const auto warnings = warningsOf(makeCycle({move(720 * kDegree)}));
  ASSERT_EQ(warnings.size(), 1u);
  EXPECT_THAT(warnings[0].remedy, HasSubstr("turns on and on"));
}

TEST(Joins, ASpeedJumpNamesBothSegmentsAndSpeeds) {
  Segment swing = move(0.2);
  swing.law = MotionLaw::Sinusoid;
  swing.name = "Swing";
  const auto warnings = warningsOf(makeCycle({move(1), swing, move(-1)}));
  ASSERT_EQ(warnings.size(), 2u);
  EXPECT_EQ(warnings[0].where, "cycle.segments[1]");
  EXPECT_THAT(warnings[0].what, HasSubstr("segment 1"));
  EXPECT_THAT(warnings[0].what, HasSubstr("segment 2 \"Swing\""));
  EXPECT_EQ(warnings[1].where, "cycle.segments[2]");
}

TEST(Joins, TheLastSegmentJoinsTheFirst) {
  const auto warnings = warningsOf(makeCycle({table({0, 1, 0}, {0, 0, -3}), move(0)}));
  ASSERT_EQ(warnings.size(), 1u);
  EXPECT_EQ(warnings[0].where, "cycle.segments[1]");
  const auto wrapped = warningsOf(makeCycle({table({0, 1, 0}, {2, 0, -3})}));
  ASSERT_EQ(wrapped.size(), 1u);
  EXPECT_EQ(wrapped[0].where, "cycle.segments[0]");
  EXPECT_THAT(wrapped[0].what, HasSubstr("where the cycle repeats"));
}

TEST(Joins, ATableThatDoesNotStartAt0IsAnAngleJump) {
  const auto warnings = warningsOf(makeCycle({table({0.5, 1, 0}, {0, 1, 0})}));
  ASSERT_EQ(warnings.size(), 1u);
  EXPECT_THAT(warnings[0].what, HasSubstr("the angle jumps"));
}

TEST(Joins, EstimatedEndSpeedsOfATableMayBeSlightlyOff) {
  EXPECT_TRUE(warningsOf(makeCycle({table({0, 1, 0}, {0.005, 1, -0.004})})).empty());
  EXPECT_EQ(warningsOf(makeCycle({table({0, 1, 0}, {0.015, 1, 0})})).size(), 1u);
}

}  // namespace
}  // namespace jw

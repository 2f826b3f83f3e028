// Moves as they run: switched off, repeated, in blocks, to targets, by limits. The cases are worked
// by hand from what the fields mean; no outside source.
#include "core/motion/resolved_moves.h"

#include <numbers>

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "core/motion/sampled_cycle.h"
#include "tests/core/motion/make_cycle.h"

namespace jw {
namespace {

using testing::ElementsAre;
using testing::HasSubstr;

Segment move(double travel, double duration = 1) {
  Segment segment;
  segment.law = MotionLaw::Polynomial345;
  segment.travel = travel;
  segment.duration = duration;
  return segment;
}

Segment moveTo(double target) {
  Segment segment = move(kUnset);
  segment.aim = MoveAim::To;
  segment.target = target;
  return segment;
}

Segment fast(MotionLaw law, double travel) {
  Segment segment = move(travel, kUnset);
  segment.law = law;
  segment.timing = MoveTiming::Limits;
  return segment;
}

Segment inBlock(std::string block, Segment segment, int repeats = 1) {
  segment.block = std::move(block);
  segment.repeats = repeats;
  return segment;
}

std::vector<std::size_t> order(const Cycle& cycle) {
  std::vector<std::size_t> origins;
  const auto resolved = resolveMoves(cycle);
  if (!resolved) {
    ADD_FAILURE() << describe(resolved.error());
    return origins;
  }
  for (const ResolvedMove& m : resolved->moves) origins.push_back(m.origin);
  return origins;
}

TEST(ResolvedMoves, RunInTheOrderWritten) {
  EXPECT_THAT(order(makeCycle({move(1), move(-1)})), ElementsAre(0, 1));
}

TEST(ResolvedMoves, ASwitchedOffMoveIsLeftOut) {
  Cycle cycle = makeCycle({move(1), move(9), move(-1)});
  cycle.segments[1].disabled = true;
  cycle.segments[1].duration = kUnset;  // not looked at
  EXPECT_THAT(order(cycle), ElementsAre(0, 2));
  const auto sampled = sampleCycle(cycle);
  ASSERT_TRUE(sampled.has_value()) << describe(sampled.error());
  EXPECT_DOUBLE_EQ(sampled->period, 2);
  EXPECT_EQ(sampled->segment.maxCoeff(), 2);
  EXPECT_TRUE(sampled->warnings.empty());
}

TEST(ResolvedMoves, AMoveRepeatsByItself) {
  Cycle cycle = makeCycle({move(0.5), move(-1.5)});
  cycle.segments[0].repeats = 3;
  EXPECT_THAT(order(cycle), ElementsAre(0, 0, 0, 1));
}

TEST(ResolvedMoves, NeighboursOfOneBlockRepeatTogetherByTheFirstOnesCount) {
  const Cycle cycle = makeCycle({inBlock("a", move(1), 2), inBlock("a", move(-1)), move(0),
                                 inBlock("a", move(2)), inBlock("b", move(-2), 2)});
  EXPECT_THAT(order(cycle), ElementsAre(0, 1, 0, 1, 2, 3, 4, 4));
}

TEST(ResolvedMoves, ABlockWithoutItsFirstMoveKeepsItsCount) {
  Cycle cycle =
      makeCycle({inBlock("a", move(1), 2), inBlock("a", move(-1)), inBlock("a", move(1))});
  cycle.segments[0].disabled = true;
  EXPECT_THAT(order(cycle), ElementsAre(1, 2, 1, 2));
}

TEST(ResolvedMoves, ACountInsideABlockIsNamed) {
  const auto resolved =
      resolveMoves(makeCycle({inBlock("a", move(1), 2), inBlock("a", move(-1), 5)}));
  ASSERT_EQ(resolved->warnings.size(), 1u);
  EXPECT_EQ(resolved->warnings[0].where, "cycle.segments[1].repeats");
}

TEST(ResolvedMoves, ATargetIsReachedFromWhereTheJointIs) {
  Segment swing = move(0.4);
  swing.law = MotionLaw::Sinusoid;
  swing.periods = 0.25;  // ends a quarter period on: at its amplitude
  const auto resolved =
      resolveMoves(makeCycle({move(1), moveTo(0.25), swing, moveTo(0.5), moveTo(0.5)}, 0.5));
  ASSERT_EQ(resolved->moves.size(), 5u);
  EXPECT_DOUBLE_EQ(resolved->moves[1].shape.travel, 0.25 - 1.5);
  EXPECT_NEAR(resolved->moves[3].shape.travel, 0.5 - 0.65, 1e-15);
  EXPECT_NEAR(resolved->moves[4].shape.travel, 0, 1e-15);
}

TEST(ResolvedMoves, ATargetIsReachedAgainInEveryRepeat) {
  Cycle cycle = makeCycle({inBlock("a", moveTo(1), 3), inBlock("a", moveTo(0.2))});
  const auto sampled = sampleCycle(cycle);
  ASSERT_TRUE(sampled.has_value());
  EXPECT_DOUBLE_EQ(sampled->period, 6);
  ASSERT_EQ(sampled->runs.size(), 6u);
  EXPECT_DOUBLE_EQ(sampled->angle[sampled->runs[3].first], 1);
  EXPECT_NEAR(sampled->angle[sampled->size() - 1], 0.2, 1e-15);
}

TEST(ResolvedMoves, ATargetBehindATableCountsItsEnd) {
  Segment table;
  table.law = MotionLaw::Table;
  table.table = {{0, 1}, {0, 0.7}, {0, 0}, {0, 0}};
  const auto resolved = resolveMoves(makeCycle({table, moveTo(0)}));
  EXPECT_DOUBLE_EQ(resolved->moves[0].duration, 1);
  EXPECT_DOUBLE_EQ(resolved->moves[1].shape.travel, -0.7);
}

TEST(ResolvedMoves, AMovesOwnLimitGoesBeforeTheCyclesOwn) {
  Cycle cycle = makeCycle({fast(MotionLaw::Trapezoidal, 10), fast(MotionLaw::Trapezoidal, -10)});
  cycle.speedLimit = 5;
  cycle.accelerationLimit = 10;
  cycle.segments[1].speedLimit = 2;
  const auto resolved = resolveMoves(cycle);
  ASSERT_TRUE(resolved.has_value()) << describe(resolved.error());
  EXPECT_DOUBLE_EQ(resolved->moves[0].duration, 2.5);
  EXPECT_DOUBLE_EQ(resolved->moves[1].duration, 10 / 2.0 + 2 / 10.0);
  const auto sampled = sampleCycle(cycle);
  EXPECT_NEAR(sampled->speed.maxCoeff(), 5, 1e-12);
  EXPECT_NEAR(sampled->speed.minCoeff(), -2, 1e-12);
  EXPECT_NEAR(sampled->acceleration.abs().maxCoeff(), 10, 1e-12);
}

TEST(ResolvedMoves, AMoveByLimitsThatGoesNowhereTakesNoTime) {
  Cycle cycle = makeCycle({move(1), fast(MotionLaw::Harmonic, 0), move(-1)});
  cycle.speedLimit = 1;
  EXPECT_THAT(order(cycle), ElementsAre(0, 2));
  cycle.segments = {fast(MotionLaw::Harmonic, 0)};
  const auto none = sampleCycle(cycle);
  ASSERT_FALSE(none.has_value());
  EXPECT_THAT(none.error().what, HasSubstr("takes no time"));
}

InputError errorOf(const Cycle& cycle) {
  const auto sampled = sampleCycle(cycle);
  return sampled ? InputError{} : sampled.error();
}

TEST(ResolvedMoves, MissingLimitsAreNamed) {
  Cycle cycle = makeCycle({move(1), fast(MotionLaw::Trapezoidal, -1)});
  cycle.speedLimit = 1;
  EXPECT_EQ(errorOf(cycle).where, "cycle.segments[1].accelerationLimit");
  EXPECT_THAT(errorOf(cycle).what, HasSubstr("needs an acceleration limit"));
  cycle.accelerationLimit = 4;
  cycle.segments[1].law = MotionLaw::JerkLimited;
  EXPECT_EQ(errorOf(cycle).where, "cycle.segments[1].jerkLimit");
  cycle.segments[1].law = MotionLaw::ModifiedSine;
  cycle.speedLimit = cycle.accelerationLimit = kUnset;
  EXPECT_THAT(errorOf(cycle).what, HasSubstr("a limit of speed, acceleration or jerk"));
  cycle.jerkLimit = 100;
  EXPECT_EQ(errorOf(cycle), InputError{});
  cycle.segments[1].law = MotionLaw::Harmonic;  // of endless jerk: that limit does not count
  EXPECT_FALSE(errorOf(cycle).what.empty());
}

TEST(ResolvedMoves, AJerkLimitThatCannotBeKeptIsSaid) {
  Cycle cycle = makeCycle({fast(MotionLaw::Trapezoidal, 1), fast(MotionLaw::ModifiedSine, -1)});
  cycle.accelerationLimit = 4;
  cycle.jerkLimit = 100;
  cycle.segments[0].repeats = 2;
  const auto resolved = resolveMoves(cycle);
  ASSERT_EQ(resolved->warnings.size(), 1u);  // once, however often it runs
  EXPECT_EQ(resolved->warnings[0].where, "cycle.segments[0].law");
  EXPECT_THAT(resolved->warnings[0].what, HasSubstr("jerk limit cannot be kept"));
}

TEST(ResolvedMoves, AMissingTargetIsNamed) {
  EXPECT_EQ(errorOf(makeCycle({moveTo(kUnset)})).where, "cycle.segments[0].target");
}

TEST(ResolvedMoves, AllSwitchedOffIsAnError) {
  Cycle cycle = makeCycle({move(1)});
  cycle.segments[0].disabled = true;
  EXPECT_THAT(errorOf(cycle).what, HasSubstr("switched off"));
  EXPECT_EQ(errorOf(cycle).where, "cycle.segments");
}

TEST(ResolvedMoves, TooManyRepeatsAreRefused) {
  Cycle cycle = makeCycle({inBlock("a", move(1), 50'000), inBlock("a", move(-1)), move(0)});
  const InputError error = errorOf(cycle);
  EXPECT_EQ(error.where, "cycle.segments[2].repeats");
  EXPECT_THAT(error.what, HasSubstr("100001 moves"));
  cycle.segments.pop_back();
  EXPECT_EQ(errorOf(cycle), InputError{});
}

// A block that repeats breaks at the same joins again and again, and is told of once.
TEST(ResolvedMoves, ABrokenJoinIsNamedOnce) {
  Segment swing = move(0.2);
  swing.law = MotionLaw::Sinusoid;
  Cycle cycle =
      makeCycle({inBlock("a", move(0.5), 20), inBlock("a", swing), inBlock("a", move(-0.5))});
  const auto sampled = sampleCycle(cycle);
  EXPECT_EQ(sampled->warnings.size(), 2u);  // into the swing and out of it
}

// Identity: the integral of speed over each run is its travel, whatever sets its time.
TEST(ResolvedMoves, EveryRunsSpeedIntegratesToItsTravel) {
  std::vector<Segment> segments;
  for (int law = 0; law < static_cast<int>(MotionLaw::Dwell); ++law) {
    Segment segment = fast(static_cast<MotionLaw>(law), law % 2 == 0 ? 0.7 : -0.4);
    if (segment.law == MotionLaw::Sinusoid) segment.periods = 0.5;
    segment.repeats = 1 + law % 3;
    segments.push_back(segment);
  }
  Cycle cycle = makeCycle(segments, 0, 20'000);
  cycle.speedLimit = 2;
  cycle.accelerationLimit = 15;
  cycle.jerkLimit = 300;
  const auto resolved = resolveMoves(cycle);
  const auto sampled = sampleCycle(cycle);
  ASSERT_TRUE(sampled.has_value());
  ASSERT_EQ(sampled->runs.size(), resolved->moves.size());
  for (std::size_t k = 0; k < sampled->runs.size(); ++k) {
    const Eigen::Index first = sampled->runs[k].first;
    const Eigen::Index end =
        k + 1 < sampled->runs.size() ? sampled->runs[k + 1].first : sampled->size();
    const double way = (sampled->weight * sampled->speed).segment(first, end - first).sum();
    const bool returns = resolved->moves[k].shape.law == MotionLaw::Sinusoid;
    EXPECT_NEAR(way, returns ? 0 : resolved->moves[k].shape.travel, 1e-9) << k;
    EXPECT_EQ(sampled->segment[first], static_cast<int>(resolved->moves[k].origin));
  }
}

}  // namespace
}  // namespace jw

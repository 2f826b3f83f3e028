#include "core/motion/segment_input.h"

#include <cmath>
#include <functional>
#include <limits>

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "core/motion/sampled_cycle.h"
#include "tests/core/motion/make_cycle.h"

namespace jw {
namespace {

using testing::HasSubstr;

constexpr double kInfinity = std::numeric_limits<double>::infinity();

Cycle goodCycle(MotionLaw law) {
  Segment segment;
  segment.name = "Lift";
  segment.law = law;
  segment.travel = 1;
  segment.duration = 1;
  return makeCycle({segment});
}

InputError errorOf(const Cycle& cycle) {
  const auto result = sampleCycle(cycle);
  return result ? InputError{} : result.error();
}

InputError errorAfter(MotionLaw law, const std::function<void(Segment&)>& change) {
  Cycle cycle = goodCycle(law);
  EXPECT_FALSE(cycleInputError(cycle));
  change(cycle.segments[0]);
  return errorOf(cycle);
}

TEST(SegmentInput, EmptyCycleAsksForAMove) {
  const InputError error = errorOf({});
  EXPECT_EQ(error.where, "cycle.segments");
  EXPECT_THAT(error.remedy, HasSubstr("at least one move"));
}

TEST(SegmentInput, UnsetValuesAreNamed) {
  const InputError travel =
      errorAfter(MotionLaw::Polynomial345, [](Segment& s) { s.travel = kUnset; });
  EXPECT_EQ(travel.where, "cycle.segments[0].travel");
  EXPECT_THAT(travel.what, HasSubstr("segment 1 \"Lift\": \"Travel\" is not set"));
  const InputError duration = errorAfter(MotionLaw::Dwell, [](Segment& s) { s.duration = kUnset; });
  EXPECT_EQ(duration.where, "cycle.segments[0].duration");
  EXPECT_THAT(duration.what, HasSubstr("not set"));
  EXPECT_THAT(duration.remedy, HasSubstr("above 0"));
}

TEST(SegmentInput, DurationsMustBeUsable) {
  for (const double bad : {0.0, -1.0, kInfinity, 1.1e9}) {
    const InputError error =
        errorAfter(MotionLaw::Harmonic, [bad](Segment& s) { s.duration = bad; });
    EXPECT_EQ(error.where, "cycle.segments[0].duration") << bad;
    EXPECT_THAT(error.remedy, HasSubstr("above 0 s"));
  }
}

TEST(SegmentInput, SharesMustBeInRange) {
  for (const double bad : {0.0, -0.1, 1.1, kUnset, kInfinity}) {
    EXPECT_EQ(errorAfter(MotionLaw::Trapezoidal, [bad](Segment& s) { s.accelShare = bad; }).where,
              "cycle.segments[0].accelShare");
    EXPECT_EQ(errorAfter(MotionLaw::JerkLimited, [bad](Segment& s) { s.decelShare = bad; }).where,
              "cycle.segments[0].decelShare");
  }
  for (const double bad : {0.0, 0.51, -0.2, kUnset})
    EXPECT_EQ(errorAfter(MotionLaw::JerkLimited, [bad](Segment& s) { s.jerkShare = bad; }).where,
              "cycle.segments[0].jerkShare");
  const InputError sum = errorAfter(MotionLaw::Trapezoidal, [](Segment& s) { s.accelShare = 0.7; });
  EXPECT_EQ(sum.where, "cycle.segments[0].decelShare");
  EXPECT_THAT(sum.what, HasSubstr("1.03333 together"));
}

TEST(SegmentInput, ValuesThatTheLawDoesNotNeedDoNotMatter) {
  EXPECT_EQ(errorAfter(MotionLaw::Polynomial345,
                       [](Segment& s) { s.accelShare = s.jerkShare = s.periods = -5; }),
            InputError{});
  EXPECT_EQ(errorAfter(MotionLaw::Dwell, [](Segment& s) { s.travel = kUnset; }), InputError{});
}

TEST(SegmentInput, PeriodsMustBePositive) {
  for (const double bad : {0.0, -1.0, 2e6, kUnset})
    EXPECT_EQ(errorAfter(MotionLaw::Sinusoid, [bad](Segment& s) { s.periods = bad; }).where,
              "cycle.segments[0].periods");
}

TEST(SegmentInput, SamplesAndStartAngleMustBeUsable) {
  for (const int bad : {-1, 0, 4, 10'000'001}) {
    Cycle cycle = goodCycle(MotionLaw::Dwell);
    cycle.samples = bad;
    EXPECT_EQ(errorOf(cycle).where, "cycle.samples");
    EXPECT_THAT(errorOf(cycle).remedy, HasSubstr("a whole number from 5 to 10"));
  }
  for (const double bad : {kUnset, kInfinity, -2e7}) {
    Cycle cycle = goodCycle(MotionLaw::Dwell);
    cycle.startAngle = bad;
    EXPECT_EQ(errorOf(cycle).where, "cycle.startAngle");
  }
}

TEST(SegmentInput, TheSecondSegmentIsCalledSo) {
  Cycle cycle = goodCycle(MotionLaw::Dwell);
  cycle.segments.push_back(cycle.segments[0]);
  cycle.segments[1].duration = -2;
  EXPECT_EQ(errorOf(cycle).where, "cycle.segments[1].duration");
}

TEST(SegmentInput, OverflowIsAnErrorNotAnInfinity) {
  const InputError error =
      errorAfter(MotionLaw::Polynomial345, [](Segment& s) { s.duration = 1e-300; });
  EXPECT_EQ(error.where, "cycle.segments[0]");
  EXPECT_THAT(error.what, HasSubstr("too large"));
}

TEST(SegmentInput, TooManySamplesTogetherAreRefused) {
  Cycle cycle = goodCycle(MotionLaw::Sinusoid);
  cycle.segments[0].periods = 1e5;
  cycle.segments.resize(20, cycle.segments[0]);
  EXPECT_EQ(errorOf(cycle).where, "cycle.segments");
  EXPECT_THAT(errorOf(cycle).what, HasSubstr("32000020 samples"));
}

MotionTable goodTable() { return {{0, 1, 2, 3, 4, 5}, {0, 0, 0, 0, 0, 0}, {}, {}}; }

InputError tableErrorAfter(const std::function<void(MotionTable&)>& change) {
  Cycle cycle = makeCycle({Segment{}});
  cycle.segments[0].law = MotionLaw::Table;
  cycle.segments[0].table = goodTable();
  EXPECT_FALSE(cycleInputError(cycle));
  change(cycle.segments[0].table);
  return errorOf(cycle);
}

TEST(SegmentInput, TableErrorsNameTheRow) {
  const InputError order = tableErrorAfter([](MotionTable& t) { t.time.own()[3] = 2; });
  EXPECT_EQ(order.where, "cycle.segments[0].table.time");
  EXPECT_THAT(order.what, HasSubstr("row 4: the time goes from 2 s to 2 s"));
  const InputError nan = tableErrorAfter([](MotionTable& t) { t.angle.own()[1] = kUnset; });
  EXPECT_EQ(nan.where, "cycle.segments[0].table.angle");
  EXPECT_THAT(nan.what, HasSubstr("row 2: the angle is nan"));
  EXPECT_THAT(tableErrorAfter([](MotionTable& t) { t.time.own()[0] = -1; }).what,
              HasSubstr("row 1"));
}

TEST(SegmentInput, TableSizesMustFit) {
  EXPECT_THAT(tableErrorAfter([](MotionTable& t) { t = {}; }).what, HasSubstr("empty"));
  EXPECT_THAT(tableErrorAfter([](MotionTable& t) {
                t = {{0, 1}, {0, 1}, {}, {}};
              }).remedy,
              HasSubstr("at least 5 rows"));
  EXPECT_EQ(tableErrorAfter([](MotionTable& t) {
              t = {{0, 1}, {0, 1}, {1, 1}, {0, 0}};
            }),
            InputError{});
  EXPECT_THAT(tableErrorAfter([](MotionTable& t) { t.angle.own().pop_back(); }).what,
              HasSubstr("6 times, 5 angles"));
}

TEST(SegmentInput, SmoothingWindowMustBePositive) {
  Cycle cycle = makeCycle({Segment{}});
  cycle.segments[0].law = MotionLaw::Table;
  cycle.segments[0].table = goodTable();
  cycle.segments[0].smoothing = 0;
  EXPECT_EQ(errorOf(cycle).where, "cycle.segments[0].smoothing");
}

}  // namespace
}  // namespace jw

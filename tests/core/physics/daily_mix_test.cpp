// Shares of the day and means over a mix. The numbers are worked by hand from the definitions.
#include "core/physics/daily_mix.h"

#include <cmath>

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace jw {
namespace {

using testing::ElementsAre;
using testing::HasSubstr;

Cycle perHour(double count) {
  Cycle cycle;
  cycle.use = MixUse::PerHour;
  cycle.perHour = count;
  return cycle;
}

Cycle ofDay(double share) {
  Cycle cycle;
  cycle.use = MixUse::Share;
  cycle.dayShare = share;
  return cycle;
}

TEST(DailyMix, OnlyCyclesWithAUseAreInIt) {
  Project project;
  project.otherCycles = {perHour(3), Cycle{}, ofDay(0.2)};
  project.otherCycles[2].name = "clean";
  const auto entries = mixEntries(project);
  ASSERT_EQ(entries.size(), 2u);
  EXPECT_EQ(entries[0].path, "otherCycles[0]");
  EXPECT_EQ(entries[0].title, "cycle 2");
  EXPECT_EQ(entries[1].title, "\"clean\"");
}

TEST(DailyMix, RunsPerHourTimesPeriodIsAShare) {
  Project project;
  project.cycle = perHour(90);
  project.otherCycles = {ofDay(0.25)};
  const auto shares = mixShares(mixEntries(project), {12, 99});
  ASSERT_TRUE(shares.has_value());
  EXPECT_THAT(shares->share, ElementsAre(0.3, 0.25));  // 90 x 12 s of 3600 s
  EXPECT_DOUBLE_EQ(shares->idle, 0.45);
}

TEST(DailyMix, ThreeThirdsLeaveNoIdleTime) {
  Project project;
  project.otherCycles = {ofDay(0.1), ofDay(0.2), ofDay(0.7)};
  EXPECT_EQ(mixShares(mixEntries(project), {1, 1, 1})->idle, 0);
}

TEST(DailyMix, MoreThanTheWholeNamesTheCycles) {
  Project project;
  project.cycle = ofDay(0.5);
  project.cycle.name = "pick";
  project.otherCycles = {perHour(100)};
  const auto shares = mixShares(mixEntries(project), {1, 27});
  ASSERT_FALSE(shares.has_value());
  EXPECT_THAT(shares.error().what, HasSubstr("125 %"));
  EXPECT_THAT(shares.error().what, HasSubstr("\"pick\" 50 % and cycle 2 75 %"));
  EXPECT_EQ(shares.error().where, "otherCycles[0].perHour");
}

TEST(DailyMix, AMissingCountIsNamed) {
  Project project;
  project.cycle = ofDay(kUnset);
  EXPECT_EQ(mixShares(mixEntries(project), {1}).error().where, "cycle.dayShare");
  project.cycle = perHour(kUnset);
  EXPECT_EQ(mixShares(mixEntries(project), {1}).error().where, "cycle.perHour");
}

// 10 N·m at 40 rad/s half the day, 20 N·m at 20 rad/s a quarter: n_av = 25 rad/s,
// T_av³ = (20 x 10³ + 5 x 20³) / 25 = 2400.
TEST(DailyMix, WearIsWeightedByTheWayTurned) {
  const WearMeans mixed = mixedWear({{10, 40}, {20, 20}}, {0.5, 0.25}, 3);
  EXPECT_DOUBLE_EQ(mixed.speed, 25);
  EXPECT_NEAR(mixed.load, std::cbrt(2400.0), 1e-12);
}

TEST(DailyMix, WhatNeverTurnsDoesNotWear) {
  EXPECT_EQ(mixedWear({{10, 0}, {0, 5}}, {0.5, 0.5}, 3).load, 0);
  EXPECT_EQ(mixedWear({{10, 0}}, {1}, 3).load, 0);
}

TEST(DailyMix, LoadsOfAnySizeDoNotOverflow) {
  EXPECT_NEAR(mixedWear({{1e200, 1}}, {1}, 10.0 / 3).load / 1e200, 1, 1e-12);
}

TEST(DailyMix, IdleTimeCountsAsZeroInTheMeans) {
  EXPECT_DOUBLE_EQ(mixedMean({100, 20}, {0.3, 0.2}), 34);
  EXPECT_DOUBLE_EQ(mixedRms({3, 4}, {0.25, 0.25}), 2.5);
}

}  // namespace
}  // namespace jw

// A day of several cycles. Identities: a mix of one is that one; a cycle split in two is the same
// cycle; idle time stretches the life; two cycles by their shares are one long cycle of both.
#include <cmath>

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "core/checks/evaluation.h"
#include "tests/core/checks/example_project.h"

namespace jw {
namespace {

using testing::HasSubstr;

void use(Cycle& cycle, double share) {
  cycle.use = MixUse::Share;
  cycle.dayShare = share;
}

/// A slower cycle with a lighter load, from and to the same angle.
Cycle easyCycle(const Project& project) {
  Cycle cycle = project.cycle;
  cycle.name = "easy";
  for (Segment& segment : cycle.segments) {
    segment.payloadMass = 1;
    segment.duration *= 1.7;
  }
  return cycle;
}

const Check& checkOf(const Evaluation& result, std::string_view id, int stage = -1) {
  for (const Check& check : result.checks) {
    if (check.id == id && check.stage == stage) return check;
  }
  throw std::logic_error("no such check");
}

/// Every check that looks at the day.
constexpr std::pair<const char*, int> kOfTheDay[] = {{"drive.life", 1},
                                                     {"drive.torque_average", 1},
                                                     {"drive.speed_average", 1},
                                                     {"drive.bearing_life", 1},
                                                     {"motor.temperature_winding", -1},
                                                     {"motor.temperature_housing", -1},
                                                     {"motor.touch_temperature", -1},
                                                     {"supply.power_mean", -1}};

void expectSameDay(const Evaluation& a, const Evaluation& b, double tolerance) {
  for (const auto& [id, stage] : kOfTheDay) {
    SCOPED_TRACE(id);
    const Check& x = checkOf(a, id, stage);
    const Check& y = checkOf(b, id, stage);
    ASSERT_NE(x.state, CheckState::Open);
    EXPECT_NEAR(x.demand / y.demand, 1, tolerance);
    EXPECT_NEAR(x.capacity / y.capacity, 1, tolerance);
  }
}

TEST(MixEvaluation, AMixOfOneIsThatOneToTheLastBit) {
  Project project = exampleProject();
  const Evaluation alone = evaluate(project);
  use(project.cycle, 1);
  project.otherCycles = {easyCycle(project)};
  project.otherCycles[0].use = MixUse::NotUsed;
  const Evaluation mixed = evaluate(project);
  EXPECT_FALSE(mixed.mix);
  ASSERT_EQ(mixed.checks.size(), alone.checks.size());
  for (std::size_t k = 0; k < alone.checks.size(); ++k) {
    EXPECT_EQ(mixed.checks[k].demand, alone.checks[k].demand) << alone.checks[k].id;
    EXPECT_EQ(mixed.checks[k].margin, alone.checks[k].margin) << alone.checks[k].id;
  }
}

TEST(MixEvaluation, ACycleSplitInTwoIsTheSameCycle) {
  Project project = exampleProject();
  const Evaluation alone = evaluate(project);
  use(project.cycle, 0.4);
  project.otherCycles = {project.cycle};
  use(project.otherCycles[0], 0.6);
  const Evaluation mixed = evaluate(project);
  ASSERT_TRUE(mixed.mix);
  EXPECT_EQ(mixed.mix->idle, 0);
  expectSameDay(mixed, alone, 1e-13);
  EXPECT_NEAR(mixed.mix->torqueRms / alone.demand->torqueRms, 1, 1e-13);
  EXPECT_NEAR(mixed.mix->currentRms / alone.demand->currentRms, 1, 1e-13);
  // Mean losses and the cycle's own mean differ by the copper that warms and cools within it.
  EXPECT_NEAR(mixed.mix->windingMean, alone.heat->periodic.windingMean, 0.05);
}

// The same by runs per hour: one cycle every 2.8 s is all the time there is.
TEST(MixEvaluation, RunsPerHourAndSharesAgree) {
  Project project = exampleProject();
  project.otherCycles = {easyCycle(project)};
  use(project.cycle, 0.5);
  use(project.otherCycles[0], 0.25);
  const Evaluation shares = evaluate(project);
  project.cycle.use = project.otherCycles[0].use = MixUse::PerHour;
  project.cycle.perHour = 0.5 * 3600 / shares.cycle->period;
  project.otherCycles[0].perHour = 0.25 * 3600 / (1.7 * shares.cycle->period);
  const Evaluation counts = evaluate(project);
  EXPECT_NEAR(counts.mix->idle, 0.25, 1e-12);
  expectSameDay(counts, shares, 1e-12);
}

TEST(MixEvaluation, IdleTimeStretchesTheLife) {
  Project project = exampleProject();
  const Evaluation alone = evaluate(project);
  use(project.cycle, 0.5);
  const Evaluation half = evaluate(project);
  ASSERT_TRUE(half.mix);
  EXPECT_EQ(half.mix->idle, 0.5);
  const auto capacity = [](const Evaluation& e, const char* id) {
    return checkOf(e, id, 1).capacity;
  };
  EXPECT_NEAR(capacity(half, "drive.life") / capacity(alone, "drive.life"), 2, 1e-12);
  EXPECT_NEAR(capacity(half, "drive.bearing_life") / capacity(alone, "drive.bearing_life"), 2,
              1e-12);
  EXPECT_NEAR(checkOf(half, "drive.torque_average", 1).demand /
                  checkOf(alone, "drive.torque_average", 1).demand,
              1, 1e-12);
  EXPECT_NEAR(
      quantityValue(half, "supply.energy_per_day") / quantityValue(alone, "supply.energy_per_day"),
      0.5, 1e-12);
  EXPECT_NEAR(half.mix->torqueRms / alone.demand->torqueRms, std::sqrt(0.5), 1e-12);
}

TEST(MixEvaluation, TwoCyclesByTheirSharesAreOneLongCycleOfBoth) {
  Project project = exampleProject(20'000);
  const Cycle easy = easyCycle(project);
  Project both = project;
  both.cycle.segments.insert(both.cycle.segments.end(), easy.segments.begin(), easy.segments.end());
  const Evaluation longCycle = evaluate(both);
  project.otherCycles = {easy};
  use(project.cycle, 1 / 2.7);
  use(project.otherCycles[0], 1.7 / 2.7);
  const Evaluation mixed = evaluate(project);
  ASSERT_TRUE(mixed.mix);
  for (const auto& [id, stage] :
       {std::pair{"drive.life", 1}, std::pair{"drive.torque_average", 1},
        std::pair{"drive.speed_average", 1}, std::pair{"drive.bearing_life", 1},
        std::pair{"supply.power_mean", -1}}) {
    SCOPED_TRACE(id);
    const Check& x = checkOf(mixed, id, stage);
    const Check& y = checkOf(longCycle, id, stage);
    EXPECT_NEAR(x.demand / y.demand, 1, 1e-4);
    EXPECT_NEAR(x.capacity / y.capacity, 1, 1e-4);
  }
  EXPECT_NEAR(mixed.mix->torqueRms / longCycle.demand->torqueRms, 1, 1e-4);
  EXPECT_NEAR(mixed.mix->windingMean, longCycle.heat->periodic.windingMean, 0.1);
}

TEST(MixEvaluation, TheHottestCycleIsJudged) {
  Project project = exampleProject();
  Project swapped = project;
  swapped.cycle = easyCycle(project);
  const Evaluation hard = evaluate(project);
  // Shown is the easy one; the hard one runs one hour in ten and is still the hottest.
  project.otherCycles = {project.cycle};
  project.cycle = swapped.cycle;
  use(project.cycle, 0.5);
  use(project.otherCycles[0], 0.1);
  const Evaluation mixed = evaluate(project);
  ASSERT_TRUE(mixed.mix);
  EXPECT_EQ(mixed.mix->hottest()->path, "otherCycles[0]");
  const Check& winding = checkOf(mixed, "motor.temperature_winding");
  EXPECT_EQ(winding.demand, hard.heat->periodic.windingPeak);
  EXPECT_TRUE(std::isnan(winding.time));  // no instant of the cycle shown
  EXPECT_LT(mixed.mix->windingMean, hard.heat->periodic.windingMean);
  EXPECT_THAT(explain(project, mixed, winding).note,
              HasSubstr("Over the daily mix: \"easy\" 50 %"));
}

TEST(MixEvaluation, HigherPeaksThanShownAreNoted) {
  Project project = exampleProject();
  project.otherCycles = {project.cycle};
  project.cycle = easyCycle(project);
  use(project.cycle, 0.5);
  use(project.otherCycles[0], 0.5);
  const Evaluation mixed = evaluate(project);
  ASSERT_FALSE(mixed.notices.empty());
  EXPECT_EQ(mixed.notices.back().text.where, "otherCycles[0]");
  EXPECT_THAT(mixed.notices.back().text.what, HasSubstr("cycle 2 asks for a higher motor torque"));
}

TEST(MixEvaluation, WhatIsWrongInAnotherCycleNamesItsPath) {
  Project project = exampleProject();
  project.otherCycles = {easyCycle(project)};
  use(project.otherCycles[0], 0.5);
  project.otherCycles[0].segments[1].duration = kUnset;
  const Evaluation mixed = evaluate(project);
  EXPECT_FALSE(mixed.mix);
  const Check& life = checkOf(mixed, "drive.life", 1);
  EXPECT_EQ(life.state, CheckState::Open);
  EXPECT_THAT(life.missing, testing::ElementsAre("otherCycles[0].segments[1].duration"));
  // What the day does not touch is judged as ever.
  EXPECT_NE(checkOf(mixed, "motor.torque").state, CheckState::Open);
}

TEST(MixEvaluation, MoreThanADayLeavesItsChecksOpen) {
  Project project = exampleProject();
  project.otherCycles = {easyCycle(project)};
  use(project.cycle, 0.7);
  use(project.otherCycles[0], 0.6);
  const Evaluation mixed = evaluate(project);
  EXPECT_FALSE(mixed.mix);
  ASSERT_FALSE(mixed.missing.empty());
  EXPECT_EQ(mixed.missing.back().where, "cycle.dayShare");
  EXPECT_EQ(checkOf(mixed, "supply.power_mean").state, CheckState::Open);
}

}  // namespace
}  // namespace jw

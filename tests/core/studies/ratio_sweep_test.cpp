// Sweeps of the ratio. Textbook matches: Khurmi and Gupta, Theory of Machines, example 3.14 (read
// second-hand) and own, by brute force; the rest own, calculated by brute force with evaluate.
#include <algorithm>
#include <cmath>

#include <gtest/gtest.h>

#include "core/studies/ratio_sweep.h"
#include "core/studies/textbook_ratio.h"
#include "tests/core/checks/example_project.h"

namespace jw {
namespace {

std::vector<double> ratios(double from, double to, int count) {
  std::vector<double> all;
  for (int k = 0; k < count; ++k) all.push_back(from + (to - from) * k / (count - 1));
  return all;
}

TEST(TextbookRatio, MatchesThePublishedExample) {
  EXPECT_DOUBLE_EQ(inertiaMatch(32, 2), 4);
  EXPECT_TRUE(std::isnan(inertiaMatch(32, 0)));
  EXPECT_TRUE(std::isnan(inertiaMatch(32, 2, -1000, 1)));
}

TEST(TextbookRatio, WithTorqueNeedsTheLeastMotorTorque) {
  const double loadInertia = 3, motorInertia = 4e-4, torque = 20, alpha = 7;
  const auto motorTorque = [&](double n) {
    return motorInertia * n * alpha + (loadInertia * alpha + torque) / n;
  };
  const double best = inertiaMatch(loadInertia, motorInertia, torque, alpha);
  for (double n = 1; n < 400; n += 0.25) EXPECT_GE(motorTorque(n), motorTorque(best));
}

TEST(RatioSweep, EveryPointIsTheFullEvaluationAtThatRatio) {
  const Project project = exampleProject(200);
  const auto sweep = ratioSweep(project, {1, ratios(40, 160, 13), false});
  ASSERT_TRUE(sweep) << describe(sweep.error());
  EXPECT_EQ(sweep->present, 80);
  for (std::size_t k = 0; k < sweep->ratio.size(); ++k) {
    Project changed = project;
    changed.active().transmission[1].ratio = sweep->ratio[k];
    const Evaluation evaluation = evaluate(changed);
    ASSERT_EQ(sweep->points[k].margins.size(), evaluation.checks.size());
    for (const Check& check : evaluation.checks) {
      const auto column = std::find_if(
          sweep->checks.begin(), sweep->checks.end(),
          [&](const MarginColumn& c) { return c.id == check.id && c.stage == check.stage; });
      ASSERT_NE(column, sweep->checks.end()) << check.id;
      EXPECT_TRUE(column->margin[k] == check.margin ||
                  (std::isnan(column->margin[k]) && std::isnan(check.margin)))
          << check.id;
      EXPECT_EQ(column->title, check.title);
    }
  }
}

TEST(RatioSweep, BandEndsWhereTheNamedCheckTurnsShort) {
  const Project project = exampleProject(200);
  const auto sweep = ratioSweep(project, {1, ratios(10, 300, 30), false});
  ASSERT_TRUE(sweep);
  ASSERT_EQ(sweep->bands.size(), 1U);
  for (const auto& [end, outwards] :
       {std::pair{sweep->bands[0].low, 0.999}, std::pair{sweep->bands[0].high, 1.001}}) {
    ASSERT_FALSE(end.check.empty());
    EXPECT_FALSE(end.title.empty());
    const auto marginAt = [&](double ratio) {
      const Evaluation e = evaluate(withStageRatio(project, 1, ratio));
      const auto check = std::find_if(e.checks.begin(), e.checks.end(), [&](const Check& c) {
        return c.id == end.check && c.stage == end.stage;
      });
      return check->margin;
    };
    EXPECT_GE(marginAt(end.ratio), 0) << end.title;
    EXPECT_LT(marginAt(end.ratio * outwards), 0) << end.title;
  }
}

TEST(RatioSweep, OfTheChainChangesTheLargestStageAlone) {
  const Project project = exampleProject(200);
  const auto whole = ratioSweep(project, {-1, ratios(100, 300, 5), false});
  const auto stage = ratioSweep(project, {1, ratios(50, 150, 5), false});
  ASSERT_TRUE(whole && stage);
  EXPECT_EQ(whole->stage, 1);
  EXPECT_TRUE(whole->total);
  EXPECT_EQ(whole->present, 160);
  for (std::size_t k = 0; k < 5; ++k) EXPECT_EQ(whole->points[k].worst, stage->points[k].worst);
  EXPECT_NEAR(whole->inertiaMatched, 2 * stage->inertiaMatched, 1e-9 * whole->inertiaMatched);
}

TEST(RatioSweep, BestRatiosBeatTheirNeighbours) {
  const Project project = exampleProject(200);
  const auto sweep = ratioSweep(project, {1, ratios(20, 300, 57), false});
  ASSERT_TRUE(sweep);
  const auto at = [&](double ratio) { return evaluate(withStageRatio(project, 1, ratio)); };
  const auto loss = [&](double ratio) { return designPoint(at(ratio)).lossMean; };
  const auto heat = [&](double ratio) {
    return quantityValue(at(ratio), "motor.temperature_winding_peak");
  };
  const double lossy = sweep->leastLoss.ratio, cool = sweep->coolest.ratio;
  EXPECT_LT(loss(lossy), std::min(loss(0.9 * lossy), loss(1.1 * lossy)));
  EXPECT_LT(heat(cool), std::min(heat(0.9 * cool), heat(1.1 * cool)));
  EXPECT_NEAR(sweep->leastLoss.value, loss(lossy), 1e-3 * loss(lossy));
}

TEST(RatioSweep, FrictionlessInertiaIsMatchedByTheTextbookRatio) {
  Project project = exampleProject(400);
  const double inertia = 2.5;
  project.load = {};
  project.load.inertia = inertia;
  project.active().transmission.erase(project.active().transmission.begin());
  Stage& stage = project.active().transmission[0];
  stage = {};
  stage.ratio = 50;
  stage.efficiency = 1;
  Motor& motor = project.active().motor;
  motor.dragTorque = motor.dragDamping = motor.brakeInertia = 0;
  const auto sweep = ratioSweep(project, {0, ratios(50, 500, 181), false});
  ASSERT_TRUE(sweep);
  EXPECT_NEAR(sweep->inertiaMatched, std::sqrt(inertia / motor.rotorInertia), 1e-9);
  EXPECT_NEAR(sweep->torqueMatched, sweep->inertiaMatched, 1e-9);
  // With no other torque the least rms torque, and so the coolest winding, is at the match.
  EXPECT_NEAR(sweep->coolest.ratio, sweep->inertiaMatched, 0.01 * sweep->inertiaMatched);
}

TEST(RatioSweep, RatioOfTeethIsTypedOverAndKeepsItsSense) {
  Project project = exampleProject(200);
  Stage& stage = project.active().transmission[1];
  stage.ratio = kUnset;
  stage.reverses = false;
  stage.strainWave.flexTeeth = 160;
  stage.strainWave.circularTeeth = 162;
  ASSERT_TRUE(evaluate(project).chain);
  const double present = evaluate(project).chain->stages[1].ratio;
  const auto sweep = ratioSweep(project, {1, ratios(40, 160, 3), false});
  ASSERT_TRUE(sweep) << describe(sweep.error());
  EXPECT_DOUBLE_EQ(sweep->present, std::abs(present));
  const Project changed = withStageRatio(project, 1, 100);
  EXPECT_EQ(std::signbit(evaluate(changed).chain->stages[1].ratio), std::signbit(present));
}

TEST(RatioSweep, TicksAreRatiosThatCanBeBuilt) {
  const auto ticks = realizableTicks(StageFamily::Cycloidal, 30, 40, SizeLimits{});
  EXPECT_EQ(ticks, (std::vector<double>{30, 31, 32, 33, 34, 35, 36, 37, 38, 39, 40}));
  // Splines that differ by two teeth: z_f / 2 and z_f / 2 + 1 for whole z_f.
  const auto halves = realizableTicks(StageFamily::StrainWave, 50, 52, SizeLimits{});
  EXPECT_EQ(halves, (std::vector<double>{50, 50.5, 51, 51.5, 52}));
  for (const StageFamily family :
       {StageFamily::Planetary, StageFamily::Belt, StageFamily::ParallelShaft}) {
    const auto many = realizableTicks(family, 3, 5, SizeLimits{}, 50);
    EXPECT_GT(many.size(), 10U);
    EXPECT_LE(many.size(), 50U);
    EXPECT_TRUE(std::is_sorted(many.begin(), many.end()));
    for (const double ratio : many) {
      EXPECT_LT(std::abs(realizableRatios(family, ratio, SizeLimits{}, 1)[0].error), 1e-9);
    }
  }
  EXPECT_TRUE(realizableTicks(StageFamily::GivenRatio, 3, 5, SizeLimits{}).empty());
}

TEST(RatioSweep, PreviewIsNearTheFullSweep) {
  const Project project = exampleProject(1000);
  const auto full = ratioSweep(project, {1, ratios(40, 160, 25), false});
  const auto preview = ratioSweep(project, {1, ratios(40, 160, 25), true});
  ASSERT_TRUE(full && preview);
  for (std::size_t k = 0; k < 25; ++k) {
    EXPECT_NEAR(preview->points[k].worst, full->points[k].worst, 0.05);
  }
}

TEST(RatioSweep, RefusesWithAReason) {
  Project project = exampleProject(200);
  EXPECT_FALSE(ratioSweep(project, {1, {50, 40}, false}));
  EXPECT_FALSE(ratioSweep(project, {1, {0, 40}, false}));
  EXPECT_FALSE(ratioSweep(project, {2, {40, 50}, false}));
  project.active().transmission[0].ratio = kUnset;
  project.active().transmission[0].belt = {};
  const auto unknown = ratioSweep(project, {1, {40, 50}, false});
  ASSERT_FALSE(unknown);
  EXPECT_EQ(unknown.error().where, "transmission[0].ratio");
  project.active().transmission.clear();
  EXPECT_FALSE(ratioSweep(project, {-1, {40, 50}, false}));
}

TEST(RatioSweep, StopsWhenAsked) {
  std::stop_source source;
  source.request_stop();
  StudyRun run;
  run.stop = source.get_token();
  const auto sweep = ratioSweep(exampleProject(200), {1, ratios(40, 160, 50), false}, run);
  ASSERT_TRUE(sweep);
  EXPECT_TRUE(sweep->stopped);
}

/// A stage whose catalogue efficiency at rated torque leaves nothing for the mesh above a ratio of
/// 90: its no-load torque alone is all of T_r/N (1/eta - 1) there (physics of the chain, from the
/// balance of torques).
Project withLimitOfData(Project project) {
  Stage& stage = project.active().transmission[1];
  stage.dragTorque = stage.ratedTorque * (1 / stage.efficiency - 1) / 90;
  return project;
}

TEST(RatioSweep, WhatCannotBeEvaluatedDoesNotHold) {
  const Project project = withLimitOfData(exampleProject(200));
  const auto sweep = ratioSweep(project, {1, ratios(40, 160, 25), false});
  ASSERT_TRUE(sweep) << describe(sweep.error());
  ASSERT_FALSE(evaluate(withStageRatio(project, 1, 120)).demand);
  for (std::size_t k = 0; k < sweep->ratio.size(); ++k) {
    const bool known = evaluate(withStageRatio(project, 1, sweep->ratio[k])).demand.has_value();
    EXPECT_EQ(sweep->points[k].openAt < 0, known) << sweep->ratio[k];
    EXPECT_EQ(known, sweep->ratio[k] < 90.001) << sweep->ratio[k];
    EXPECT_FALSE(!known && sweep->points[k].holds()) << sweep->ratio[k];
  }
  for (const FeasibleBand& band : sweep->bands) {
    EXPECT_LT(band.high.ratio, 90.001);
    EXPECT_TRUE(band.high.ratio < 89.9 || band.high.open);
  }
}

}  // namespace
}  // namespace jw

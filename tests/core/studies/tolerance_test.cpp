// Tolerance: points, spreads, Monte Carlo and linear propagation. Sums of four normal and of four
// rectangular values: JCGM 101:2008, 9.2.2 and 9.2.3 (read second-hand). Logarithm of a rectangular
// value: NPL report DEM-ES-011, 9.2 (read second-hand), exact form by hand. The rest own, by hand.
#include <cmath>

#include <gtest/gtest.h>

#include "core/studies/random_points.h"
#include "core/studies/spread.h"
#include "core/studies/tolerance.h"
#include "tests/core/checks/example_project.h"

namespace jw {
namespace {

std::vector<double> sumsOfFour(const Band& band) {
  const Eigen::ArrayXXd points = unitPoints(100'000, 4, 7);
  std::vector<double> sums;
  for (Eigen::Index i = 0; i < points.rows(); ++i) {
    double sum = 0;
    for (Eigen::Index j = 0; j < 4; ++j) sum += bandValue(band, 0, points(i, j));
    sums.push_back(sum);
  }
  return sums;
}

TEST(RandomPoints, SumOfFourNormalValues) {
  const Spread spread = spreadOf(sumsOfFour({2, false, BandShape::Normal}));
  EXPECT_NEAR(spread.mean, 0, 0.01);
  EXPECT_NEAR(spread.deviation, 2.0, 0.01);
  EXPECT_NEAR(spread.low, -3.92, 0.03);
  EXPECT_NEAR(spread.high, 3.92, 0.03);
}

TEST(RandomPoints, SumOfFourRectangularValues) {
  const Spread spread = spreadOf(sumsOfFour({std::sqrt(3.0), false, BandShape::Uniform}));
  EXPECT_NEAR(spread.deviation, 2.0, 0.01);
  // 2 sqrt(3) (2 - (3/5)^(1/4)) = 3.879407
  EXPECT_NEAR(spread.low, -3.879407, 0.03);
  EXPECT_NEAR(spread.high, 3.879407, 0.03);
}

TEST(RandomPoints, LogarithmOfARectangularValue) {
  const Eigen::ArrayXXd points = unitPoints(100'000, 1, 3);
  std::vector<double> values;
  for (Eigen::Index i = 0; i < points.rows(); ++i) {
    values.push_back(std::log(bandValue({0.5, false, BandShape::Uniform}, 0.6, points(i, 0))));
  }
  const Spread spread = spreadOf(values);
  EXPECT_NEAR(spread.mean, -0.664900, 1e-3);
  EXPECT_NEAR(spread.deviation, 0.606227, 1e-3);
}

TEST(RandomPoints, SeedDecides) {
  EXPECT_TRUE((unitPoints(100, 3, 5) == unitPoints(100, 3, 5)).all());
  EXPECT_FALSE((unitPoints(100, 3, 5) == unitPoints(100, 3, 6)).any());
  const Eigen::ArrayXXd points = unitPoints(1000, 3, 5);
  EXPECT_TRUE((points > 0).all() && (points < 1).all());
}

TEST(Spread, ExactIntervalOfAProportion) {
  // No hit in n: the upper end solves (1 - p)^n = 0.025.
  EXPECT_NEAR(proportionOf(0, 30).high, 1 - std::pow(0.025, 1.0 / 30), 1e-12);
  EXPECT_EQ(proportionOf(0, 30).low, 0);
  EXPECT_EQ(proportionOf(30, 30).high, 1);
  EXPECT_NEAR(proportionOf(30, 30).low, std::pow(0.025, 1.0 / 30), 1e-12);
  // The tails of the binomial at the ends hold 2.5 % each (definition).
  const Proportion p = proportionOf(3, 12);
  double below = 0;
  for (int k = 0; k <= 3; ++k) {
    below += std::tgamma(13) / (std::tgamma(k + 1) * std::tgamma(13 - k)) * std::pow(p.high, k) *
             std::pow(1 - p.high, 12 - k);
  }
  EXPECT_NEAR(below, 0.025, 1e-9);
}

TEST(Spread, RankCorrelation) {
  EXPECT_DOUBLE_EQ(rankCorrelation({1, 2, 3, 4}, {10, 100, 1000, 1e9}), 1);
  EXPECT_DOUBLE_EQ(rankCorrelation({1, 2, 3, 4}, {4, 3, 2, 1}), -1);
  EXPECT_EQ(rankCorrelation({1, 2, 3}, {5, 5, 5}), 0);
  // 1 - 6 sum d² / (n (n² - 1)) without ties: d = 0, 1, -1, 0 -> 0.8
  EXPECT_NEAR(rankCorrelation({1, 2, 3, 4}, {1, 3, 2, 4}), 0.8, 1e-12);
  EXPECT_EQ(ranksOf({7, 5, 7}), (std::vector<double>{2.5, 1, 2.5}));
  EXPECT_NEAR(rankCorrelation({1, kUnset, 2, 3}, {3, 9, 2, 1}), -1, 1e-12);
}

const MarginSpread& of(const Tolerance& result, std::string_view id, int stage) {
  for (const MarginSpread& check : result.checks) {
    if (check.id == id && check.stage == stage) return check;
  }
  throw std::logic_error("no such check");
}

Project withBand(const char* path, const char* band) {
  Project project = exampleProject(60);
  EXPECT_TRUE(setBand(project, path, band));
  return project;
}

TEST(Tolerance, MarginLinearInTheInputHasItsDistribution) {
  // margin = T_p / T - 1 with T_p rectangular.
  Project project = withBand("transmission[1].peakTorque", "± 10 N*m");
  const double load = quantityValue(evaluate(project), "joint.torque_peak");
  project.active().transmission[1].peakTorque = load * 1.02;
  ToleranceRequest request;
  request.draws = 4000;
  const auto result = tolerance(project, request);
  ASSERT_TRUE(result) << describe(result.error());
  const MarginSpread& peak = of(*result, "drive.torque_peak", 1);
  EXPECT_NEAR(peak.nominal, 0.02, 1e-9);
  EXPECT_NEAR(peak.drawn.deviation, 10 / std::sqrt(3.0) / load, 1e-3 * 10 / load);
  EXPECT_NEAR(peak.linearDeviation, 10 / std::sqrt(3.0) / load, 1e-9);
  const double chance = (10 + 0.02 * load) / 20;
  EXPECT_NEAR(peak.holds.share, chance, 2e-3);
  EXPECT_LT(peak.holds.low, chance);
  EXPECT_GT(peak.holds.high, chance);
  EXPECT_NEAR(peak.correlation[0], 1, 1e-12);
  EXPECT_EQ(of(*result, "motor.speed", -1).correlation[0], 0);
  // All together hold at most as often as the one that holds least (Fréchet's bound; from memory).
  double least = 1;
  for (const MarginSpread& one : result->checks) least = std::fmin(least, one.linearHolds);
  EXPECT_EQ(result->worst.linearHolds, least);
  EXPECT_LT(least, 1);
}

TEST(Tolerance, AllChecksHoldNoMoreOftenThanEach) {
  Project project = withBand("load.payloadMass", "± 60 %");
  ASSERT_TRUE(setBand(project, "motor.torqueConstant", "± 20 % normal"));
  ASSERT_TRUE(setBand(project, "transmission[1].efficiency", "± 10 % triangular"));
  ToleranceRequest request;
  request.draws = 1000;
  std::size_t partials = 0;
  request.partial = [&](const Tolerance& t) { partials += t.draws <= 1000 ? 1 : 0; };
  const auto result = tolerance(project, request);
  ASSERT_TRUE(result);
  EXPECT_GE(partials, 2U);
  EXPECT_EQ(result->draws, 1000U);
  ASSERT_EQ(result->inputs.size(), 3U);
  for (const MarginSpread& check : result->checks) {
    if (check.drawn.count == 0) continue;
    EXPECT_LE(result->worst.holds.share, check.holds.share) << check.id;
  }
  EXPECT_LT(result->worst.holds.share, 1);
  EXPECT_GT(result->worst.holds.share, 0);
}

TEST(Tolerance, SameSeedSameResult) {
  const Project project = withBand("load.payloadMass", "± 20 %");
  ToleranceRequest request;
  request.draws = 200;
  StudyRun one;
  one.threads = 1;
  const auto a = tolerance(project, request);
  const auto b = tolerance(project, request, one);
  ASSERT_TRUE(a && b);
  const auto& margin = of(*a, "drive.torque_peak", 1).margin;
  EXPECT_EQ(margin, of(*b, "drive.torque_peak", 1).margin);
  request.seed = 2;
  EXPECT_NE(margin, of(*tolerance(project, request), "drive.torque_peak", 1).margin);
}

TEST(Tolerance, ValuesThatAreNotAllowedAreHeldAndCounted) {
  Project project = withBand("transmission[1].efficiency", "± 50 %");
  ToleranceRequest request;
  request.draws = 1000;
  const auto result = tolerance(project, request);
  ASSERT_TRUE(result);
  // 0.75 ± 0.375 lies above 1 for (1.125 - 1) / 0.75 of all draws.
  EXPECT_NEAR(static_cast<double>(result->inputs[0].outOfRange), 1000 * 0.125 / 0.75, 5);
}

TEST(Tolerance, RefusesWithAReason) {
  const auto none = tolerance(exampleProject(60), {});
  ASSERT_FALSE(none);
  EXPECT_FALSE(none.error().remedy.empty());
  const Project project = withBand("load.payloadMass", "± 20 %");
  for (const std::size_t draws : {std::size_t{0}, std::size_t{1}, kMostDraws + 1}) {
    ToleranceRequest request;
    request.draws = draws;
    EXPECT_FALSE(tolerance(project, request));
  }
}

TEST(Tolerance, StopsWhenAsked) {
  std::stop_source source;
  ToleranceRequest request;
  request.draws = 50'000;
  request.partial = [&](const Tolerance&) { source.request_stop(); };
  StudyRun run;
  run.stop = source.get_token();
  const auto result = tolerance(withBand("load.payloadMass", "± 20 %"), request, run);
  ASSERT_TRUE(result);
  EXPECT_TRUE(result->stopped);
  EXPECT_EQ(result->draws, 500U);
  EXPECT_EQ(result->worst.margin.size(), 500U);
}

}  // namespace
}  // namespace jw

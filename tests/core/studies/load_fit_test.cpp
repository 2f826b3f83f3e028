// Load parameters recovered from made-up measurements of known loads.
#include "core/studies/load_fit.h"

#include <cmath>
#include <limits>
#include <numbers>
#include <random>

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "core/physics/load_torque.h"
#include "core/studies/load_edits.h"

namespace jw {
namespace {

using testing::Contains;
using testing::HasSubstr;

constexpr double kPi = std::numbers::pi;
constexpr std::array<double, kLoadTerms> kTruth{2.5, 18, -6, 0.7, 1.4, 0.9};

/// Two sines of the joint, `amplitude` [rad] the larger, and the torque of kTruth with noise.
struct Trial {
  std::vector<double> position, speed, acceleration, torque;

  explicit Trial(double amplitude = 1, std::size_t rows = 4000, double step = 2e-3) {
    for (std::size_t i = 0; i < rows; ++i) {
      const double t = static_cast<double>(i) * step;
      add(amplitude, 2 * kPi * 0.4, t, 0.3, 2 * kPi * 1.1);
    }
  }

  void add(double amplitude, double w, double t, double share, double v) {
    position.push_back(0.4 + amplitude * (std::sin(w * t) + share * std::sin(v * t)));
    speed.push_back(amplitude * (w * std::cos(w * t) + share * v * std::cos(v * t)));
    acceleration.push_back(-amplitude *
                           (w * w * std::sin(w * t) + share * v * v * std::sin(v * t)));
    const double q = position.back();
    torque.push_back(kTruth[0] * acceleration.back() + kTruth[1] * std::cos(q) +
                     kTruth[2] * std::sin(q) + kTruth[3] * speed.back() +
                     kTruth[4] * std::copysign(1.0, speed.back()) + kTruth[5]);
  }

  LoadFitData data() const { return {position, speed, acceleration, torque}; }
};

LoadFit fitted(const Trial& run, const LoadFitOptions& options = {}) {
  auto fit = fitLoad(run.data(), options);
  if (!fit) throw std::runtime_error(describe(fit.error()));
  return *std::move(fit);
}

std::vector<std::string> notesOf(const LoadFit& fit) {
  std::vector<std::string> notes;
  for (const InputError& n : fit.notes) notes.push_back(n.what);
  return notes;
}

TEST(LoadFit, ExactTorqueGivesTheLoadBack) {
  const Trial run;
  const LoadFit fit = fitted(run);
  for (std::size_t k = 0; k < kLoadTerms; ++k)
    EXPECT_NEAR(fit.terms[k].value, kTruth[k], 1e-10) << nameOf(static_cast<LoadTerm>(k));
  EXPECT_LT(fit.residualRms, 1e-10);
  EXPECT_NEAR(fit.rSquared, 1, 1e-12);
  EXPECT_GT(fit.restRows, 0u);
  EXPECT_EQ(fit.rows + fit.restRows, run.torque.size());
  ASSERT_EQ(fit.torque.size(), run.torque.size());
  EXPECT_THAT(notesOf(fit), testing::IsEmpty());
}

/// Share of the values within one and beyond three standard uncertainties over many runs.
struct Coverage {
  double withinOne = 0, beyondThree = 0;

  /// Noise of standard deviation `sigma` that keeps `memory` of itself from row to row.
  Coverage(double sigma, double memory) {
    std::mt19937 random(17);
    std::normal_distribution<double> noise(0, sigma * std::sqrt(1 - memory * memory));
    constexpr int kRuns = 200;
    for (int run = 0; run < kRuns; ++run) {
      Trial data;
      double state = 0;
      for (double& t : data.torque) t += state = memory * state + noise(random);
      const LoadFit fit = fitted(data);
      for (std::size_t k = 0; k < kLoadTerms; ++k) {
        const double off = std::abs(fit.terms[k].value - kTruth[k]) / fit.terms[k].uncertainty;
        withinOne += (off < 1) / (kRuns * 6.0);
        beyondThree += (off > 3) / (kRuns * 6.0);
      }
    }
  }
};

// Normal noise: 68.3 % of the values within one standard uncertainty, 0.27 % beyond three. Of 1200
// values (200 independent runs) the share within one scatters by some 0.02.
TEST(LoadFit, UncertaintiesAreHonestUnderWhiteNoise) {
  const Coverage coverage(0.8, 0);
  EXPECT_NEAR(coverage.withinOne, 0.683, 0.06);
  EXPECT_LT(coverage.beyondThree, 0.012);
}

// Noise that follows itself by 0.9 from row to row; without the correction the uncertainties would
// be too small by the root of 19.
TEST(LoadFit, UncertaintiesAreHonestUnderNoiseThatLasts) {
  const Coverage coverage(0.8, 0.9);
  EXPECT_NEAR(coverage.withinOne, 0.683, 0.08);
  EXPECT_LT(coverage.beyondThree, 0.015);
}

TEST(LoadFit, ResidualsAreDescribed) {
  std::mt19937 random(2);
  std::normal_distribution<double> noise(0, 0.5);
  Trial run(1, 20000);
  double state = 0;
  for (double& t : run.torque) t += state = 0.6 * state + 0.8 * noise(random);
  const LoadFit fit = fitted(run);
  EXPECT_NEAR(fit.residualRms, 0.5, 0.02);
  EXPECT_NEAR(fit.autocorrelation, 0.6, 0.03);
  EXPECT_NEAR(fit.effectiveRows, static_cast<double>(fit.rows) / 4, 0.02 * 20000);
  EXPECT_GT(fit.residualPeak, 1.2);
}

TEST(LoadFit, ASmallMoveCannotTellGravityFromTheOffset) {
  std::mt19937 random(3);
  std::normal_distribution<double> noise(0, 0.1);
  Trial run(1.5 * kPi / 180 / 1.3);
  for (double& t : run.torque) t += noise(random);
  const LoadFit fit = fitted(run);
  EXPECT_THAT(notesOf(fit), Contains(HasSubstr("the joint moved only")));
  EXPECT_GT(fit.condition, 1000);
  EXPECT_GT(fit[LoadTerm::Offset].uncertainty, 1);
}

TEST(LoadFit, OneDirectionLeavesTheOffsetOut) {
  Trial run(1, 4000);
  for (double& v : run.speed) v = std::abs(v) + 0.1;
  const LoadFit fit = fitted(run);
  EXPECT_FALSE(fit.has(LoadTerm::Offset));
  EXPECT_TRUE(std::isnan(fit[LoadTerm::Offset].value));
  EXPECT_THAT(notesOf(fit), Contains(HasSubstr("left out: constant torque")));
}

TEST(LoadFit, ChosenTermsOnly) {
  LoadFitOptions options;
  options.terms = {true, false, false, false, false, true};
  const LoadFit fit = fitted(Trial(), options);
  EXPECT_TRUE(fit.has(LoadTerm::Inertia));
  EXPECT_FALSE(fit.has(LoadTerm::Coulomb));
  EXPECT_EQ(fit.restRows, 0u);
  EXPECT_LT(fit.rSquared, 0.999);
}

TEST(LoadFit, KnownSpringAndRotorAreTakenOff) {
  Trial run;
  for (std::size_t i = 0; i < run.torque.size(); ++i)
    run.torque[i] += 40 * (run.position[i] - 0.2) + 0.8 * run.acceleration[i];
  LoadFitOptions options;
  options.springStiffness = 40;
  options.springAngle = 0.2;
  options.reflectedInertia = 0.8;
  const LoadFit fit = fitted(run, options);
  for (std::size_t k = 0; k < kLoadTerms; ++k) EXPECT_NEAR(fit.terms[k].value, kTruth[k], 1e-9);
  EXPECT_NEAR(fit.torque[77], run.torque[77], 1e-9);
}

// The ideal spring, k a b sin(theta) (textbook result on static balancing, from memory), stands in
// for gravity: taken off as known, it leaves none to the fit.
TEST(LoadFit, KnownExtensionSpringIsTakenOff) {
  Trial run;
  constexpr double kRate = 900, kArm = 0.12, kPost = 0.25, kPhase = 0.7;
  for (std::size_t i = 0; i < run.torque.size(); ++i)
    run.torque[i] += kRate * kArm * kPost * std::sin(run.position[i] + kPhase);
  LoadFitOptions options;
  options.extension = {kRate, 0, 0, kArm, kPost, kPhase};
  const LoadFit fit = fitted(run, options);
  for (std::size_t k = 0; k < kLoadTerms; ++k) EXPECT_NEAR(fit.terms[k].value, kTruth[k], 1e-9);
  EXPECT_GT(std::abs(fitted(run)[LoadTerm::GravitySin].value - kTruth[2]), 1);
}

TEST(LoadFit, RowsWithoutTorqueDoNotCount) {
  Trial run;
  for (std::size_t i = 0; i < run.torque.size(); i += 3) run.torque[i] = NAN;
  const LoadFit fit = fitted(run);
  EXPECT_NEAR(fit[LoadTerm::Inertia].value, kTruth[0], 1e-9);
  EXPECT_FALSE(std::isnan(fit.torque[0]));
}

TEST(LoadFit, ATurnedTorqueIsNoticed) {
  Trial run;
  for (double& t : run.torque) t = -t;
  EXPECT_THAT(notesOf(fitted(run)), Contains(HasSubstr("the inertia comes out negative")));
}

TEST(LoadFit, JointTorqueFromCurrent) {
  EXPECT_THAT(jointTorque({2, -1}, 0.1, 50, 0.8), testing::ElementsAre(8, -4));
}

TEST(LoadFit, BadDataSaysWhat) {
  const auto whatOf = [](const Trial& run, const LoadFitOptions& options = {}) {
    const auto fit = fitLoad(run.data(), options);
    return fit ? std::string() : describe(fit.error());
  };
  Trial run;
  run.torque.pop_back();
  EXPECT_THAT(whatOf(run), HasSubstr("differ in length"));
  EXPECT_THAT(whatOf(Trial(1, 10)), HasSubstr("rows are too few"));
  EXPECT_THAT(whatOf(Trial(1, 0)), HasSubstr("0 rows are too few"));
  run = Trial();
  run.speed[7] = NAN;
  EXPECT_THAT(whatOf(run), HasSubstr("row 8"));
  run = Trial();
  run.torque[8] = std::numeric_limits<double>::infinity();
  EXPECT_THAT(whatOf(run), HasSubstr("row 9"));
  run = Trial();
  run.torque.assign(run.torque.size(), 3.0);
  EXPECT_THAT(whatOf(run), HasSubstr("torque does not change"));
  LoadFitOptions none;
  none.terms.fill(false);
  EXPECT_THAT(whatOf(Trial(), none), HasSubstr("no term"));
  run = Trial();
  for (auto* column : {&run.speed, &run.acceleration}) column->assign(run.torque.size(), 0.0);
  EXPECT_FALSE(whatOf(run).empty());
}

/// A load with payload, spring, balance and tilt.
Load richLoad() {
  Load load;
  load.inertia = 1.2;
  load.linkMass = 6, load.linkDistance = 0.3, load.linkAngle = 0.25;
  load.payloadMass = 2, load.payloadDistance = 0.7, load.payloadAngle = -0.1;
  load.payloadInertia = 0.02;
  load.axisTilt = 0.5;
  load.coulombFriction = 1.1, load.viscousFriction = 0.6;
  load.springStiffness = 8, load.springAngle = 0.4, load.balanceTorque = 3;
  load.externalTorque = -1.5;
  return load;
}

/// The torque that the product's own model gives for a load.
Trial trialOf(const Load& load) {
  Trial trial;
  const auto n = static_cast<Eigen::Index>(trial.position.size());
  SampledCycle cycle;
  cycle.angle = Eigen::Map<const Eigen::ArrayXd>(trial.position.data(), n);
  cycle.speed = Eigen::Map<const Eigen::ArrayXd>(trial.speed.data(), n);
  cycle.acceleration = Eigen::Map<const Eigen::ArrayXd>(trial.acceleration.data(), n);
  cycle.segment = Eigen::ArrayXi::Zero(n);
  Cycle source;
  source.segments.resize(1);
  const LoadTorque torque = loadTorque(cycle, source, load);
  trial.torque.assign(torque.total.data(), torque.total.data() + n);
  return trial;
}

TEST(LoadEdits, TheFittedLoadIsTheOneThatMadeTheTorque) {
  const Load truth = richLoad();
  LoadFitOptions options;
  options.springStiffness = truth.springStiffness;
  options.springAngle = truth.springAngle;
  const LoadFit fit = fitted(trialOf(truth), options);
  for (const KeptInGravity kept : {KeptInGravity::Mass, KeptInGravity::Distance}) {
    Project project;
    Load& load = project.load = truth;
    load.inertia = 9, load.linkAngle = 0, load.coulombFriction = 0;
    load.viscousFriction = 0, load.externalTorque = 0;
    (kept == KeptInGravity::Mass ? load.linkDistance : load.linkMass) = 0.1;
    ASSERT_TRUE(applyLoadEdits(project, loadEdits(fit, load, kept)));
    EXPECT_NEAR(load.inertia, truth.inertia, 1e-9);
    EXPECT_NEAR(load.linkMass, truth.linkMass, 1e-8);
    EXPECT_NEAR(load.linkDistance, truth.linkDistance, 1e-9);
    EXPECT_NEAR(load.linkAngle, truth.linkAngle, 1e-9);
    EXPECT_NEAR(load.coulombFriction, truth.coulombFriction, 1e-9);
    EXPECT_NEAR(load.viscousFriction, truth.viscousFriction, 1e-9);
    EXPECT_NEAR(load.externalTorque, truth.externalTorque, 1e-8);
  }
}

const LoadEdit* editOf(const LoadEdits& edits, std::string_view path) {
  for (const LoadEdit& edit : edits.edits)
    if (edit.path == path) return &edit;
  return nullptr;
}

TEST(LoadEdits, WithoutMassAndDistanceThePointMassIsTaken) {
  Load load;
  const LoadEdits edits = loadEdits(fitted(Trial()), load);
  const double moment = std::hypot(kTruth[1], kTruth[2]) / load.gravity;
  ASSERT_TRUE(editOf(edits, "load.linkMass"));
  const double mass = editOf(edits, "load.linkMass")->after;
  const double distance = editOf(edits, "load.linkDistance")->after;
  EXPECT_NEAR(mass * distance, moment, 1e-9);
  EXPECT_NEAR(mass * distance * distance, kTruth[0], 1e-9);
  EXPECT_EQ(edits.notes.size(), 1u);
}

TEST(LoadEdits, TermsThatWereNotFittedChangeNothing) {
  LoadFitOptions options;
  options.terms = {true, false, false, false, true, false};
  const LoadEdits edits = loadEdits(fitted(Trial(), options), Load{});
  EXPECT_EQ(edits.edits.size(), 2u);
}

// Parallel-axis theorem: J about the axis is at least m r².
TEST(LoadEdits, AMassThatDoesNotFitTheInertiaIsNoted) {
  Load load;
  load.linkMass = 0.5;  // r = 3.9 m, m r² = 7.5 kg·m² > 2.5
  const LoadEdits edits = loadEdits(fitted(Trial()), load);
  ASSERT_EQ(edits.notes.size(), 1u);
  EXPECT_THAT(edits.notes[0].what, HasSubstr("less than mass times squared distance"));
}

TEST(LoadEdits, AVerticalAxisHasNoGravity) {
  Load load;
  load.axisTilt = kPi / 2;
  const LoadEdits edits = loadEdits(fitted(Trial()), load);
  EXPECT_FALSE(editOf(edits, "load.linkDistance"));
  EXPECT_THAT(edits.notes.at(0).what, HasSubstr("vertical"));
}

TEST(LoadEdits, APayloadLargerThanTheFitIsNoted) {
  Load load;
  load.payloadMass = 10, load.payloadDistance = 1;
  const LoadEdits edits = loadEdits(fitted(Trial()), load);
  EXPECT_FALSE(editOf(edits, "load.inertia"));
  EXPECT_THAT(edits.notes.at(0).what, HasSubstr("leaves none for the link"));
}

}  // namespace
}  // namespace jw

// What figures show beside the evaluation: bounds, balances and monotony.
#include <cmath>

#include <gtest/gtest.h>

#include "core/studies/plot_studies.h"
#include "tests/core/checks/example_project.h"

namespace jw {
namespace {

Project exampleWithBand() {
  Project project = exampleProject(400);
  project.active().supply.voltageMin = 42;
  project.active().supply.voltageMax = 54;
  project.requirements.onTime = 120;
  return project;
}

/// The example with and without a weakened field.
class Studies : public ::testing::TestWithParam<bool> {
 protected:
  void SetUp() override {
    project.active().controller.fieldWeakening = GetParam();
    evaluation = evaluate(project);
    studies = plotStudies(project, evaluation);
  }

  Project project = exampleWithBand();
  Evaluation evaluation;
  PlotStudies studies;
};

TEST_P(Studies, BandHoldsTheNominalEnvelope) {
  ASSERT_TRUE(studies.band);
  const EnvelopeCurve& inner = studies.band->inner;
  const EnvelopeCurve& outer = studies.band->outer;
  const EnvelopeLimits& limits = evaluation.envelope->limits;
  const Eigen::Index n = (outer.speed.size() - 1) / 2;
  for (Eigen::Index i = 0; i < n; ++i) {
    EXPECT_LE(inner.torque[i], outer.torque[i]);
    const double speed = outer.speed[i];
    if (std::abs(speed) > limits.speed) continue;
    const double nominal = std::max(0.0, limits.highestTorque(speed));
    EXPECT_GE(outer.torque[i], nominal - 1e-9) << speed;
    EXPECT_LE(inner.torque[i], nominal + 1e-9) << speed;
  }
  EXPECT_GE(outer.speed.maxCoeff(), limits.speed);
}

TEST_P(Studies, LossMapBalances) {
  ASSERT_TRUE(studies.losses);
  const LossMap& map = *studies.losses;
  const EnvelopeLimits& limits = evaluation.envelope->limits;
  const MotorConstants& m = limits.machine;
  int inside = 0;
  for (Eigen::Index r = 0; r < map.torque.size(); ++r) {
    for (Eigen::Index c = 0; c < map.speed.size(); ++c) {
      const double loss = map.loss(r, c);
      const double efficiency = map.efficiency(r, c);
      const double shaft = map.torque[r] * map.speed[c];
      EXPECT_EQ(std::isnan(loss), !(map.torque[r] <= limits.highestTorque(map.speed[c]) &&
                                    map.torque[r] >= limits.lowestTorque(map.speed[c])));
      if (std::isnan(loss)) continue;
      ++inside;
      EXPECT_GE(loss, 3 - 1e-12);  // the controller's idle power at least
      // At the terminals: air-gap power and copper; the controller takes its own besides.
      const DqCurrent i = limits.operatingPoint(map.speed[c], map.torque[r]);
      const double rms = i.amplitude() / std::sqrt(2.0);
      const double supply = m.torque(i) * map.speed[c] + 3 * m.resistance * rms * rms + 3 +
                            0.5 * rms + 0.02 * rms * rms;
      EXPECT_NEAR(supply, shaft + loss, 1e-9 * (1 + std::abs(supply)));
      if (shaft == 0) {
        EXPECT_TRUE(std::isnan(efficiency));
        continue;
      }
      EXPECT_GE(efficiency, 0);
      EXPECT_LT(efficiency, 1);
      // Driving, shaft over supply; braking, what comes back over what the shaft gives.
      const double expected = shaft > 0 ? shaft / supply : std::max(0.0, supply / shaft);
      EXPECT_NEAR(efficiency, expected, 1e-9);
    }
  }
  EXPECT_GT(inside, 1500);
}

TEST_P(Studies, IntermittentLiesBetweenLastingAndPeak) {
  ASSERT_TRUE(studies.intermittent);
  const EnvelopeCurve& curve = *studies.intermittent;
  const EnvelopeCurve& peak = evaluation.envelope->peak;
  const Eigen::Index n = (curve.speed.size() - 1) / 2;
  const ContinuousLimit& limit = *evaluation.envelope->continuous;
  for (Eigen::Index i = 0; i < n; ++i) {
    const double speed = curve.speed[i];
    EXPECT_LE(curve.torque[i], peak.torque[i] + 1e-12);
    const double lasting =
        limit.machine.torquePerAmp * limit.current(speed) - limit.machine.drag(speed);
    EXPECT_GE(curve.torque[i], std::min(lasting, peak.torque[i]) - 1e-3) << speed;
  }
}

TEST_P(Studies, LongerOverloadMeansLessTorque) {
  ASSERT_TRUE(studies.heat);
  const auto& points = studies.heat->overload;
  ASSERT_GT(points.size(), 10u);
  for (std::size_t k = 0; k < points.size(); ++k) {
    EXPECT_LE(points[k].fromWarm, points[k].fromCold);
    EXPECT_GT(points[k].multiple, 1);
    if (k == 0) continue;
    EXPECT_GT(points[k].multiple, points[k - 1].multiple);
    EXPECT_LT(points[k].fromCold, points[k - 1].fromCold);
  }
}

TEST_P(Studies, LongerDutyMeansLessTorque) {
  const auto& points = studies.heat->duty;
  for (std::size_t k = 1; k < points.size(); ++k) {
    EXPECT_LT(points[k].standing, points[k - 1].standing);
    EXPECT_LT(points[k].running, points[k - 1].running);
  }
  EXPECT_NEAR(points.back().standing, 1, 1e-9);
  const auto& shortTime = studies.heat->shortTime;
  for (std::size_t k = 1; k < shortTime.size(); ++k) {
    EXPECT_LE(shortTime[k].second, shortTime[k - 1].second);
    EXPECT_GE(shortTime[k].second, 1);
  }
}

TEST_P(Studies, ContinuousTorqueAndThePlaceOfTheCycle) {
  const HeatCharts& charts = *studies.heat;
  const ContinuousLimit& limit = *evaluation.envelope->continuous;
  // P_Cu (R_12 + R_2) = 155 - 40 K with 0.9 and 1.8 K/W.
  EXPECT_NEAR(limit.machine.copperLoss(limit.current(0)) * 2.7, 155 - limit.ambient, 1e-9);
  EXPECT_NEAR(charts.continuousTorque, limit.machine.torquePerAmp * limit.current(0), 1e-12);
  EXPECT_GT(charts.cycleDuty, 0);
  EXPECT_LE(charts.cycleDuty, 1);
  // rms over the loaded share, spread over the whole cycle, is the rms of the cycle but for the
  // idle.
  EXPECT_NEAR(charts.cycleMultiple * charts.continuousTorque * std::sqrt(charts.cycleDuty),
              evaluation.demand->torqueRms, 0.02 * evaluation.demand->torqueRms);
  EXPECT_TRUE(std::isinf(charts.warmUp.timeToLimit));
  const Eigen::Index last = charts.warmUp.time.size() - 1;
  EXPECT_NEAR(charts.warmUp.windingHigh[last], evaluation.heat->periodic.windingPeak,
              0.01 * (evaluation.heat->periodic.windingPeak - 25));
}

INSTANTIATE_TEST_SUITE_P(Weakening, Studies, ::testing::Bool());

TEST(PlotStudies, EmptyWhereInputsAreMissing) {
  Project project = exampleWithBand();
  project.active().motor.thermalResistanceHousing = kUnset;
  PlotStudies studies = plotStudies(project, evaluate(project));
  EXPECT_TRUE(studies.band && studies.losses);
  EXPECT_FALSE(studies.heat || studies.intermittent);
  project.active().supply.voltage = kUnset;
  studies = plotStudies(project, evaluate(project));
  EXPECT_FALSE(studies.band || studies.losses || studies.heat || studies.intermittent);
}

TEST(PlotStudies, RunawayIsNoCrash) {
  Project project = exampleWithBand();
  project.active().motor.thermalResistanceHousing = 300;
  const Evaluation evaluation = evaluate(project);
  ASSERT_TRUE(evaluation.heat->periodic.runaway);
  const PlotStudies studies = plotStudies(project, evaluation);
  ASSERT_TRUE(studies.heat);
  EXPECT_TRUE(std::isfinite(studies.heat->warmUp.timeToLimit));
}

TEST(PlotStudies, StopsWhenAsked) {
  const Project project = exampleWithBand();
  const Evaluation evaluation = evaluate(project);
  std::stop_source stop;
  stop.request_stop();
  EXPECT_FALSE(plotStudies(project, evaluation, stop.get_token()).heat);
}

}  // namespace
}  // namespace jw

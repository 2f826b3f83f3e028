// Thermal values recovered from made-up heating curves of known networks.
#include <array>
#include <cmath>
#include <limits>
#include <random>

#include <gtest/gtest.h>

#include "core/physics/winding_heat.h"
#include "core/studies/heat_fit.h"

namespace jw {
namespace {

using Eigen::ArrayXd;
using Eigen::Index;
using Eigen::Vector2d;

const HeatNetwork kTruth{60, 700, 0.9, 1.8, 0, 22};

/// Two hours: 40 W for the first, 10 W afterwards; one row a minute. Stepped in closed form.
HeatCurve curveOf(const HeatNetwork& network, bool withHousing, Index rows = 121) {
  HeatCurve curve;
  curve.ambient = network.ambient;
  curve.time = 60 * ArrayXd::LinSpaced(rows, 0, static_cast<double>(rows - 1));
  curve.power = (curve.time < 3600).select(ArrayXd::Constant(rows, 40.0), 10.0);
  curve.winding.resize(rows);
  curve.housing.resize(withHousing ? rows : 0);
  Vector2d at = Vector2d::Constant(network.ambient);
  for (Index i = 0; i < rows; ++i) {
    curve.winding[i] = at[0];
    if (withHousing) curve.housing[i] = at[1];
    at = heatStep(network, curve.power[i], 0, 60)(at);
  }
  return curve;
}

std::array<FittedValue, 4> valuesOf(const HeatFit& fit) {
  return {fit.windingToHousing, fit.housingToAmbient, fit.windingCapacity, fit.housingCapacity};
}

std::array<double, 4> valuesOf(const HeatNetwork& n) {
  return {n.windingToHousing, n.housingToAmbient, n.windingCapacity, n.housingCapacity};
}

TEST(HeatFit, ExactCurveIsRecovered) {
  for (const bool withHousing : {false, true}) {
    const auto fit = fitHeat(curveOf(kTruth, withHousing));
    ASSERT_TRUE(fit.has_value()) << describe(fit.error());
    for (std::size_t k = 0; k < 4; ++k) {
      const double truth = valuesOf(kTruth)[k];
      EXPECT_NEAR(valuesOf(*fit)[k].value, truth, 1e-6 * truth) << k;
    }
    EXPECT_LT(fit->residualRms, 1e-5);
    EXPECT_EQ(fit->winding.size(), 121);
  }
}

// Normal noise of 0.2 K: off by more than three standard uncertainties once in 370 values, so at
// most a few of 160; the share inside one is 68 %.
TEST(HeatFit, UncertaintiesAreHonestUnderNoise) {
  std::mt19937 random(11);
  std::normal_distribution<double> noise(0, 0.2);
  int beyondThree = 0;
  int withinOne = 0;
  for (int run = 0; run < 40; ++run) {
    HeatCurve curve = curveOf(kTruth, true);
    for (Index i = 1; i < curve.time.size(); ++i) {  // the first row is the known start
      curve.winding[i] += noise(random);
      curve.housing[i] += noise(random);
    }
    const auto fit = fitHeat(curve);
    ASSERT_TRUE(fit.has_value()) << describe(fit.error());
    EXPECT_NEAR(fit->residualRms, 0.2, 0.05);
    for (std::size_t k = 0; k < 4; ++k) {
      const FittedValue value = valuesOf(*fit)[k];
      const double off = std::abs(value.value - valuesOf(kTruth)[k]) / value.uncertainty;
      beyondThree += off > 3;
      withinOne += off < 1;
    }
  }
  EXPECT_LE(beyondThree, 3);
  EXPECT_NEAR(withinOne / 160.0, 0.68, 0.12);
}

// One curve of a fixed seed, its values within three standard uncertainties.
TEST(HeatFit, NoisyWindingAlone) {
  std::mt19937 random(5);
  std::normal_distribution<double> noise(0, 0.1);
  HeatCurve curve = curveOf(kTruth, false);
  for (Index i = 1; i < curve.time.size(); ++i) curve.winding[i] += noise(random);
  const auto fit = fitHeat(curve);
  ASSERT_TRUE(fit.has_value()) << describe(fit.error());
  for (std::size_t k = 0; k < 4; ++k) {
    const FittedValue value = valuesOf(*fit)[k];
    EXPECT_NEAR(value.value, valuesOf(kTruth)[k], 3 * value.uncertainty) << k;
    EXPECT_GT(value.uncertainty, 0);
  }
}

TEST(HeatFit, OtherSizesOfMotorToo) {
  const HeatNetwork small{2.5, 30, 6, 14, 0, 22};
  const HeatNetwork large{900, 9000, 0.08, 0.25, 0, 22};
  for (const HeatNetwork& truth : {small, large}) {
    const auto fit = fitHeat(curveOf(truth, true));
    ASSERT_TRUE(fit.has_value()) << describe(fit.error());
    for (std::size_t k = 0; k < 4; ++k) {
      EXPECT_NEAR(valuesOf(*fit)[k].value, valuesOf(truth)[k], 1e-4 * valuesOf(truth)[k]) << k;
    }
  }
}

std::string refusal(const HeatCurve& curve) {
  const auto fit = fitHeat(curve);
  return fit ? std::string() : describe(fit.error());
}

TEST(HeatFit, BadRowsAreRefusedByNumber) {
  HeatCurve curve = curveOf(kTruth, true);
  curve.winding[6] = std::numeric_limits<double>::quiet_NaN();
  EXPECT_NE(refusal(curve).find("row 7"), std::string::npos) << refusal(curve);
  curve = curveOf(kTruth, true);
  curve.housing[8] = std::numeric_limits<double>::infinity();
  EXPECT_NE(refusal(curve).find("row 9"), std::string::npos) << refusal(curve);
  curve = curveOf(kTruth, true);
  curve.time[10] = curve.time[9];
  EXPECT_NE(refusal(curve).find("row 11"), std::string::npos) << refusal(curve);
}

TEST(HeatFit, SaysWhatIsLacking) {
  EXPECT_NE(refusal(curveOf(kTruth, true, 5)).find("5 rows are too few"), std::string::npos);
  HeatCurve curve = curveOf(kTruth, false);
  curve.power = curve.power.head(50).eval();
  EXPECT_NE(refusal(curve).find("differ in length"), std::string::npos);
  curve = curveOf(kTruth, false);
  curve.winding.setConstant(22);
  EXPECT_NE(refusal(curve).find("hardly changes"), std::string::npos);
  curve = curveOf(kTruth, false);
  curve.ambient = std::numeric_limits<double>::quiet_NaN();
  EXPECT_NE(refusal(curve).find("ambient"), std::string::npos);
}

// A measurement cannot be colder than its ambient; with a wrong one the fit would be smooth and
// false.
TEST(HeatFit, AmbientAboveTheCurveIsRefused) {
  HeatCurve curve = curveOf(kTruth, false);
  curve.ambient += 10;
  EXPECT_NE(refusal(curve).find("below the ambient"), std::string::npos) << refusal(curve);
}

// Cooling without power shows products of resistance and capacity only.
TEST(HeatFit, CoolingAloneIsExplained) {
  HeatCurve curve = curveOf(kTruth, true);
  curve.power.setZero();
  Vector2d at{90, 70};
  for (Index i = 0; i < curve.time.size(); ++i) {
    curve.winding[i] = at[0];
    curve.housing[i] = at[1];
    at = heatStep(kTruth, 0, 0, 60)(at);
  }
  EXPECT_NE(refusal(curve).find("cooling alone"), std::string::npos) << refusal(curve);
}

// Six minutes of a motor that takes 20 to warm up, with noise: the housing cannot be told.
TEST(HeatFit, TooShortACurveIsRefused) {
  std::mt19937 random(2);
  std::normal_distribution<double> noise(0, 0.3);
  HeatCurve curve = curveOf(kTruth, false, 7);
  for (Index i = 1; i < curve.time.size(); ++i) curve.winding[i] += noise(random);
  EXPECT_NE(refusal(curve).find("cannot tell"), std::string::npos) << refusal(curve);
}

}  // namespace
}  // namespace jw

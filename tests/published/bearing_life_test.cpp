// Lives and mean loads of rolling bearings (ISO 281) against the same formulas as used for drives.
// FOSSEE = textbook companions of the FOSSEE project, where the books' examples were read
// second-hand.
#include <cmath>
#include <numbers>

#include <gtest/gtest.h>
#include <boost/math/quadrature/gauss.hpp>

#include "core/physics/drive_life.h"
#include "tests/core/physics/hand_cycle.h"

namespace jw {
namespace {

constexpr double kRpm = std::numbers::pi / 30;
constexpr double kHour = 3600;

/// Hours that a bearing of dynamic load rating C lasts: rated for a million turns at C.
double hours(double rating, double load, double rpm, double exponent) {
  const double ratedSpeed = 1000 * kRpm;
  const double ratedLife = 1e6 / (ratedSpeed / (2 * std::numbers::pi));
  return driveLife(ratedLife, rating, ratedSpeed, exponent, load, rpm * kRpm) / kHour;
}

// T. H. Wentzell, Machine Design, ex. 20.1 (FOSSEE): C = 5050 lb, P = 2400 lb, 1750 rpm, ball ->
// 88.73 h; ex. 20.2: 200 h at 2400 lb need C = 6621.4 lb.
TEST(PublishedLife, BallBearing) {
  EXPECT_NEAR(hours(5050, 2400, 1750, 3), 88.73, 5e-3);
  EXPECT_NEAR(hours(6621.4, 2400, 1750, 3), 200, 5e-3);
}

// U. C. Jindal, Machine Design, ex. 18-4 (FOSSEE): C = 41 kN, P = 20 kN, 720 rpm -> 199.42 h.
TEST(PublishedLife, BallBearingInNewtons) { EXPECT_NEAR(hours(41e3, 20e3, 720, 3), 199.42, 5e-3); }

// ISO 281 (read second-hand): roller bearings have p = 10/3. Own arithmetic: (41/20)^(10/3)
// = 10.9440 million turns, 253.33 h at 720 rpm.
TEST(PublishedLife, RollerBearing) {
  EXPECT_NEAR(hours(41e3, 20e3, 720, 10.0 / 3), std::pow(2.05, 10.0 / 3) * 1e6 / (720 * 60), 1e-9);
  EXPECT_NEAR(std::pow(2.05, 10.0 / 3), 10.9440, 5e-4);
}

// Jindal ex. 18-9 (FOSSEE): 3, 4, 5 kN at 1440, 1080, 720 rpm for 1/4, 1/2, 1/4 of the time and
// 10 000 h: mean speed 1080 rpm, mean load 3954.34 N, 648 million turns, C = 34 219 N.
TEST(PublishedLife, MeanOfThreeLoads) {
  const Eigen::Array3d rpm(1440, 1080, 720);
  const Eigen::Array3d share(0.5, 1, 0.5);  // of a cycle of 2 s
  const SampledCycle cycle = handCycle(rpm * kRpm, Eigen::Array3d::Zero(), share);
  const double load = averageTorque(cycle, Eigen::Array3d(3000, -4000, 5000), cycle.speed, 3);
  EXPECT_NEAR(averageSpeed(cycle, cycle.speed) / kRpm, 1080, 1e-9);
  EXPECT_NEAR(load, 3954.34, 5e-3);
  EXPECT_NEAR(hours(34219, load, 1080, 3), 10000, 1);
}

// Speed-weighted cubic mean of |40 s - 10| at speed |3 s - 0.5|, s from 0 to 1: adaptive quadrature
// with Boost across the kinks gave 21.253223942; exact rational arithmetic 21.253223944586. Samples
// at the Gauss points between the kinks at 1/6 and 1/4, where the integrands are polynomials of
// degree 4.
TEST(PublishedLife, CubicMeanWeightedWithSpeed) {
  using Rule = boost::math::quadrature::gauss<double, 7>;
  std::vector<double> place, weight;
  const double kinks[] = {0, 1.0 / 6, 0.25, 1};
  for (int k = 0; k < 3; ++k) {
    const double middle = (kinks[k] + kinks[k + 1]) / 2;
    const double half = (kinks[k + 1] - kinks[k]) / 2;
    for (std::size_t j = 0; j < Rule::abscissa().size(); ++j) {
      for (const double sign : {-1.0, 1.0}) {
        if (Rule::abscissa()[j] == 0 && sign > 0) continue;
        place.push_back(middle + sign * half * Rule::abscissa()[j]);
        weight.push_back(half * Rule::weights()[j]);
      }
    }
  }
  const auto count = static_cast<Eigen::Index>(place.size());
  const Eigen::Map<Eigen::ArrayXd> s(place.data(), count);
  const Eigen::Map<Eigen::ArrayXd> w(weight.data(), count);
  const SampledCycle cycle = handCycle(3 * s - 0.5, Eigen::ArrayXd::Zero(count), w);
  EXPECT_NEAR(cycle.period, 1, 1e-14);
  EXPECT_NEAR(averageTorque(cycle, 40 * s - 10, cycle.speed, 3), 21.253223944586, 5e-12);
}

}  // namespace
}  // namespace jw

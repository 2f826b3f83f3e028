// Heat against published networks and general-purpose solvers.
#include <cmath>

#include <gtest/gtest.h>
#include <boost/numeric/odeint.hpp>

#include "core/physics/winding_heat.h"
#include "core/studies/heat_charts.h"

namespace jw {
namespace {

using Eigen::ArrayXd;
using Eigen::Vector2d;

ArrayXd list(std::initializer_list<double> values) {
  ArrayXd all(static_cast<Eigen::Index>(values.size()));
  std::copy(values.begin(), values.end(), all.begin());
  return all;
}

/// A two-node network under a ten-second cycle of 12, 4, 9 and 0 A through 0.80 ohm.
HeatLoad fourStepLoad() {
  return {0.8 * list({144, 16, 81, 0}), ArrayXd::Zero(4), list({1.5, 3, 1, 4.5})};
}

HeatNetwork smallNetwork(double copperCoefficient) {
  return {25, 420, 1.2, 2.5, copperCoefficient, 40};
}

// Periodic states solved with SciPy 1.10 (expm and a linear solve), confirmed with SUNDIALS CVODE
// and, as an electrical analogue, with ngspice 39: computed second opinions, six decimals.
TEST(PublishedHeat, PeriodicStateAgreesWithScipyAtConstantResistance) {
  const PeriodicHeat heat = periodicHeat(smallNetwork(0), fourStepLoad());
  ASSERT_FALSE(heat.runaway);
  EXPECT_NEAR(heat.winding[0], 138.949243, 1e-6);
  EXPECT_NEAR(heat.housing[0], 108.995585, 1e-6);
  EXPECT_NEAR(heat.winding[1], 144.230330, 1e-6);
  EXPECT_NEAR(heat.winding[2], 142.339278, 1e-6);
  EXPECT_NEAR(heat.winding[3], 143.795616, 1e-6);
  EXPECT_NEAR(heat.windingMean, 142.120, 1e-6);
  EXPECT_NEAR(heat.housingMean, 109.000, 1e-6);
}

TEST(PublishedHeat, PeriodicStateAgreesWithCvodeWithCopperFeedback) {
  const PeriodicHeat heat = periodicHeat(smallNetwork(0.00393), fourStepLoad());
  EXPECT_NEAR(heat.start[0], 218.351112, 1e-6);
  EXPECT_NEAR(heat.start[1], 164.353233, 1e-6);
  EXPECT_NEAR(heat.windingPeak, 227.842291, 1e-6);
}

/// Modelica Standard Library, Thermal.HeatTransfer.Examples.Motor: inputs read there, temperatures
/// by an ODE solver to 1e-10 (own). Its feedback 1 + 0.00303 (T - 95) is ours with another origin:
/// P95 (1 + a (T - 95)) = P20 (1 + b (T - 20)), P20 = P95 (1 - 75 a), b = a / (1 - 75 a).
struct ModelicaMotor {
  static constexpr double kAt95 = 0.00303;
  static constexpr double kScale = 1 - 75 * kAt95;
  HeatNetwork network{2500, 25000, 1 / 10.0, 1 / 25.0, kAt95 / kScale, 20};
  HeatMap light = heatStep(network, 100 * kScale, 500, 360);
  HeatMap heavy = heatStep(network, 1000 * kScale, 500, 240);
};

TEST(PublishedHeat, ModelicaMotorExampleFromCold) {
  const ModelicaMotor motor;
  Vector2d at = Vector2d::Constant(20);
  at = motor.light(at);
  EXPECT_NEAR(at[0], 29.082, 6e-4);
  EXPECT_NEAR(at[1], 26.246, 6e-4);
  at = motor.heavy(at);
  EXPECT_NEAR(at[0], 85.114, 6e-4);
  EXPECT_NEAR(at[1], 31.907, 6e-4);
  at = motor.light(at);
  EXPECT_NEAR(at[0], 54.629, 6e-4);
  at = motor.heavy(at);
  EXPECT_NEAR(at[0], 105.779, 6e-4);
  for (int cycle = 2; cycle < 11; ++cycle) at = motor.heavy(motor.light(at));
  at = motor.light(at);
  EXPECT_NEAR(at[0], 84.805, 6e-4);
  EXPECT_NEAR(at[1], 58.637, 6e-4);
  at = motor.heavy(at);
  EXPECT_NEAR(at[0], 134.329, 6e-4);
  EXPECT_NEAR(at[1], 59.320, 6e-4);
}

TEST(PublishedHeat, ModelicaMotorExampleAtRest) {
  const ModelicaMotor motor;
  const Vector2d light = steadyHeat(motor.network, 100 * motor.kScale, 500);
  EXPECT_NEAR(light[0], 52.184, 6e-4);
  EXPECT_NEAR(light[1], 43.481, 6e-4);
  const Vector2d heavy = steadyHeat(motor.network, 1000 * motor.kScale, 500);
  EXPECT_NEAR(heavy[0], 242.621, 6e-4);
  EXPECT_NEAR(heavy[1], 97.892, 6e-4);
  HeatNetwork plain = motor.network;
  plain.copperCoefficient = 0;
  EXPECT_NEAR(steadyHeat(plain, 1000, 500)[0], 180, 1e-9);
  EXPECT_NEAR(steadyHeat(plain, 1000, 500)[1], 80, 1e-9);
}

// Modelica Standard Library, two heat capacities of 15 J/K joined by 10 W/K, 100 K apart:
// T1(0.5 s) = 348.8204 K starting from 373.15 and 273.15 K, as simulated there; in closed form it is
// 323.15 + 50 exp(-2/3) = 348.82086. The path to the ambient is shut here.
TEST(PublishedHeat, TwoMassesEqualize) {
  const HeatNetwork network{15, 15, 0.1, 1e12, 0, 0};
  const Vector2d at = heatStep(network, 0, 0, 0.5)(Vector2d{373.15 - 273.15, 0});
  EXPECT_NEAR(at[0] + 273.15, 348.8204, 1e-3);
  EXPECT_NEAR(at[0], 50 + 50 * std::exp(-2.0 / 3), 1e-8);
}

/// The same network integrated by Boost.odeint for hours, with a random cycle of many steps.
TEST(PublishedHeat, AffineSolveAgreesWithOdeintOverHours) {
  const HeatNetwork network{40, 500, 1.0, 1.6, 0.00393, 25};
  const HeatLoad load{list({40, 5, 0, 70, 12}), list({3, 1, 0, 6, 2}), list({2, 3, 4, 0.7, 5})};
  using State = std::array<double, 2>;
  State at{25, 25};
  const auto stepper = boost::numeric::odeint::make_controlled(
      1e-11, 1e-11, boost::numeric::odeint::runge_kutta_dopri5<State>());
  for (int cycle = 0; cycle < 1500; ++cycle) {  // 6 hours, 28 slow time constants
    for (Eigen::Index i = 0; i < 5; ++i) {
      const auto rate = [&](const State& x, State& out, double) {
        const double between = (x[0] - x[1]) / network.windingToHousing;
        const double copper = load.copper20[i] * (1 + network.copperCoefficient * (x[0] - 20));
        out[0] = (copper - between) / network.windingCapacity;
        out[1] = (load.housing[i] + between - (x[1] - network.ambient) / network.housingToAmbient) /
                 network.housingCapacity;
      };
      boost::numeric::odeint::integrate_adaptive(stepper, rate, at, 0.0, load.duration[i], 0.05);
    }
  }
  const PeriodicHeat heat = periodicHeat(network, load);
  EXPECT_NEAR(heat.start[0], at[0], 1e-6);
  EXPECT_NEAR(heat.start[1], at[1], 1e-6);
}

/// One node: the housing joined so well to the winding that both are one body of one time constant.
HeatNetwork oneNode(double timeConstant) {
  return {timeConstant / 2, timeConstant / 2, 1e-9, 1, 0, 0};
}

// B. R. Gupta and V. Singhal, Fundamentals of Electric Drives and Control, ex. 4.11 (p. 63), read
// second-hand: 25 kW, time constant 90 min, copper loss only: half an hour allows 46.96 kW.
TEST(PublishedHeat, ShortTimeRating) {
  EXPECT_NEAR(25 * allowedOnce(oneNode(90), 0, 100, 30), 46.96, 0.01);
}

// G. K. Dubey, Fundamentals of Electrical Drives, ex. 4.4 (p. 55), read second-hand: 20 kW, one
// burst of 10 min at a time constant of 60 min: 51.0 kW.
TEST(PublishedHeat, OneBurst) {
  EXPECT_NEAR(20 * allowedOnce(oneNode(60), 0, 100, 10), 51.0, 0.06);
}

// Equal time constants heating and cooling: own arithmetic of the textbook's intermittent formula,
// tau = 60, 10 on, 10 off: sqrt((1 - exp(-20/60)) / (1 - exp(-10/60))) = 1.358853.
TEST(PublishedHeat, IntermittentDuty) {
  EXPECT_NEAR(allowedAtDuty(oneNode(60), 0, 0, 100, 0.5, 20), 1.358853, 2e-6);
}

// Loss four times the lasting one, from cold: t = tau ln(4/3) (closed form).
TEST(PublishedHeat, TimeToLimitAtDoubleTorque) {
  const HeatNetwork network = oneNode(60);
  const double lasting = lastingCopper20(network, 0, 100);
  EXPECT_NEAR(timeToLimit(network, 4 * lasting, 0, Vector2d::Zero(), 100), 60 * std::log(4.0 / 3),
              1e-5);
}

}  // namespace
}  // namespace jw

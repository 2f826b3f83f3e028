// The three-phase machine in the rotor frame against published examples and brute force.
#include <cmath>
#include <numbers>
#include <random>

#include <gtest/gtest.h>

#include "core/physics/dq_machine.h"

namespace jw {
namespace {

constexpr double kSqrt2 = std::numbers::sqrt2;
constexpr double kElectrical = 2 * std::numbers::pi * 50;  // 50 Hz

// Modelica Standard Library, Electrical.Machines, SMPM example (inputs read, results own
// arithmetic): p = 2, 50 Hz, X_d = 0.2, X_q = 0.4 ohm, EMF 112.3 V rms, 100 A rms.
DqMachine salientExample() {
  return {2, 112.3 * kSqrt2 / kElectrical, 0.0, 0.2 / kElectrical, 0.4 / kElectrical};
}

TEST(PublishedMachine, MostTorquePerAmpereOfASalientMachine) {
  const DqMachine machine = salientExample();
  EXPECT_NEAR(machine.fluxLinkage, 0.505528, 1e-6);
  const DqCurrent i = machine.mostTorquePerAmp(100 * kSqrt2);
  EXPECT_NEAR(i.d, -23.764, 5e-4);
  EXPECT_NEAR(i.q, 139.410, 5e-4);
  EXPECT_NEAR(machine.torque(i), 217.755, 5e-4);
  EXPECT_NEAR(machine.torque({0, 100 * kSqrt2}), 214.477, 5e-4);
  EXPECT_NEAR(std::atan2(-i.d, i.q) * 180 / std::numbers::pi, 9.674, 5e-4);
}

// The same library's machine table (read): 100 V and 100 A rms, R = 0.03, X = 0.4 ohm, 181.4 N·m at
// 1500 rpm; currents recomputed: -53.32 and 84.60 A rms.
TEST(PublishedMachine, OperatingPointWeakensTheFieldAsThePublishedMachineDoes) {
  const DqMachine machine{2, 112.3 * kSqrt2 / kElectrical, 0.03, 0.4 / kElectrical,
                          0.4 / kElectrical};
  const double speed = kElectrical / 2;
  const auto i = machine.operatingPoint(speed, 181.44, 100 * kSqrt2);
  ASSERT_TRUE(i);
  EXPECT_NEAR(i->d / kSqrt2, -53.32, 0.02);
  EXPECT_NEAR(i->q / kSqrt2, 84.60, 0.02);
  EXPECT_NEAR(machine.voltage(*i, speed), 100 * kSqrt2, 1e-6);
}

/// Brute force: the largest torque over a fine grid of currents inside both limits.
double bruteTorque(const DqMachine& m, double speed, double voltage, double current) {
  double best = -1e300;
  for (int a = 0; a < 720; ++a) {
    for (int r = 0; r <= 240; ++r) {
      const double size = current * r / 240.0;
      const double angle = a * std::numbers::pi / 360;
      const DqCurrent i{size * std::cos(angle), size * std::sin(angle)};
      if (m.voltage(i, speed) <= voltage) best = std::max(best, m.torque(i));
    }
  }
  return best;
}

class StrongestPoint : public ::testing::TestWithParam<double> {};

TEST_P(StrongestPoint, IsNoWorseThanBruteForceAndKeepsBothLimits) {
  const double saliency = GetParam();
  const DqMachine m{4, 0.05, 0.08, 0.0006, 0.0006 * saliency};
  for (const double speed : {0.0, 60.0, 150.0, 250.0, 400.0, 900.0, -80.0, -300.0, -900.0}) {
    const auto i = m.strongest(speed, 60, 90);
    ASSERT_TRUE(i) << speed;
    EXPECT_LE(i->amplitude(), 90 * (1 + 1e-9)) << speed;
    EXPECT_LE(m.voltage(*i, speed), 60 * (1 + 1e-9)) << speed;
    const double brute = bruteTorque(m, speed, 60, 90);
    EXPECT_GE(m.torque(*i), brute * (1 - 1e-9)) << speed;
    EXPECT_LE(m.torque(*i), brute + 0.03 * std::abs(brute) + 0.05) << speed;
  }
}

INSTANTIATE_TEST_SUITE_P(Saliencies, StrongestPoint, ::testing::Values(1.0, 1.000001, 1.8, 3.0));

TEST(Machine, ClosedFormAndSolverAgreeWhereSaliencyVanishes) {
  const DqMachine equal{4, 0.05, 0.08, 0.0006, 0.0006};
  const DqMachine nearly{4, 0.05, 0.08, 0.0006, 0.0006 * (1 + 1e-9)};
  for (double speed = -1200; speed <= 1200; speed += 37) {
    EXPECT_NEAR(equal.torque(*equal.strongest(speed, 60, 90)),
                nearly.torque(*nearly.strongest(speed, 60, 90)), 1e-5)
        << speed;
  }
}

TEST(Machine, NoLimitToSpeedWhenTheCurrentCanCancelTheMagnet) {
  DqMachine m{4, 0.03, 0.0, 0.0006, 0.0006};
  EXPECT_DOUBLE_EQ(m.characteristicCurrent(), 50);
  const auto fast = m.strongest(1e5, 60, 51);
  ASSERT_TRUE(fast);
  EXPECT_GT(m.torque(*fast), 0);
  EXPECT_FALSE(m.strongest(1e5, 60, 49));  // too little to cancel it
}

TEST(Machine, LeastCurrentInvertsMostTorque) {
  const DqMachine m = salientExample();
  for (const double amplitude : {1e-6, 1.0, 40.0, 300.0}) {
    const DqCurrent i = m.mostTorquePerAmp(amplitude);
    const DqCurrent back = m.leastCurrent(m.torque(i));
    EXPECT_NEAR(back.amplitude(), amplitude, 1e-9 * amplitude);
    EXPECT_NEAR(m.leastCurrent(-m.torque(i)).q, -i.q, 1e-9 * amplitude);
  }
}

TEST(Machine, OperatingPointMakesTheTorqueAtTheVoltageWithTheLeastCurrent) {
  std::mt19937 random(7);
  std::uniform_real_distribution<double> unit(0, 1);
  int weakened = 0;
  for (int k = 0; k < 400; ++k) {
    const DqMachine m{3, 0.05, 0.02 + 0.1 * unit(random), 4e-4, 4e-4 * (1 + 2 * unit(random))};
    const double speed = 600 * (2 * unit(random) - 1);
    const double torque = 12 * (2 * unit(random) - 1);
    const auto i = m.operatingPoint(speed, torque, 50);
    if (!i) continue;
    EXPECT_NEAR(m.torque(*i), torque, 1e-9);
    EXPECT_LE(m.voltage(*i, speed), 50 * (1 + 1e-9));
    if (m.voltage(m.leastCurrent(torque), speed) <= 50) continue;
    ++weakened;
    EXPECT_NEAR(m.voltage(*i, speed), 50, 1e-6);
  }
  EXPECT_GT(weakened, 50);
}

}  // namespace
}  // namespace jw

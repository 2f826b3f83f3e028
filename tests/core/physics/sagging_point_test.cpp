// Operating points solved together with the bus voltage that they leave themselves.
#include <cmath>
#include <numbers>
#include <random>

#include <gtest/gtest.h>

#include "core/physics/controller_overload.h"
#include "core/physics/motor_demand.h"
#include "core/physics/torque_envelope.h"
#include "tests/core/physics/hand_cycle.h"

namespace jw {
namespace {

constexpr double kSqrt3 = std::numbers::sqrt3;

MotorConstants machineOf(double inductanceD, double inductanceQ, double resistance = 0.1) {
  return {.polePairs = 5,
          .torquePerAmp = 0.15,
          .emfPerSpeed = 0.1,
          .resistance = resistance,
          .inductance = inductanceD,
          .inductanceQ = inductanceQ};
}

Variant variantOf(double resistance, bool weakening = true) {
  Variant variant;
  variant.supply.voltage = 48;
  variant.supply.sourceResistance = resistance;
  variant.controller.fieldWeakening = weakening;
  variant.controller.idlePower = 5;
  variant.controller.lossPerAmpere = 0.5;
  variant.controller.lossResistance = 0.01;
  variant.controller.currentPeak = 60;
  variant.controller.currentMeasure = CurrentMeasure::Amplitude;
  return variant;
}

// By hand: one pole pair, 0.1 Wb, 0.5 ohm, 1 mH, 500 rad/s, i = (-20, 30) A: v_d = -10 - 15 V,
// v_q = 15 + 40 V, P = 1.5 (20 x 25 + 30 x 55) = 3225 W, 4.5 N·m. The bus behind 0.2 ohm that
// stands at sqrt(3) sqrt(625 + 3025) V under that power must give that point back.
TEST(SaggingPoint, ByHand) {
  MotorConstants machine = machineOf(1e-3, 1e-3, 0.5);
  machine.polePairs = 1;
  const double bus = kSqrt3 * std::sqrt(3650.0);
  Variant variant;
  variant.supply.sourceResistance = 0.2;
  variant.supply.voltage = bus + 0.2 * 3225 / bus;
  variant.controller.fieldWeakening = true;
  const EnvelopeLimits limits = envelopeLimits(variant, machine);
  const DqCurrent i = limits.operatingPoint(500, 4.5);
  EXPECT_NEAR(i.d, -20, 1e-8);
  EXPECT_NEAR(i.q, 30, 1e-8);
  EXPECT_NEAR(limits.busPower(i, 500), 3225, 1e-6);
  EXPECT_NEAR(limits.voltageUnder(i, 500), std::sqrt(3650.0), 1e-8);
  // On the stiff bus it would weaken less.
  variant.supply.sourceResistance = 0;
  EXPECT_GT(envelopeLimits(variant, machine).operatingPoint(500, 4.5).d, -19);
}

/// [V] amplitude left at these currents, from V = 48 - R P/V by its quadratic; 0 if there is none.
double leftByHand(const Variant& variant, const MotorConstants& m, const DqCurrent& i, double w) {
  const double amps = std::hypot(i.d, i.q);
  const double power = m.torque(i) * w + 1.5 * m.resistance * amps * amps +
                       controllerLoss(variant.controller, amps / std::numbers::sqrt2);
  const double square = 48.0 * 48 - 4 * variant.supply.sourceResistance * std::max(0.0, power);
  return square < 0 ? 0 : (48 + std::sqrt(square)) / 2 / kSqrt3;
}

struct Brute {
  bool exists = false;
  DqCurrent point;
};

/// Own brute force: i_d in steps of 0.01 A from 30 A down along the line of constant torque; of
/// those where both equations can hold, the least current.
Brute bruteForce(const Variant& variant, const MotorConstants& m, double speed, double torque) {
  Brute best;
  for (int k = 0; k <= 15000; ++k) {
    const double d = 30 - 0.01 * k;
    const double perAmp = m.torquePerAmp + 1.5 * m.polePairs * (m.inductance - m.inductanceQ) * d;
    const DqCurrent i{d, torque / perAmp};
    if (m.voltage(i, speed) > leftByHand(variant, m, i, speed)) continue;
    if (best.exists && i.amplitude() >= best.point.amplitude()) continue;
    best = {true, i};
  }
  return best;
}

class SaggingPoints : public ::testing::TestWithParam<std::pair<double, double>> {};

TEST_P(SaggingPoints, AgreeWithBruteForceOnBothEquations) {
  const MotorConstants machine = machineOf(GetParam().first, GetParam().second);
  std::mt19937 random(11);
  std::uniform_real_distribution<double> unit(0, 1);
  int weakened = 0;
  int refused = 0;
  for (int k = 0; k < 120; ++k) {
    const Variant variant = variantOf(0.3 * unit(random));
    const EnvelopeLimits limits = envelopeLimits(variant, machine);
    const double speed = 100 + 400 * unit(random);
    const double torque = 5 * (1.4 * unit(random) - 0.4);
    const Brute brute = bruteForce(variant, machine, speed, torque);
    const DqCurrent i = limits.operatingPoint(speed, torque);
    EXPECT_NEAR(machine.torque(i), torque, 1e-9);
    const double spare = leftByHand(variant, machine, i, speed) - machine.voltage(i, speed);
    if (!brute.exists) {
      ++refused;
      EXPECT_LT(spare, 1e-2) << speed << " " << torque;
      continue;
    }
    EXPECT_NEAR(i.amplitude(), brute.point.amplitude(), 0.05) << speed << " " << torque;
    EXPECT_GT(spare, -1e-8) << speed << " " << torque;
    if (std::abs(i.d - machine.dq().leastCurrent(torque).d) < 1e-6) continue;
    ++weakened;
    EXPECT_NEAR(spare, 0, 1e-7) << speed << " " << torque;
  }
  EXPECT_GT(weakened, GetParam().first == 0 ? 1 : 15);
  EXPECT_GT(refused, 5);
}

INSTANTIATE_TEST_SUITE_P(Inductances, SaggingPoints,
                         ::testing::Values(std::pair{0.4e-3, 0.4e-3}, std::pair{0.4e-3, 1e-3},
                                           std::pair{0.0, 0.6e-3}, std::pair{0.6e-3, 0.3e-3}));

// Most that 48 V behind 0.5 ohm give: 1152 W. More is outside the envelope, and the currents are
// then those of a bus without limit.
TEST(SaggingPoint, MoreThanTheSourceCanGive) {
  for (const bool weakening : {false, true}) {
    const MotorConstants machine = machineOf(0.1e-3, 0.1e-3, 0.02);
    const EnvelopeLimits limits = envelopeLimits(variantOf(0.5, weakening), machine);
    const double torque = 1300.0 / 150;
    EXPECT_FALSE(limits.contains(150, torque));
    EXPECT_NEAR(limits.operatingPoint(150, torque).q, torque / 0.15, 1e-9);
    EXPECT_EQ(limits.operatingPoint(150, torque).d, 0);
    int limited = 0;
    for (double speed = 10; speed < 0.95 * limits.speed; speed += 2) {
      const auto i = limits.strongest(speed);
      ASSERT_TRUE(i) << speed;
      const double power = limits.busPower(*i, speed);
      EXPECT_LE(power, 1152 * (1 + 1e-9)) << speed;
      limited += power > 1151;
      EXPECT_TRUE(limits.contains(speed, limits.highestTorque(speed) * (1 - 1e-6))) << speed;
    }
    EXPECT_GT(limited, 3);
  }
}

// Own brute force over a grid of currents inside both limits and the source's: nothing stronger.
TEST(SaggingPoint, NothingIsStrongerThanTheEdge) {
  for (const double saliency : {1.0, 2.5}) {
    for (const double resistance : {0.05, 0.15, 0.5}) {
      const MotorConstants m = machineOf(0.4e-3, 0.4e-3 * saliency);
      const Variant variant = variantOf(resistance);
      const EnvelopeLimits limits = envelopeLimits(variant, m);
      for (double speed = 20; speed < std::min(limits.speed, 700.0); speed += 60) {
        double best = 0;
        for (double d = -60; d <= 0; d += 0.25) {
          for (double q = 0; q * q + d * d <= 3600; q += 0.25) {
            const DqCurrent i{d, q};
            if (m.voltage(i, speed) > leftByHand(variant, m, i, speed)) continue;
            best = std::max(best, m.torque(i));
          }
        }
        EXPECT_GE(limits.highestTorque(speed), best * (1 - 1e-3))
            << saliency << " " << resistance << " " << speed;
        EXPECT_LE(limits.highestTorque(speed), best * 1.02 + 0.08)
            << saliency << " " << resistance << " " << speed;
      }
    }
  }
}

// A salient machine without inductance on the magnet's axis: its torque by reluctance needs less
// i_q, so i_d still saves voltage. Own brute force as above on a stiff bus.
TEST(SaggingPoint, WeakensWithoutInductanceOnTheMagnetsAxis) {
  const MotorConstants machine = machineOf(0, 0.8e-3);
  const Variant variant = variantOf(0);
  const EnvelopeLimits limits = envelopeLimits(variant, machine);
  int weakened = 0;
  for (double speed = 100; speed < 270; speed += 10) {
    for (double torque = 0.5; torque < 8; torque += 0.5) {
      const Brute brute = bruteForce(variant, machine, speed, torque);
      const auto i = machine.dq().operatingPoint(speed, torque, limits.voltage);
      if (!brute.exists) continue;
      ASSERT_TRUE(i) << speed << " " << torque;
      EXPECT_NEAR(i->amplitude(), brute.point.amplitude(), 0.05);
      weakened += i->d < machine.dq().leastCurrent(torque).d - 1e-6;
    }
  }
  EXPECT_GT(weakened, 20);
}

// Along a cycle: power from the supply is what the currents of each sample cost at their own bus
// voltage.
TEST(SaggingPoint, DemandAlongACycle) {
  const MotorConstants machine = machineOf(0.4e-3, 1e-3);
  const Variant variant = variantOf(0.15);
  const EnvelopeLimits limits = envelopeLimits(variant, machine);
  const SampledCycle cycle =
      handCycle(Eigen::Array3d(100, 260, 320), Eigen::Array3d::Zero(), Eigen::Array3d::Constant(1));
  StageChain chain;
  chain.motorSpeed = cycle.speed;
  chain.motorAcceleration = cycle.acceleration;
  chain.motorTorque = Eigen::Array3d(3, 3, 2);
  Motor motor;
  motor.rotorInertia = 0;
  const MotorDemand demand = motorDemand(cycle, chain, motor, machine, variant.controller, &limits);
  for (Eigen::Index k = 0; k < 3; ++k) {
    const double d = demand.weakening[k];
    const DqCurrent i{d, std::sqrt(std::pow(demand.current[k], 2) - d * d)};
    EXPECT_NEAR(machine.torque(i), demand.torque[k], 1e-9);
    EXPECT_NEAR(demand.supplyPower[k], limits.busPower(i, cycle.speed[k]), 1e-9);
    const double left = leftByHand(variant, machine, i, cycle.speed[k]);
    EXPECT_LE(machine.voltage(i, cycle.speed[k]), left * (1 + 1e-9));
  }
  EXPECT_LT(demand.weakening[2], -1);
}

}  // namespace
}  // namespace jw

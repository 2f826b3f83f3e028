// The envelope with field weakening and with a bus that sags: limits kept, nothing given away.
#include <cmath>
#include <numbers>
#include <random>

#include <gtest/gtest.h>

#include "core/physics/bus_energy.h"
#include "core/physics/controller_overload.h"
#include "core/physics/torque_envelope.h"

namespace jw {
namespace {

MotorConstants machineOf(double saliency, double drag = 0.02) {
  return {.polePairs = 5,
          .torquePerAmp = 0.15,
          .emfPerSpeed = 0.1,
          .resistance = 0.1,
          .inductance = 0.4e-3,
          .inductanceQ = 0.4e-3 * saliency,
          .dragTorque = drag,
          .dragDamping = drag / 2000};
}

Variant variantOf(double current, bool weakening = true) {
  Variant variant;
  variant.supply.voltage = 48;
  variant.controller.currentPeak = current;
  variant.controller.currentMeasure = CurrentMeasure::Amplitude;
  variant.controller.fieldWeakening = weakening;
  return variant;
}

TorqueEnvelope envelopeOf(const Variant& variant, const MotorConstants& machine) {
  const auto envelope = torqueEnvelope(variant, machine, std::nullopt);
  EXPECT_TRUE(envelope.has_value());
  return *envelope;
}

class Weakened : public ::testing::TestWithParam<double> {
 protected:
  MotorConstants machine = machineOf(GetParam());
  TorqueEnvelope envelope = envelopeOf(variantOf(40), machine);
  TorqueEnvelope plain = envelopeOf(variantOf(40, false), machine);
};

TEST_P(Weakened, KeepsVoltageAndCurrentAlongTheCurve) {
  const EnvelopeLimits& limits = envelope.limits;
  EXPECT_NEAR(limits.voltage, 48 / std::numbers::sqrt3, 1e-12);
  for (double share = -1; share <= 1; share += 0.01) {
    const double speed = share * limits.speed;
    const auto i = limits.strongest(speed);
    ASSERT_TRUE(i) << speed;
    EXPECT_LE(i->amplitude(), 40 * (1 + 1e-9)) << speed;
    EXPECT_LE(machine.voltage(*i, speed), limits.voltage * (1 + 1e-9)) << speed;
    EXPECT_NEAR(machine.torque(*i) - machine.drag(speed), limits.highestTorque(speed), 1e-12);
  }
}

TEST_P(Weakened, IsNeverWeakerThanWithoutWeakening) {
  EXPECT_GT(envelope.noLoadSpeed, plain.noLoadSpeed);
  for (double share = -1; share <= 1; share += 0.01) {
    const double speed = share * plain.limits.speed;
    const double with = envelope.limits.highestTorque(speed);
    EXPECT_GE(with, plain.limits.highestTorque(speed) - 1e-9) << speed;
  }
  // Clearly more well beyond the corner.
  const double fast = 0.9 * plain.limits.speed;
  EXPECT_GT(envelope.limits.highestTorque(fast), 1.2 * plain.limits.highestTorque(fast));
}

// The corner: the flat part's currents take the whole voltage.
TEST_P(Weakened, CornerSpeed) {
  const DqCurrent flat = machine.dq().mostTorquePerAmp(40);
  EXPECT_NEAR(machine.voltage(flat, envelope.cornerSpeed), envelope.limits.voltage, 1e-9);
  EXPECT_NEAR(envelope.stallTorque, machine.torque(flat), 1e-12);
  const double below = 0.999 * envelope.cornerSpeed;
  EXPECT_NEAR(envelope.limits.highestTorque(below), machine.torque(flat) - machine.drag(below),
              1e-9);
}

TEST_P(Weakened, NoLoadSpeedLeavesNoShaftTorque) {
  ASSERT_TRUE(std::isfinite(envelope.noLoadSpeed));
  EXPECT_NEAR(envelope.limits.highestTorque(envelope.noLoadSpeed), 0, 1e-6);
  EXPECT_GT(envelope.limits.highestTorque(0.99 * envelope.noLoadSpeed), 0);
}

TEST_P(Weakened, ContainsAgreesWithTheEdge) {
  std::mt19937 random(9);
  std::uniform_real_distribution<double> unit(-1, 1);
  const EnvelopeLimits& limits = envelope.limits;
  int inside = 0;
  for (int k = 0; k < 1000; ++k) {
    const double speed = 1.1 * limits.speed * unit(random);
    const double torque = 1.2 * envelope.stallTorque * unit(random);
    const bool expected = std::abs(speed) <= limits.speed &&
                          torque <= limits.highestTorque(speed) &&
                          torque >= -limits.highestTorque(-speed);
    EXPECT_EQ(limits.contains(speed, torque), expected) << speed << " " << torque;
    inside += expected;
  }
  EXPECT_GT(inside, 200);
  EXPECT_LT(inside, 800);
}

/// Where the ray first leaves the envelope, by steps and then by halving.
double factorByBisection(const EnvelopeLimits& limits, double speed, double torque) {
  double high = 0.01;
  while (limits.contains(high * speed, high * torque)) high += 0.01;
  double low = high - 0.01;
  for (int k = 0; k < 50; ++k) {
    const double middle = (low + high) / 2;
    (limits.contains(middle * speed, middle * torque) ? low : high) = middle;
  }
  return low;
}

TEST_P(Weakened, RayFactorByBisection) {
  std::mt19937 random(4);
  std::uniform_real_distribution<double> unit(-1, 1);
  for (int k = 0; k < 60; ++k) {
    const double speed = 1.3 * envelope.limits.speed * unit(random);
    const double torque = 1.3 * envelope.stallTorque * unit(random);
    const double expected = factorByBisection(envelope.limits, speed, torque);
    EXPECT_NEAR(envelope.limits.rayFactor(speed, torque), expected, 1e-6 * expected)
        << speed << " " << torque;
  }
}

TEST_P(Weakened, OperatingPointMakesTheTorqueWithinBothLimits) {
  const EnvelopeLimits& limits = envelope.limits;
  for (double share = 0.05; share < 1; share += 0.05) {
    const double speed = share * limits.speed;
    for (const double part : {-0.95, -0.4, 0.0, 0.4, 0.95}) {
      const double torque =
          part > 0 ? part * limits.highestTorque(speed) : -part * limits.lowestTorque(speed);
      const DqCurrent i = limits.operatingPoint(speed, torque);
      EXPECT_NEAR(machine.torque(i), torque + machine.drag(speed), 1e-9);
      EXPECT_LE(machine.voltage(i, speed), limits.voltage * (1 + 1e-9)) << speed << " " << part;
      EXPECT_LE(i.amplitude(), limits.current * (1 + 1e-9)) << speed << " " << part;
    }
  }
}

INSTANTIATE_TEST_SUITE_P(Saliencies, Weakened, ::testing::Values(1.0, 1.6, 3.0));

// Where the voltage just fails to allow the free point, by the last bit, nothing is lost or thrown.
TEST_P(Weakened, FreePointAtTheLastBitOfTheVoltage) {
  const DqMachine dq = machine.dq();
  for (double speed = 1; speed < 900; speed += 0.37) {
    const DqCurrent free = dq.mostTorquePerAmp(40);
    const double voltage = std::nextafter(dq.voltage(free, speed), 0);
    const auto strongest = dq.strongest(speed, voltage, 40);
    ASSERT_TRUE(strongest) << speed;
    EXPECT_GE(dq.torque(*strongest), dq.torque(free) * (1 - 1e-9)) << speed;
    const auto point = dq.operatingPoint(speed, 0.999 * dq.torque(free), voltage);
    ASSERT_TRUE(point) << speed;
    const DqCurrent least = dq.leastCurrent(dq.torque(free));
    const double last = std::nextafter(dq.voltage(least, speed), 0);
    const auto edge = dq.operatingPoint(speed, dq.torque(free), last);
    if (!edge) continue;
    EXPECT_NEAR(dq.torque(*edge), dq.torque(free), 1e-9) << speed;
  }
}

// lambda / L = 0.02 / 0.4 mH = 50 A: with less the speed ends, with more it does not (R = 0, no
// drag).
TEST(FieldWeakening, SpeedIsUnlimitedBeyondTheCharacteristicCurrent) {
  MotorConstants machine = machineOf(1, 0);
  machine.resistance = 1e-9;
  EXPECT_NEAR(machine.dq().characteristicCurrent(), 50, 1e-12);
  EXPECT_TRUE(std::isinf(envelopeOf(variantOf(51), machine).noLoadSpeed));
  const TorqueEnvelope ends = envelopeOf(variantOf(45), machine);
  // All of 45 A against the magnet: V = p w (lambda - L I).
  const double expected = 48 / std::numbers::sqrt3 / 5 / (0.02 - 0.4e-3 * 45);
  EXPECT_NEAR(ends.noLoadSpeed, expected, 1e-4 * expected);
  Variant mechanical = variantOf(51);
  mechanical.motor.maxSpeed = 900;
  EXPECT_EQ(envelopeOf(mechanical, machine).limits.speed, 900);
}

TEST(FieldWeakening, DoesNothingForDirectCurrent) {
  MotorConstants machine = machineOf(1);
  machine.direct = true;
  EXPECT_FALSE(envelopeLimits(variantOf(40), machine).weakening);
}

TEST(VoltageReserve, LeavesItsShare) {
  Variant variant = variantOf(40, false);
  variant.controller.voltageReserve = 0.1;
  EXPECT_NEAR(envelopeLimits(variant, machineOf(1)).voltage, 0.9 * 48 / std::numbers::sqrt3, 1e-12);
}

/// Everything that the sagging bus feeds, and the voltage it leaves, put into the machine again.
void expectSagSolved(const Variant& variant, const MotorConstants& machine) {
  const EnvelopeLimits limits = envelopeLimits(variant, machine);
  int limited = 0;
  for (double share = 0; share < 0.999; share += 0.01) {
    const double speed = share * limits.speed;
    const auto i = limits.strongest(speed);
    ASSERT_TRUE(i) << speed;
    const double rms = i->amplitude() / std::numbers::sqrt2;
    const double power = machine.torque(*i) * speed + 1.5 * machine.resistance * 2 * rms * rms +
                         controllerLoss(variant.controller, rms);
    const double bus = saggedVoltage(48, variant.supply.sourceResistance, power);
    ASSERT_FALSE(std::isnan(bus));
    const double allowed = bus / std::numbers::sqrt3;
    EXPECT_LE(machine.voltage(*i, speed), allowed * (1 + 1e-8)) << speed;
    const DqCurrent flat = *limits.strongest(0);
    if (std::hypot(i->d - flat.d, i->q - flat.q) < 1e-6) continue;
    ++limited;
    EXPECT_NEAR(machine.voltage(*i, speed), allowed, 1e-6) << speed;
  }
  EXPECT_GT(limited, 20);
}

TEST(BusSag, VoltageEquationHoldsAlongTheCurve) {
  for (const bool weakening : {false, true}) {
    for (const double saliency : {1.0, 2.0}) {
      Variant variant = variantOf(40, weakening);
      variant.supply.sourceResistance = 0.15;
      variant.controller.idlePower = 5;
      variant.controller.lossPerAmpere = 0.5;
      variant.controller.lossResistance = 0.01;
      expectSagSolved(variant, machineOf(saliency));
    }
  }
}

/// Own, from the voltage and power equations put into the machine again.
TEST(BusSag, TheCornerIsWhereTheSaggedVoltageIsUsedUp) {
  for (const bool weakening : {false, true}) {
    Variant variant = variantOf(40, weakening);
    const double stiff = torqueEnvelope(variant, machineOf(2), {})->cornerSpeed;
    variant.supply.sourceResistance = 0.15;
    const TorqueEnvelope envelope = *torqueEnvelope(variant, machineOf(2), {});
    const double corner = envelope.cornerSpeed;
    EXPECT_LT(corner, 0.99 * stiff);
    const MotorConstants machine = machineOf(2);
    const DqCurrent flat = *envelope.limits.strongest(0);
    const double made = machine.torque(flat);
    const double copper = 1.5 * machine.resistance * flat.amplitude() * flat.amplitude();
    const double bus = saggedVoltage(48, 0.15, made * corner + copper);
    EXPECT_NEAR(machine.voltage(flat, corner), bus / std::numbers::sqrt3, 1e-5);
    EXPECT_NEAR(machine.torque(*envelope.limits.strongest(0.999 * corner)), made, 1e-6 * made);
    EXPECT_LT(machine.torque(*envelope.limits.strongest(1.001 * corner)), made * (1 - 1e-6));
  }
}

TEST(BusSag, OnlyTakesTorqueAway) {
  for (const bool weakening : {false, true}) {
    Variant variant = variantOf(40, weakening);
    const EnvelopeLimits stiff = envelopeLimits(variant, machineOf(1));
    variant.supply.sourceResistance = 0.15;
    const EnvelopeLimits soft = envelopeLimits(variant, machineOf(1));
    EXPECT_LE(soft.speed, stiff.speed);
    for (double share = -1; share <= 1; share += 0.05) {
      const double speed = share * soft.speed;
      EXPECT_LE(soft.highestTorque(speed), stiff.highestTorque(speed) + 1e-9);
    }
    EXPECT_LT(soft.highestTorque(0.9 * soft.speed), stiff.highestTorque(0.9 * soft.speed));
    variant.supply.sourceResistance = 0;
    EXPECT_EQ(envelopeLimits(variant, machineOf(1)).highestTorque(200), stiff.highestTorque(200));
  }
}

}  // namespace
}  // namespace jw

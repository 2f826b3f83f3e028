// The envelope with i_d = 0 against its own equations solved another way: scans, bisection and the
// voltage written out in complex form.
#include <cmath>
#include <complex>
#include <numbers>
#include <random>

#include <gtest/gtest.h>

#include "core/physics/torque_envelope.h"

namespace jw {
namespace {

MotorConstants machineOf(double drag) {
  return {.polePairs = 7,
          .torquePerAmp = 0.078,
          .emfPerSpeed = 0.052,
          .resistance = 0.18,
          .inductance = 0.15e-3,
          .inductanceQ = 0.15e-3,
          .dragTorque = drag,
          .dragDamping = drag / 2000};
}

Variant variantOf(double voltage, double current, double maxSpeed = kUnset) {
  Variant variant;
  variant.supply.voltage = voltage;
  variant.controller.currentPeak = current;
  variant.controller.currentMeasure = CurrentMeasure::Amplitude;
  variant.motor.maxSpeed = maxSpeed;
  return variant;
}

TorqueEnvelope envelopeOf(double drag, double maxSpeed = kUnset, double current = 30) {
  const auto envelope =
      torqueEnvelope(variantOf(48, current, maxSpeed), machineOf(drag), std::nullopt);
  EXPECT_TRUE(envelope.has_value());
  return *envelope;
}

/// Voltage amplitude [V] of the steady machine with i_d = 0 that gives a shaft torque at a speed.
double voltageAt(const MotorConstants& m, double speed, double torque) {
  const double current = (torque + m.drag(speed)) / m.torquePerAmp;
  const std::complex<double> impedance(m.resistance, m.polePairs * speed * m.inductance);
  // The q axis is imaginary here: current and EMF lie along it.
  const std::complex<double> q(0, 1);
  return std::abs(impedance * current * q + m.emfPerSpeed * speed * q);
}

// 48 V: V/sqrt(3) = 27.713 V, V/2 = 24 V, 2V/pi = 30.558 V (Holmes and Lipo, Pulse Width Modulation
// for Power Converters; from memory); a direct machine sees the whole bus.
TEST(VoltageLimit, ByModulation) {
  EXPECT_NEAR(voltageLimit(48, Modulation::SpaceVector, false), 27.7128, 5e-5);
  EXPECT_NEAR(voltageLimit(48, Modulation::SineTriangle, false), 24, 1e-12);
  EXPECT_NEAR(voltageLimit(48, Modulation::SixStep, false), 30.5577, 5e-5);
  EXPECT_EQ(voltageLimit(48, Modulation::SineTriangle, true), 48);
}

TEST(TorqueEnvelope, StallIsTheCurrentLimit) {
  EXPECT_NEAR(envelopeOf(0).stallTorque, 30 * 0.078, 1e-14);
  // With a current of 1 kA the voltage limits at standstill too: V/R.
  const TorqueEnvelope soft = envelopeOf(0, kUnset, 1000);
  EXPECT_NEAR(soft.stallTorque, 48 / std::numbers::sqrt3 / 0.18 * 0.078, 1e-12);
  EXPECT_EQ(soft.cornerSpeed, 0);
}

TEST(TorqueEnvelope, CornerSpeedByScan) {
  for (const double drag : {0.0, 0.02}) {
    const TorqueEnvelope envelope = envelopeOf(drag);
    const MotorConstants m = machineOf(drag);
    const double limit = 48 / std::numbers::sqrt3;
    double scanned = 0;
    for (double w = 0; voltageAt(m, w, 30 * m.torquePerAmp - m.drag(w)) <= limit; w += 1e-3) {
      scanned = w;
    }
    EXPECT_NEAR(envelope.cornerSpeed, scanned, 1.1e-3);
  }
}

TEST(TorqueEnvelope, NoLoadSpeedByScan) {
  EXPECT_NEAR(envelopeOf(0).noLoadSpeed, 48 / std::numbers::sqrt3 / 0.052, 1e-9);
  const double drag = 0.02;
  double scanned = 0;
  for (double w = 0; voltageAt(machineOf(drag), w, 0) <= 48 / std::numbers::sqrt3; w += 1e-3) {
    scanned = w;
  }
  EXPECT_NEAR(envelopeOf(drag).noLoadSpeed, scanned, 1.1e-3);
}

TEST(TorqueEnvelope, MoreDragThanTorqueLeavesNoSpeed) {
  const TorqueEnvelope envelope = envelopeOf(3);
  EXPECT_EQ(envelope.noLoadSpeed, 0);
  EXPECT_FALSE(envelope.limits.contains(1, 0));
}

// With R = 0: w_base = V/(p sqrt((L i_q)² + lambda²)) ("MTPA control reference" page of a public
// simulation library's documentation, read).
TEST(TorqueEnvelope, BaseSpeedWithoutResistance) {
  MotorConstants m = machineOf(0);
  m.resistance = 1e-12;
  const auto envelope = torqueEnvelope(variantOf(48, 30), m, std::nullopt);
  const double expected =
      48 / std::numbers::sqrt3 / 7 / std::hypot(m.inductance * 30, m.fluxLinkage());
  EXPECT_NEAR(envelope->cornerSpeed, expected, 1e-7 * expected);
}

TEST(TorqueEnvelope, VoltageIsUsedUpBeyondTheCorner) {
  for (const double drag : {0.0, 0.02}) {
    const TorqueEnvelope envelope = envelopeOf(drag);
    const double limit = 48 / std::numbers::sqrt3;
    for (double share = 0; share <= 1; share += 0.05) {
      const double w = envelope.cornerSpeed + share * (envelope.noLoadSpeed - envelope.cornerSpeed);
      const double torque = envelope.limits.highestTorque(w);
      EXPECT_NEAR(voltageAt(machineOf(drag), w, torque), limit, 1e-9);
    }
  }
}

TEST(TorqueEnvelope, MirrorImageThroughTheOrigin) {
  const EnvelopeLimits limits = envelopeOf(0.02).limits;
  for (double w = -limits.speed; w <= limits.speed; w += limits.speed / 37) {
    EXPECT_EQ(limits.lowestTorque(w), -limits.highestTorque(-w));
  }
  const EnvelopeCurve peak = envelopeOf(0.02).peak;
  for (Eigen::Index i = 0; i < peak.speed.size(); ++i) {
    EXPECT_TRUE(limits.contains(peak.speed[i] * (1 - 1e-9), peak.torque[i] * (1 - 1e-9)));
    EXPECT_TRUE(limits.contains(-peak.speed[i] * (1 - 1e-9), -peak.torque[i] * (1 - 1e-9)));
  }
  EXPECT_EQ(peak.speed[0], peak.speed[peak.speed.size() - 1]);
  EXPECT_EQ(peak.torque[0], peak.torque[peak.torque.size() - 1]);
}

// Drag brakes too, and the back-EMF helps the voltage: braking is never weaker than driving.
TEST(TorqueEnvelope, BrakingIsStrongerThanDriving) {
  const TorqueEnvelope envelope = envelopeOf(0.02);
  for (double share = 0.05; share < 1; share += 0.05) {
    const double w = share * envelope.noLoadSpeed;
    EXPECT_GT(-envelope.limits.lowestTorque(w), envelope.limits.highestTorque(w));
  }
}

TEST(TorqueEnvelope, MechanicalSpeedLimit) {
  const TorqueEnvelope envelope = envelopeOf(0, 300);
  EXPECT_EQ(envelope.limits.speed, 300);
  EXPECT_TRUE(envelope.limits.contains(300, 0));
  EXPECT_FALSE(envelope.limits.contains(300.001, 0));
  EXPECT_NEAR(envelope.limits.rayFactor(150, 0), 2, 1e-12);
}

TEST(TorqueEnvelope, MotorOrControllerCurrentWhicheverIsSmaller) {
  Variant variant = variantOf(48, 30);
  variant.motor.currentPeak = 20;  // rms: amplitude 28.28 A
  EXPECT_NEAR(torqueEnvelope(variant, machineOf(0), std::nullopt)->limits.current,
              20 * std::numbers::sqrt2, 1e-12);
  variant.motor.currentPeak = 25;  // amplitude 35.36 A
  EXPECT_NEAR(torqueEnvelope(variant, machineOf(0), std::nullopt)->limits.current, 30, 1e-12);
}

TEST(TorqueEnvelope, NeedsTheBusVoltage) {
  const auto envelope = torqueEnvelope(variantOf(kUnset, 30), machineOf(0), std::nullopt);
  ASSERT_FALSE(envelope.has_value());
  EXPECT_EQ(envelope.error().where, "supply.voltage");
}

/// Random machines and limits, always the same ones.
struct RandomLimits {
  std::mt19937 random{20240501};

  double between(double low, double high) {
    return std::uniform_real_distribution<double>(low, high)(random);
  }

  EnvelopeLimits next() {
    MotorConstants m;
    m.polePairs = 1 + static_cast<int>(between(0, 10));
    m.emfPerSpeed = between(0.01, 0.2);
    m.torquePerAmp = 1.5 * m.emfPerSpeed;
    m.resistance = between(0.02, 0.5);
    m.inductance = m.inductanceQ = between(0, 1e-3);
    Variant variant = variantOf(between(12, 100), between(5, 60));
    m.dragTorque = between(0, 0.05) * variant.controller.currentPeak * m.torquePerAmp;
    m.dragDamping = m.dragTorque / 1000;
    const auto envelope = torqueEnvelope(variant, m, std::nullopt);
    EXPECT_TRUE(envelope.has_value());
    return envelope->limits;
  }
};

TEST(TorqueEnvelope, ContainsIsTheTwoCircles) {
  RandomLimits source;
  for (int k = 0; k < 2000; ++k) {
    const EnvelopeLimits limits = source.next();
    const double w = source.between(-1.2, 1.2) * limits.speed;
    const double torque = source.between(-1.3, 1.3) * limits.machine.torquePerAmp * limits.current;
    const double current = (torque + limits.machine.drag(w)) / limits.machine.torquePerAmp;
    const bool inside = std::abs(w) <= limits.speed && std::abs(current) <= limits.current &&
                        voltageAt(limits.machine, w, torque) <= limits.voltage;
    EXPECT_EQ(limits.contains(w, torque), inside);
  }
}

/// Where the ray through the point first leaves the envelope, by steps of 1/500 and then bisection.
double factorByBisection(const EnvelopeLimits& limits, double w, double torque) {
  double high = 0.002;
  while (limits.contains(high * w, high * torque)) high += 0.002;
  double low = high - 0.002;
  for (int k = 0; k < 60; ++k) {
    const double middle = (low + high) / 2;
    (limits.contains(middle * w, middle * torque) ? low : high) = middle;
  }
  return low;
}

TEST(TorqueEnvelope, RayFactorByBisection) {
  RandomLimits source;
  for (int k = 0; k < 500; ++k) {
    const EnvelopeLimits limits = source.next();
    const double w = source.between(-1.5, 1.5) * limits.speed;
    const double torque = source.between(-1.5, 1.5) * limits.machine.torquePerAmp * limits.current;
    const double expected = factorByBisection(limits, w, torque);
    EXPECT_NEAR(limits.rayFactor(w, torque), expected, 1e-9 * expected) << k;
  }
}

TEST(TorqueEnvelope, RayFactorOnTheAxes) {
  const EnvelopeLimits limits = envelopeOf(0.02).limits;
  EXPECT_NEAR(limits.rayFactor(0, -0.5) * 0.5, 30 * 0.078, 1e-10);
  EXPECT_NEAR(limits.rayFactor(100, 0) * 100, limits.speed, 1e-8 * limits.speed);
  EXPECT_TRUE(std::isinf(limits.rayFactor(0, 0)));
}

}  // namespace
}  // namespace jw

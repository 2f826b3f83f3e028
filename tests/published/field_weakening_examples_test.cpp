// Base speed, power factor and range of field weakening of published synchronous machines. MSL =
// Modelica Standard Library, Electrical.Machines (inputs read). "published" marks a number that
// stands there, "computed" own arithmetic on its inputs.
#include <cmath>
#include <numbers>

#include <gtest/gtest.h>

#include "core/physics/torque_envelope.h"

namespace jw {
namespace {

constexpr double kSqrt2 = std::numbers::sqrt2;
constexpr double kSqrt3 = std::numbers::sqrt3;
constexpr double kDegree = std::numbers::pi / 180;
constexpr double kElectrical = 2 * std::numbers::pi * 50;  // 50 Hz
constexpr double kSpeed = kElectrical / 2;                 // two pole pairs

/// The machine of both examples: p = 2, 50 Hz, EMF 112.3 V rms; reactances [Ohm] at 50 Hz.
MotorConstants machineOf(double resistance, double reactanceD, double reactanceQ) {
  return {.polePairs = 2,
          .torquePerAmp = 1.5 * 112.3 * kSqrt2 / kSpeed,
          .emfPerSpeed = 112.3 * kSqrt2 / kSpeed,
          .resistance = resistance,
          .inductance = reactanceD / kElectrical,
          .inductanceQ = reactanceQ / kElectrical};
}

TorqueEnvelope envelopeOf(const MotorConstants& machine, double amplitude, double voltage) {
  Variant variant;
  variant.supply.voltage = kSqrt3 * voltage;  // space vector
  variant.controller.fieldWeakening = true;
  variant.controller.currentPeak = amplitude;
  variant.controller.currentMeasure = CurrentMeasure::Amplitude;
  const auto envelope = torqueEnvelope(variant, machine, std::nullopt);
  EXPECT_TRUE(envelope.has_value());
  return *envelope;
}

// MSL SM_PermanentMagnet, documentation table: published 100 V and 100 A rms a phase, 0.03 and 0.4
// ohm, 181.4 N·m, 28.5 kW, power factor 0.98, rotor angle 20.75 degrees; example SMPM_VoltageSource
// i = (-53.5, 84.6) A rms, published to the digit shown. The table's efficiency of 95 % is not the
// ratio of its powers (computed: 96.94 %) and is not tested.
TEST(PublishedWeakening, NominalPointOfTheTable) {
  const MotorConstants m = machineOf(0.03, 0.4, 0.4);
  EnvelopeLimits limits = envelopeOf(m, 100 * kSqrt2, 100 * kSqrt2).limits;
  const auto i = limits.strongest(kSpeed);
  ASSERT_TRUE(i);
  EXPECT_NEAR(i->amplitude(), 100 * kSqrt2, 1e-9);
  EXPECT_NEAR(i->d / kSqrt2, -53.5, 0.2);  // computed: -53.32
  EXPECT_NEAR(i->q / kSqrt2, 84.6, 0.05);
  EXPECT_NEAR(limits.highestTorque(kSpeed), 181.4, 0.05);
  EXPECT_NEAR(limits.highestTorque(kSpeed) * kSpeed, 28.5e3, 50);
  const double input = limits.busPower(*i, kSpeed);
  EXPECT_NEAR(input / (3 * 100 * 100), 0.98, 5e-3);
  EXPECT_NEAR(limits.highestTorque(kSpeed) * kSpeed / input, 0.9694, 5e-4);  // computed
  const double vd = m.resistance * i->d - 0.4 * i->q;
  const double vq = m.resistance * i->q + 0.4 * i->d + 112.3 * kSqrt2;
  EXPECT_NEAR(std::atan2(-vd, vq) / kDegree, 20.75, 0.02);
}

// MSL SMPM_MTPA: X_d = 0.2, X_q = 0.4 ohm, 100 A rms; computed currents and torque, rms and peak.
TEST(PublishedWeakening, MostTorquePerAmpereIsTheStallPoint) {
  const TorqueEnvelope envelope = envelopeOf(machineOf(0.03, 0.2, 0.4), 100 * kSqrt2, 150);
  const auto i = envelope.limits.strongest(0);
  ASSERT_TRUE(i);
  EXPECT_NEAR(i->d / kSqrt2, -16.804, 5e-4);
  EXPECT_NEAR(i->q / kSqrt2, 98.578, 5e-4);
  EXPECT_NEAR(envelope.stallTorque, 217.755, 5e-4);
}

// Published relation (documentation of a reference-current block for such machines, read): v_max =
// V_dc/sqrt(3) - R I, base speed v_max / (p sqrt((L_q i_q)² + (L_d i_d + lambda)²)). It takes the
// drop off the amplitude, so it is exact without resistance and otherwise a lower bound, as
// |R i + j w psi| <= R I + w |psi|.
TEST(PublishedWeakening, BaseSpeedRelation) {
  for (const double reactanceQ : {0.2, 0.4}) {
    for (const double resistance : {0.0, 0.03}) {
      const MotorConstants m = machineOf(resistance, 0.2, reactanceQ);
      const double amplitude = 100 * kSqrt2;
      const double voltage = 150;
      const TorqueEnvelope envelope = envelopeOf(m, amplitude, voltage);
      const DqCurrent i = m.dq().mostTorquePerAmp(amplitude);
      const double flux = std::hypot(m.inductanceQ * i.q, m.inductance * i.d + m.fluxLinkage());
      const double published = (voltage - resistance * amplitude) / (2 * flux);
      const double most = resistance == 0 ? 1 + 1e-9 : 1.03;
      EXPECT_GE(envelope.cornerSpeed, published * (1 - 1e-12));
      EXPECT_LE(envelope.cornerSpeed, published * most);
    }
  }
}

// Characteristic current E/X_d (computed): 112.3/0.4 = 280.75 and 112.3/0.2 = 561.5 A rms. With
// less the speed ends where V = p w (lambda - L_d I), with more it does not (no resistance, no
// drag).
TEST(PublishedWeakening, SpeedEndsOrNotByTheCharacteristicCurrent) {
  const MotorConstants m = machineOf(0, 0.4, 0.4);
  EXPECT_NEAR(m.dq().characteristicCurrent() / kSqrt2, 280.75, 1e-9);
  EXPECT_NEAR(machineOf(0, 0.2, 0.4).dq().characteristicCurrent() / kSqrt2, 561.5, 1e-9);
  const double ends = envelopeOf(m, 100 * kSqrt2, 100 * kSqrt2).noLoadSpeed;
  const double expected = kSpeed * 100 / (112.3 - 0.4 * 100);
  EXPECT_NEAR(ends, expected, 1e-4 * expected);
  EXPECT_TRUE(std::isinf(envelopeOf(m, 281 * kSqrt2, 100 * kSqrt2).noLoadSpeed));
}

// Fitzgerald, Kingsley and Umans, Electric Machinery, ex. 10.10 (read second-hand): 125 V in each
// half, a pulse over 0.44 of each half turn: V_a = (4 x 125/pi) sin(0.44 pi), published 191 V rms
// line to line (computed 191.47). With pulses over the whole half turn it is our six-step limit.
TEST(PublishedWeakening, SixStepFundamental) {
  const double amplitude = voltageLimit(2 * 125, Modulation::SixStep, false);
  const double line = std::sqrt(1.5) * amplitude * std::sin(0.44 * std::numbers::pi);
  EXPECT_NEAR(line, 191, 0.5);
  EXPECT_NEAR(line, 191.47, 5e-3);
}

}  // namespace
}  // namespace jw

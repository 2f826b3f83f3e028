// Conversions of motor data against published relations and machines.
#include <cmath>
#include <numbers>

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "core/physics/motor_constants.h"
#include "core/physics/torque_envelope.h"
#include "core/quantity/quantity.h"

namespace jw {
namespace {

constexpr double kPi = std::numbers::pi;
constexpr double kRpm = kPi / 30;
constexpr double kSqrt2 = std::numbers::sqrt2;
constexpr double kSqrt3 = std::numbers::sqrt3;

Motor motorWith(double resistance = 1) {
  Motor motor;
  motor.resistance = resistance;
  return motor;
}

MotorConstants constantsOf(const Motor& motor) {
  const auto converted = convertMotor(motor);
  EXPECT_TRUE(converted.has_value());
  return converted->constants;
}

Motor withBackEmf(double value, VoltageMeasure measure, int polePairs) {
  Motor motor = motorWith();
  motor.polePairs = polePairs;
  motor.backEmfConstant = value;
  motor.backEmfMeasure = measure;
  return motor;
}

// Fitzgerald, Kingsley and Umans, Electric Machinery, ex. 11.10: two poles, 220 V rms line to line
// at 3200 rpm, open circuit (inputs read in the FOSSEE textbook companion). The conversions are own
// arithmetic: lambda = sqrt(2)/sqrt(3) 220/w, K_t = 1.5 p lambda.
struct FitzgeraldMachine : testing::Test {
  const double speed = 3200 * kRpm;
  const double lineRms = 220 / speed;
};

TEST_F(FitzgeraldMachine, BackEmfLineToLineRms) {
  EXPECT_NEAR(lineRms, 0.656514, 5e-7);
  const MotorConstants c = constantsOf(withBackEmf(lineRms, VoltageMeasure::LineToLineRms, 1));
  EXPECT_NEAR(c.fluxLinkage(), 0.536042, 5e-7);
  EXPECT_NEAR(c.torquePerAmp, 0.804062, 5e-7);
  EXPECT_NEAR(c.torquePerRmsAmp(), 1.137116, 5e-7);
  EXPECT_NEAR(c.torquePerRmsAmp() / lineRms, kSqrt3, 1e-12);
}

TEST_F(FitzgeraldMachine, BackEmfPerThousandRpm) {
  const double peak = toInternal(97.2272, "V/krpm", Quantity::VoltageConstant);
  const MotorConstants c = constantsOf(withBackEmf(peak, VoltageMeasure::LineToLinePeak, 1));
  EXPECT_NEAR(c.fluxLinkage(), 0.536042, 5e-7);
}

TEST_F(FitzgeraldMachine, SpeedConstant) {
  Motor motor = motorWith();
  motor.speedConstant = toInternal(10.28519, "rpm/V", Quantity::SpeedConstant);
  motor.speedConstantMeasure = VoltageMeasure::LineToLinePeak;
  const MotorConstants c = constantsOf(motor);
  EXPECT_NEAR(c.torquePerAmp, 0.804062, 5e-7);
  // The rule K_t = 8.2699/K_v per ampere of amplitude (from memory; sqrt(3)/2 * 30/pi = 8.269933).
  EXPECT_NEAR(c.torquePerAmp, 8.269933 / 10.28519, 5e-7);
}

TEST_F(FitzgeraldMachine, PhaseMeasures) {
  const double phaseRms = lineRms / kSqrt3;
  for (const auto& [value, measure] : {std::pair{phaseRms, VoltageMeasure::PhaseRms},
                                       std::pair{phaseRms * kSqrt2, VoltageMeasure::PhasePeak}}) {
    EXPECT_NEAR(constantsOf(withBackEmf(value, measure, 1)).fluxLinkage(), 0.536042, 5e-7);
  }
}

// lambda = K_t sqrt(2)/(3p) with K_t per ampere rms, lambda = K_e sqrt(3)/(100 pi p) with K_e in V
// peak line to line per 1000 rpm: support note 102421 of a public simulation forum (read).
TEST(PublishedMotorConstants, FluxLinkageFromDataSheetFigures) {
  for (const int polePairs : {1, 4, 21}) {
    Motor motor = motorWith();
    motor.polePairs = polePairs;
    motor.torqueConstant = 0.37;
    EXPECT_NEAR(constantsOf(motor).fluxLinkage(), 0.37 * kSqrt2 / (3 * polePairs), 1e-15);
    const double ke = toInternal(45, "V/krpm", Quantity::VoltageConstant);
    const Motor other = withBackEmf(ke, VoltageMeasure::LineToLinePeak, polePairs);
    EXPECT_NEAR(constantsOf(other).fluxLinkage(), 45 * kSqrt3 / (100 * kPi * polePairs), 1e-14);
  }
}

// A delta of R, L, lambda is a star of R/3, L/3, lambda/sqrt(3) (from memory). Own derivation as
// check: with line amplitude I a delta winding carries I/sqrt(3), so torque = 1.5 p lambda
// I/sqrt(3) and loss = 3 R (I/sqrt(3))²/2 = R I²/2.
TEST(PublishedMotorConstants, DeltaWinding) {
  Motor motor = motorWith(0.3);
  motor.connection = WindingConnection::Delta;
  motor.resistanceMeasure = WindingMeasure::Phase;
  motor.polePairs = 5;
  motor.fluxLinkage = 0.02;
  motor.inductance = 6e-3;
  motor.inductanceMeasure = WindingMeasure::Phase;
  const MotorConstants c = constantsOf(motor);
  const double i = 7;
  EXPECT_NEAR(c.torquePerAmp * i, 1.5 * 5 * 0.02 * i / kSqrt3, 1e-14);
  EXPECT_NEAR(c.copperLoss(i), 0.3 * i * i / 2, 1e-13);
  EXPECT_NEAR(c.inductance, 2e-3, 1e-18);
  // A phase of a delta lies between two lines: its EMF p lambda is the line-to-line one.
  Motor measured = withBackEmf(5 * 0.02, VoltageMeasure::PhasePeak, 5);
  measured.connection = WindingConnection::Delta;
  EXPECT_NEAR(constantsOf(measured).torquePerAmp, c.torquePerAmp, 1e-15);
  // Between two terminals lie R parallel to 2R, 2R/3.
  motor.resistance = 0.2;
  motor.resistanceMeasure = WindingMeasure::LineToLine;
  EXPECT_NEAR(constantsOf(motor).resistance, 0.1, 1e-16);
}

// Modelica Standard Library, example SMPM_VoltageSource and its documentation table (read): p = 2,
// 50 Hz, 112.3 V rms per phase without load, i_q = 84.60 A rms -> 181.4 N·m; with all of 100 A rms
// in i_q 214.477 N·m (own arithmetic 3 E I/w).
TEST(PublishedMotorConstants, SynchronousMachineTorque) {
  const double speed = 2 * kPi * 50 / 2;
  const MotorConstants c = constantsOf(withBackEmf(112.3 / speed, VoltageMeasure::PhaseRms, 2));
  EXPECT_NEAR(c.fluxLinkage(), 0.505528, 5e-7);
  EXPECT_NEAR(c.torquePerRmsAmp() * 84.60, 181.4, 0.05);
  EXPECT_NEAR(c.torquePerRmsAmp() * 100, 214.477, 5e-4);
}

// Row "pendulum_drive" of an open pendulum test bench (BSD-3, dfki-ric-underactuated-lab/
// torque_limited_simple_pendulum, hardware/testbench_description.md, read): K_t 0.091 N·m/A,
// K_e 0.009524 V/rpm, K_v 100 rpm/V, 0.170 ohm between phases, K_m 0.2206 N·m/sqrt(W).
// K_e agrees within 0.1 %; K_v means 0.0955 V·s/rad, 4.9 % away, and must be reported.
TEST(PublishedMotorConstants, OpenDataRowContradictsItself) {
  Motor motor = motorWith(0.170);
  motor.kind = MotorKind::Block;
  motor.torqueConstant = 0.091;
  motor.backEmfConstant = toInternal(9.524, "V/krpm", Quantity::VoltageConstant);
  motor.backEmfMeasure = VoltageMeasure::LineToLinePeak;
  motor.speedConstant = toInternal(100, "rpm/V", Quantity::SpeedConstant);
  const auto converted = convertMotor(motor);
  ASSERT_TRUE(converted.has_value());
  const MotorConstants& c = converted->constants;
  EXPECT_NEAR(c.torquePerAmp / std::sqrt(c.copperLoss(1)), 0.2206, 2e-4);
  ASSERT_EQ(converted->contradictions.size(), 1u);
  const InputError& text = converted->contradictions.front();
  EXPECT_EQ(text.where, "motor.speedConstant");
  EXPECT_THAT(text.what, testing::HasSubstr("100"));
  EXPECT_THAT(text.what, testing::HasSubstr("104.9"));  // 30/(pi 0.091)
}

// Row "leg_small_hip" of an open leg robot's code (MIT, mit-biomimetics/Cheetah-Software,
// common/include/Dynamics/MiniCheetah.h, read). Its own unit test wants 18 N·m, a corner at
// 28.47 rad/s (tolerance 0.02) and no torque at 40 rad/s at the joint. Its model: V = i R + 2 K w,
// torque = 1.5 K i, K = 0.05, R = 0.173 ohm, 24 V, 3 N·m at the motor, ratio 6, no friction.
struct LegActuator : testing::Test {
  MotorConstants machine{
      .direct = true, .torquePerAmp = 1.5 * 0.05, .emfPerSpeed = 2 * 0.05, .resistance = 0.173};
};

TEST_F(LegActuator, TorqueLimitCornerAndNoLoadSpeedAtTheJoint) {
  Variant variant;
  variant.supply.voltage = 24;
  variant.motor.currentPeak = 3 / machine.torquePerAmp;
  const auto envelope = torqueEnvelope(variant, machine, std::nullopt);
  ASSERT_TRUE(envelope.has_value());
  const double ratio = 6;
  EXPECT_NEAR(envelope->stallTorque * ratio, 18, 1e-12);
  EXPECT_NEAR(envelope->cornerSpeed / ratio, 28.47, 0.02);
  EXPECT_NEAR(envelope->noLoadSpeed / ratio, 40.0, 1e-9);
  // Halfway between corner and no load the straight line halves the torque.
  const double between = (envelope->cornerSpeed + envelope->noLoadSpeed) / 2;
  EXPECT_NEAR(envelope->limits.highestTorque(between) * ratio, 9, 1e-9);
}

// Its torque constant 1.5 K and back-EMF constant 2 K cannot both be those of a lossless energy
// converter: for one direct current they would have to be equal.
TEST_F(LegActuator, ItsTwoConstantsContradictEachOther) {
  Motor motor = motorWith(0.173);
  motor.kind = MotorKind::BrushedDc;
  motor.torqueConstant = machine.torquePerAmp;
  motor.backEmfConstant = machine.emfPerSpeed;
  const auto converted = convertMotor(motor);
  ASSERT_TRUE(converted.has_value());
  ASSERT_EQ(converted->contradictions.size(), 1u);
  EXPECT_EQ(converted->contradictions.front().where, "motor.backEmfConstant");
}

MotorConstants heated(double resistance, double coefficient, double reference, double to) {
  Motor motor = motorWith(resistance);
  motor.kind = MotorKind::BrushedDc;
  motor.torqueConstant = 1;
  motor.copperCoefficient = coefficient;
  motor.referenceTemperature = reference;
  return atTemperature(constantsOf(motor), motor, to, reference);
}

/// Coefficient at 20 °C of one stated at 0 °C.
double at20(double atZero) { return atZero / (1 + 20 * atZero); }

// J. O. Bird, Electrical Circuit Theory and Technology, ch. 3 (read second-hand in the FOSSEE
// textbook companion), and the resistance of MSL example DCPM_withLosses (read).
TEST(PublishedResistance, RisesWithTemperature) {
  EXPECT_NEAR(heated(0.03864, 0.00392, 20, 95).resistance, 0.05, 5e-6);    // MSL
  EXPECT_NEAR(heated(10, 0.004, 20, 100).resistance, 13.2, 1e-12);         // Bird ex. 11
  EXPECT_NEAR(heated(100, at20(0.0043), 0, 70).resistance, 130.1, 1e-10);  // Bird ex. 8
  EXPECT_NEAR(heated(200, at20(0.004), 20, 90).resistance, 251.85, 5e-3);  // Bird ex. 13
}

// C. R. Robertson, Fundamental Electrical and Electronic Principles, ex. 1.18 (read second-hand):
// 250 ohm at 15 °C, 0.00428 referred to 0 °C, 45 °C -> 280.2 ohm.
TEST(PublishedResistance, FromAnyReferenceTemperature) {
  EXPECT_NEAR(heated(250, at20(0.00428), 15, 45).resistance, 280.2, 0.05);
}

// Copper from 20 to 120 °C: x 1.3930 with 0.00393/K at 20 °C (IEC 60028, from memory). The
// resistance method of IEC 60034-1 with 235 °C gives 1.3922 (from memory): 0.06 % apart, not the
// rule used here.
TEST(PublishedResistance, CopperTo120Degrees) {
  EXPECT_NEAR(heated(1, Motor{}.copperCoefficient, 20, 120).resistance, 1.3930, 5e-5);
}

TEST(PublishedResistance, MagnetWeakensTorqueAndEmfAlike) {
  Motor motor = motorWith();
  motor.torqueConstant = 0.1;
  motor.magnetCoefficient = -0.0012;
  const MotorConstants cold = constantsOf(motor);
  const MotorConstants warm = atTemperature(cold, motor, 20, 120);
  // Own arithmetic: 1 - 0.0012 * 100.
  EXPECT_NEAR(warm.torquePerAmp / cold.torquePerAmp, 0.88, 1e-12);
  EXPECT_NEAR(warm.emfPerSpeed / cold.emfPerSpeed, 0.88, 1e-12);
}

}  // namespace
}  // namespace jw

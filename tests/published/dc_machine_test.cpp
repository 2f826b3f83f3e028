// Direct-current machines of textbooks and lecture notes against the envelope and the power
// balance. FOSSEE = textbook companions of the FOSSEE project, where the books' examples were read
// second-hand.
#include <cmath>
#include <limits>
#include <numbers>

#include <gtest/gtest.h>

#include "core/physics/motor_demand.h"
#include "core/physics/torque_envelope.h"
#include "tests/core/physics/hand_cycle.h"

namespace jw {
namespace {

constexpr double kRpm = std::numbers::pi / 30;
constexpr double kInfinity = std::numeric_limits<double>::infinity();

MotorConstants machineOf(double constant, double resistance, double dragTorque = 0) {
  return {.direct = true,
          .torquePerAmp = constant,
          .emfPerSpeed = constant,
          .resistance = resistance,
          .dragTorque = dragTorque};
}

EnvelopeLimits limitsOf(const MotorConstants& machine, double voltage, double current = kInfinity) {
  EnvelopeLimits limits;
  limits.machine = machine;
  limits.voltage = voltage;
  limits.current = current;
  limits.speed = kInfinity;
  return limits;
}

TorqueEnvelope envelopeOf(const MotorConstants& machine, double voltage) {
  Variant variant;
  variant.supply.voltage = voltage;
  const auto envelope = torqueEnvelope(variant, machine, std::nullopt);
  EXPECT_TRUE(envelope.has_value());
  return *envelope;
}

// Fitzgerald, Kingsley and Umans, Electric Machinery, ex. 7.9 (FOSSEE): 50 V and 1.25 A without
// load at 2100 rpm, 1.03 ohm: K = 0.22 V·s/rad, 61 W lost in rotation; with 48 V at 1700 rpm 275 W
// at the shaft. The book keeps the 61 W at the lower speed.
TEST(PublishedDcMachine, NoLoadCurrentGivesTheDrag) {
  Motor motor;
  motor.kind = MotorKind::BrushedDc;
  motor.torqueConstant = 0.22;
  motor.resistance = 1.03;
  motor.noLoadCurrent = 1.25;
  const double speed = 2100 * kRpm;
  // 0.22 V·s/rad is rounded: the EMF of 48.71 V at 2100 rpm gives 60.89 W, 0.22 gives 60.48 W.
  EXPECT_NEAR(convertMotor(motor)->constants.drag(speed) * speed, 0.22 * 1.25 * speed, 1e-12);
  motor.torqueConstant = (50 - 1.03 * 1.25) / speed;
  const MotorConstants machine = convertMotor(motor)->constants;
  EXPECT_NEAR(machine.torquePerAmp, 0.22, 2e-3);
  EXPECT_NEAR(machine.drag(speed) * speed, 60.89, 5e-3);
  // And the machine runs without load at 2100 rpm from 50 V again.
  EXPECT_NEAR(envelopeOf(machine, 50).noLoadSpeed, speed, 1e-9 * speed);
}

// By hand: 0.5 A at 100 rad/s and 0.9 A at 300 rad/s of 0.1 N·m/A: 0.05 and 0.09 N·m, so
// 0.03 N·m + 2e-4 N·m·s/rad; readings that fall with speed count as constant.
TEST(NoLoadCurrent, TwoReadingsSplitTheDrag) {
  Motor motor;
  motor.kind = MotorKind::BrushedDc;
  motor.torqueConstant = 0.1;
  motor.resistance = 1;
  motor.noLoadCurrent = 0.5;
  motor.noLoadSpeed = 100;
  motor.noLoadCurrent2 = 0.9;
  motor.noLoadSpeed2 = 300;
  const MotorConstants machine = convertMotor(motor)->constants;
  EXPECT_NEAR(machine.dragTorque, 0.03, 1e-15);
  EXPECT_NEAR(machine.dragDamping, 2e-4, 1e-17);
  motor.noLoadCurrent2 = 0.4;
  EXPECT_NEAR(convertMotor(motor)->constants.drag(200), 0.05, 1e-15);
  // Of a three-phase machine in the measure of its torque constant: 0.1 N·m per ampere rms.
  motor.kind = MotorKind::Sinusoidal;
  motor.noLoadCurrent2 = kUnset;
  EXPECT_NEAR(convertMotor(motor)->constants.drag(200), 0.05, 1e-15);
}

TEST(PublishedDcMachine, ShaftPowerAtSpeed) {
  const double lossPower = (50 - 1.03 * 1.25) * 1.25;
  EXPECT_NEAR(lossPower, 60.89, 5e-3);
  const double speed = 1700 * kRpm;
  const MotorConstants machine = machineOf(0.22, 1.03, lossPower / speed);
  const EnvelopeLimits limits = limitsOf(machine, 48);
  EXPECT_NEAR(limits.highestTorque(speed) * speed, 275.05, 5e-3);
}

// The same machine without load takes 1.25 A at 2100 rpm: its torque 0.22 * 1.25 is all drag.
TEST(PublishedDcMachine, NoLoadSpeedWithDrag) {
  const double constant = (50 - 1.03 * 1.25) / (2100 * kRpm);
  EXPECT_NEAR(constant, 0.22, 5e-3);
  const TorqueEnvelope envelope = envelopeOf(machineOf(constant, 1.03, constant * 1.25), 50);
  EXPECT_NEAR(envelope.noLoadSpeed / kRpm, 2100, 1e-6);
}

// Fitzgerald ex. 7.1 (FOSSEE): 125 V induced at 3000 rpm, 0.02 ohm. 128 V: 150 A, 18.75 kW,
// 59.7 N·m as motor; 124 V: 50 A, 6.25 kW, 19.9 N·m as generator.
TEST(PublishedDcMachine, MotorAndGenerator) {
  const double speed = 3000 * kRpm;
  const MotorConstants machine = machineOf(125 / speed, 0.02);
  const double driving = limitsOf(machine, 128).voltageCurrent(speed);
  EXPECT_NEAR(driving, 150, 1e-9);
  EXPECT_NEAR(machine.torquePerAmp * driving * speed, 18750, 1e-6);
  EXPECT_NEAR(limitsOf(machine, 128).highestTorque(speed), 59.7, 0.05);
  EXPECT_NEAR(limitsOf(machine, 124).voltageCurrent(speed), -50, 1e-9);
  EXPECT_NEAR(limitsOf(machine, 124).highestTorque(speed), -19.9, 0.05);
}

// Fitzgerald ex. 7.2 (FOSSEE): the same machine at 123 V taking 21.9 kW turns at 2867 rpm (2866.5
// recomputed): the speed at which a current of 21.9 kW/123 V uses up the voltage.
TEST(PublishedDcMachine, SpeedAtInputPower) {
  Variant variant;
  variant.supply.voltage = 123;
  variant.motor.currentPeak = 21.9e3 / 123;
  const auto envelope = torqueEnvelope(variant, machineOf(125 / (3000 * kRpm), 0.02), std::nullopt);
  ASSERT_TRUE(envelope.has_value());
  EXPECT_NEAR(envelope->cornerSpeed / kRpm, 2866.5, 0.05);
}

// S. P. Burman, Special Electrical Machines, ch. 4 (FOSSEE): ex. 4.1 K = 0.12, 48 V -> 3819.7 rpm
// (the companion cuts it to 3819); ex. 4.2 1 N·m at 5 A, 28 V -> 1336.9 rpm; ex. 4.4 two phases of
// 0.15 ohm in series and 2 V across the switches at 48 V -> 153.3 A and 18.4 N·m at standstill.
TEST(PublishedDcMachine, NoLoadAndStall) {
  EXPECT_NEAR(envelopeOf(machineOf(0.12, 1), 48).noLoadSpeed / kRpm, 3819.7, 0.05);
  EXPECT_NEAR(envelopeOf(machineOf(1.0 / 5, 1), 28).noLoadSpeed / kRpm, 1336.9, 0.05);
  const EnvelopeLimits stalled = limitsOf(machineOf(0.12, 0.3), 48 - 2);
  EXPECT_NEAR(stalled.voltageCurrent(0), 153.3, 0.05);
  EXPECT_NEAR(stalled.highestTorque(0), 18.4, 0.05);
}

// Burman ex. 4.4 entered as a block-commutated motor: 0.15 ohm is of one phase, two carry.
TEST(PublishedDcMachine, TwoPhasesInSeriesOfABlockCommutatedMotor) {
  Motor motor;
  motor.kind = MotorKind::Block;
  motor.torqueConstant = 0.12;
  motor.resistance = 0.15;
  motor.resistanceMeasure = WindingMeasure::Phase;
  const auto converted = convertMotor(motor);
  ASSERT_TRUE(converted.has_value());
  EXPECT_NEAR(limitsOf(converted->constants, 46).highestTorque(0), 18.4, 0.05);
}

// MIT course 2.007, notes on motors, lancet.mit.edu/motor/motors4.html (read): with a straight line
// from stall torque to no-load speed the power is highest at half of both. Power: own arithmetic.
TEST(PublishedDcMachine, MostPowerAtHalfTheNoLoadSpeed) {
  struct Row {
    double noLoadRpm, stallTorque, halfSpeed, halfTorque, digit, power;
  };
  for (const Row& row :
       {Row{600, 0.325, 300, 0.163, 5e-4 + 1e-9, 5.105},
        Row{3750, 0.0722, 1875, 0.0361, 5e-5, 7.088}, Row{92, 1.6, 46, 0.80, 5e-3, 3.854}}) {
    const double constant = 12 / (row.noLoadRpm * kRpm);
    const EnvelopeLimits limits =
        limitsOf(machineOf(constant, 12 * constant / row.stallTorque), 12);
    const double speed = row.halfSpeed * kRpm;
    const auto power = [&](double w) { return limits.highestTorque(w) * w; };
    EXPECT_NEAR(limits.highestTorque(speed), row.halfTorque, row.digit);
    EXPECT_NEAR(power(speed), row.power, 5e-4);
    EXPECT_GT(power(speed), power(speed * 1.01));
    EXPECT_GT(power(speed), power(speed * 0.99));
  }
}

// Modelica Standard Library, DCPM_withLosses (read): 100 V, 100 A, 1417.5 rpm; copper 500, core
// 200, stray 50, friction 100, brushes 50 W; 9100 W and 61.30 N·m at the shaft. Core, stray and
// friction are drag here, the brushes' 0.5 V a loss per ampere ahead of the motor.
TEST(PublishedDcMachine, LossBudget) {
  const double speed = 1417.5 * kRpm;
  const double dragPower = 200 + 50 + 100;
  const MotorConstants machine = machineOf((100 - 5 - 0.5) / speed, 0.05, dragPower / speed);
  Controller brushes;
  brushes.lossPerAmpere = 0.5;
  StageChain chain;
  chain.motorSpeed = Eigen::ArrayXd::Constant(1, speed);
  chain.motorAcceleration = Eigen::ArrayXd::Zero(1);
  chain.motorTorque = Eigen::ArrayXd::Constant(1, 9100 / speed);
  EXPECT_NEAR(chain.motorTorque[0], 61.30, 5e-3);
  Motor motor;
  motor.rotorInertia = 0.15;
  const MotorDemand demand = motorDemand(oneInstant(speed, 0), chain, motor, machine, brushes);
  EXPECT_NEAR(demand.current[0], 100, 1e-9);
  EXPECT_NEAR(demand.copperLoss[0], 500, 1e-8);
  EXPECT_NEAR(demand.dragLoss[0], 350, 1e-9);
  EXPECT_NEAR(demand.controllerLoss[0], 50, 1e-9);
  EXPECT_NEAR(demand.supplyPower[0], 100 * 100, 1e-6);
}

// Its sibling without losses: 95.0 V induced at 1425 rpm, 9500 W, 63.66 N·m; 157.080 rad/s without
// load.
TEST(PublishedDcMachine, LossFreeSibling) {
  const double speed = 1425 * kRpm;
  const MotorConstants machine = machineOf(95 / speed, 0.05);
  EXPECT_NEAR(machine.torquePerAmp, 0.636620, 5e-7);
  EXPECT_NEAR(limitsOf(machine, 100).highestTorque(speed), 63.66, 5e-3);
  EXPECT_NEAR(limitsOf(machine, 100).highestTorque(speed) * speed, 9500, 1e-8);
  EXPECT_NEAR(envelopeOf(machine, 100).noLoadSpeed, 157.080, 5e-4);
}

}  // namespace
}  // namespace jw

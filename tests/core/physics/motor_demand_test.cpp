// What the cycle asks of motor, controller and supply, by hand.
#include <cmath>
#include <numbers>

#include <gtest/gtest.h>

#include "core/physics/motor_demand.h"
#include "tests/core/physics/hand_cycle.h"

namespace jw {
namespace {

/// Two instants of 1 s and 3 s: speeding up at 100 rad/s, then braking at -50 rad/s.
struct Demand : testing::Test {
  const SampledCycle cycle =
      handCycle(Eigen::Array2d(100, -50), Eigen::Array2d(200, 80), Eigen::Array2d(1, 3));
  StageChain chain;
  Motor motor;
  MotorConstants machine{.torquePerAmp = 0.1,
                         .emfPerSpeed = 0.1 / 1.5,
                         .resistance = 0.4,
                         .dragTorque = 0.02,
                         .dragDamping = 1e-4};
  Controller controller;

  Demand() {
    chain.motorSpeed = cycle.speed;
    chain.motorAcceleration = cycle.acceleration;
    chain.motorTorque = Eigen::Array2d(0.5, 0.3);
    motor.rotorInertia = 4e-4;
    motor.brakeInertia = 1e-4;
    controller.idlePower = 4;
    controller.lossPerAmpere = 0.6;
    controller.lossResistance = 0.05;
  }

  MotorDemand demand() const { return motorDemand(cycle, chain, motor, machine, controller); }
};

// 0.5 + 5e-4 * 200 = 0.6 and 0.3 + 5e-4 * 80 = 0.34 N·m at the shaft; drag 0.02 + 1e-4 |w| with the
// sign of the speed: 0.03 and -0.025; amplitudes 6.3 and 3.15 A.
TEST_F(Demand, TorqueAndCurrent) {
  EXPECT_NEAR(demand().torque[0], 0.6, 1e-15);
  EXPECT_NEAR(demand().torque[1], 0.34, 1e-15);
  EXPECT_NEAR(demand().current[0], 6.3, 1e-13);
  EXPECT_NEAR(demand().current[1], 3.15, 1e-13);
}

// Copper 1.5 * 0.4 * 6.3² = 23.814 W; drag 3 and 1.25 W; the rotor's own power is no shaft power.
TEST_F(Demand, Losses) {
  EXPECT_NEAR(demand().copperLoss[0], 23.814, 1e-12);
  EXPECT_NEAR(demand().dragLoss[0], 3, 1e-14);
  EXPECT_NEAR(demand().dragLoss[1], 1.25, 1e-14);
  EXPECT_NEAR(demand().shaftPower[0], 50, 1e-13);
  EXPECT_NEAR(demand().shaftPower[1], -15, 1e-13);
}

// 6.3 A is 4.4548 A rms: 4 + 0.6 * 4.4548 + 0.05 * 4.4548² = 7.6651 W in the controller. Electrical
// 60 + 3 + 23.814 = 86.814 W, from the supply 94.479 W; braking returns -17 + 1.25 + 5.9535 +
// 4 + 0.6 * 2.2274 + 0.05 * 2.2274² = -4.212 W.
TEST_F(Demand, ControllerAndSupply) {
  EXPECT_NEAR(demand().controllerLoss[0], 7.6651, 5e-5);
  EXPECT_NEAR(demand().motorPower[0], 86.814, 1e-12);
  EXPECT_NEAR(demand().supplyPower[0], 94.479, 5e-4);
  EXPECT_NEAR(demand().supplyPower[1], -4.212, 5e-4);
}

// Electrical power once more from the equivalent circuit: 1.5 i (R i + lambda p w).
TEST_F(Demand, EquivalentCircuitAgrees) {
  for (int k = 0; k < 2; ++k) {
    const double i = demand().current[k];
    const double power = 1.5 * i * (machine.resistance * i + machine.emfPerSpeed * cycle.speed[k]);
    EXPECT_NEAR(demand().motorPower[k], power, 1e-12);
  }
}

TEST_F(Demand, RootMeanSquares) {
  EXPECT_NEAR(demand().torqueRms, std::sqrt((0.6 * 0.6 + 3 * 0.34 * 0.34) / 4), 1e-15);
  EXPECT_NEAR(demand().speedRms, std::sqrt((1e4 + 3 * 2500) / 4), 1e-12);
  EXPECT_NEAR(demand().currentRms,
              std::sqrt((6.3 * 6.3 + 3 * 3.15 * 3.15) / 4) / std::numbers::sqrt2, 1e-13);
}

}  // namespace
}  // namespace jw

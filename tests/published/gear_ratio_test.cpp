// Ratios, reflected inertias and efficiencies of textbook drives against the chain.
// FOSSEE = textbook companions of the FOSSEE project, where the books' examples were read
// second-hand.
#include <cmath>
#include <numbers>

#include <gtest/gtest.h>
#include <boost/math/tools/minima.hpp>

#include "core/physics/stage_chain.h"
#include "tests/core/physics/hand_cycle.h"

namespace jw {
namespace {

constexpr double kRpm = std::numbers::pi / 30;

/// One reduction between a motor and an inertia with a constant torque.
struct Drive {
  double motorInertia = 0;
  double loadInertia = 0;
  double loadTorque = 0;
  double ratio = 1;
  double efficiency = 1;
  double backdriving = 1;

  /// Torque at the motor [N·m] to move the load at `speed` [rad/s] and `acceleration` [rad/s²].
  double motorTorque(double speed, double acceleration) const {
    Stage stage;
    stage.ratio = ratio;
    stage.efficiency = efficiency;
    stage.backdrivingEfficiency = backdriving;
    const Eigen::ArrayXd torque =
        Eigen::ArrayXd::Constant(1, loadInertia * acceleration + loadTorque);
    const auto chain = reflectThroughChain({stage}, oneInstant(speed, acceleration), torque, 0);
    EXPECT_TRUE(chain.has_value());
    return chain->motorTorque[0] + motorInertia * chain->motorAcceleration[0];
  }

  /// Load acceleration [rad/s²] that a motor torque gives at `speed`; torque is linear in it as
  /// long as the power keeps its direction, so two of one sign suffice.
  double acceleration(double torque, double speed, double probe) const {
    const double a = motorTorque(speed, probe);
    const double slope = (motorTorque(speed, probe * (1 + 1e-3)) - a) / (probe * 1e-3);
    return probe + (torque - a) / slope;
  }
};

// Khurmi and Gupta, Theory of Machines, ex. 3.14 (FOSSEE): motor 100 N·m and 2 kg·m², load
// 32 kg·m²: fastest with ratio sqrt(32/2) = 4; the load then accelerates with 6.25, the motor with
// 25 rad/s².
TEST(PublishedGearRatio, FastestPureInertia) {
  const auto loadAcceleration = [](double ratio) {
    return Drive{.motorInertia = 2, .loadInertia = 32, .ratio = ratio}.acceleration(100, 1, 1);
  };
  const auto [ratio, negative] = boost::math::tools::brent_find_minima(
      [&](double n) { return -loadAcceleration(n); }, 0.5, 40.0, 40);
  EXPECT_NEAR(ratio, 4, 1e-5);
  EXPECT_NEAR(-negative, 6.25, 1e-9);
  EXPECT_NEAR(4 * loadAcceleration(4), 25, 1e-9);
}

// Khurmi and Gupta ex. 3.17 (FOSSEE): motor 0.6, machine 45 kg·m², 100 N·m, efficiency 0.95, ratio
// 9. Steady at 160 rpm 1764 W; 30 N·m at the motor speed the machine up with 1.7166 rad/s²,
// 0 to 60 rpm in 3.66 s.
TEST(PublishedGearRatio, MachineWithLossyGear) {
  const Drive drive{
      .motorInertia = 0.6, .loadInertia = 45, .loadTorque = 100, .ratio = 9, .efficiency = 0.95};
  const double speed = 160 * kRpm;
  EXPECT_NEAR(drive.motorTorque(speed, 0) * 9 * speed, 1764, 0.5);
  const double acceleration = drive.acceleration(30, 1, 1);
  EXPECT_NEAR(acceleration, 1.7166, 5e-5);
  EXPECT_NEAR(60 * kRpm / acceleration, 3.66, 5e-3);
}

/// A mass on a drum drives a shaft `ratio` times faster through the gear, nothing else acts.
double fallingAcceleration(double gravity, double mass, double radius, double drumInertia,
                           double fastInertia, double ratio, double efficiency) {
  const Drive drive{.motorInertia = fastInertia,
                    .loadInertia = drumInertia + mass * radius * radius,
                    .loadTorque = -mass * gravity * radius,
                    .ratio = ratio,
                    .backdriving = efficiency};
  return drive.acceleration(0, 1, 0.01) * radius;
}

// Khurmi and Gupta ex. 3.13 (FOSSEE): 75 kg on a drum of radius 0.3 m, 100 kg·m² on the drum's
// shaft, 5 on one 6 times faster: 0.231 m/s² without loss, 0.216 with efficiency 0.9. The load
// drives here. Recomputed 0.230924 and 0.215868.
TEST(PublishedGearRatio, FallingMassDrives) {
  EXPECT_NEAR(fallingAcceleration(9.81, 75, 0.3, 100, 5, 6, 1), 0.230924, 5e-7);
  EXPECT_NEAR(fallingAcceleration(9.81, 75, 0.3, 100, 5, 6, 0.9), 0.215868, 5e-7);
}

// T. Bevan, The Theory of Machines, ch. 2 ex. 10 (FOSSEE): 150 lb, radius 8 in, 200 and 15 lb·ft²,
// ratio 5, 32.2 ft/s²: 3.35 and 3.14 ft/s² (3.3455 and 3.1415 recomputed). In feet and pounds.
TEST(PublishedGearRatio, FallingMassInFeetAndPounds) {
  EXPECT_NEAR(fallingAcceleration(32.2, 150, 8.0 / 12, 200, 15, 5, 1), 3.3455, 5e-5);
  EXPECT_NEAR(fallingAcceleration(32.2, 150, 8.0 / 12, 200, 15, 5, 0.9), 3.1415, 5e-5);
}

// G. K. Dubey, Fundamentals of Electrical Drives, ex. 2.1 (FOSSEE): motor 0.2 kg·m² at 1420 rpm;
// 10 kg·m² and 10 N·m behind ratio 10, efficiency 0.9; 1000 kg lifted at 1.5 m/s, efficiency 0.85:
// 0.4018 kg·m² and 117.53 N·m at the motor.
TEST(PublishedGearRatio, HoistReferredToTheMotor) {
  const double speed = 1420 * kRpm;
  const double drum = speed / 1.5;  // motor speed over hoisting speed, as with a drum of radius 1 m
  const Drive table{.loadInertia = 10, .loadTorque = 10, .ratio = 10, .efficiency = 0.9};
  const Drive hoist{.loadInertia = 1000, .loadTorque = 9810, .ratio = drum, .efficiency = 0.85};
  EXPECT_NEAR(table.motorTorque(speed / 10, 0) + hoist.motorTorque(1.5, 0), 117.53, 5e-3);
  double inertia = 0.2;
  for (const Drive& drive : {table, hoist}) {
    Stage stage;
    stage.ratio = drive.ratio;
    stage.efficiency = drive.efficiency;
    const auto chain =
        reflectThroughChain({stage}, oneInstant(1, 0), Eigen::ArrayXd::Zero(1), drive.loadInertia);
    inertia += chain->inertiaAtMotor;
  }
  EXPECT_NEAR(inertia, 0.4018, 5e-5);
}

// Least motor torque J_m N a + (J_L a + T_L)/N with J_L = 1.4, J_m = 8e-5, a = 6, T_L = 12: NLopt
// found N = 206.155283 and GSL 206.155282 (run for this test); closed form
// sqrt((J_L + T_L/a)/J_m) = 206.155281, torque 0.197909070 N·m.
TEST(PublishedGearRatio, LeastTorqueWithConstantLoad) {
  const auto torque = [](double ratio) {
    return Drive{.motorInertia = 8e-5, .loadInertia = 1.4, .loadTorque = 12, .ratio = ratio}
        .motorTorque(1, 6);
  };
  const auto [ratio, least] = boost::math::tools::brent_find_minima(torque, 10.0, 1000.0, 50);
  EXPECT_NEAR(ratio, 206.155283, 1e-4);
  EXPECT_NEAR(least, 0.197909070, 5e-10);
  EXPECT_NEAR(std::sqrt((1.4 + 12.0 / 6) / 8e-5), 206.155281, 5e-7);
}

// Lynch and Park, Modern Robotics, section 8.9 (read second-hand): an ideal gearhead multiplies
// torque by G, divides speed by G, and the rotor appears at the joint as G² J.
TEST(PublishedGearRatio, HundredToOne) {
  const Drive drive{.motorInertia = 3e-5, .loadTorque = 50, .ratio = 100};
  EXPECT_NEAR(drive.motorTorque(2, 0), 0.5, 1e-15);
  EXPECT_NEAR(drive.motorTorque(2, 7) - drive.motorTorque(2, 0), 3e-5 * 100 * 7, 1e-15);
  Stage stage;
  stage.ratio = 100;
  stage.efficiency = 1;
  const auto chain = reflectThroughChain({stage}, oneInstant(2, 7), Eigen::ArrayXd::Zero(1), 5);
  EXPECT_NEAR(chain->motorSpeed[0], 200, 1e-12);
  EXPECT_NEAR(chain->motorAcceleration[0], 700, 1e-12);
  EXPECT_NEAR(chain->inertiaAtMotor, 5e-4, 1e-18);
}

// Modelica Standard Library, LossyGearDemo1, and the published reference trace (read): ratio 2,
// mesh efficiency 0.5 both ways, J_a = 1, J_b = 1.5 kg·m², 10 sin(2 pi t) on a, -10 + 2.5 t on b.
struct LossyGear : testing::Test {
  const Drive drive{
      .motorInertia = 1, .loadInertia = 1.5, .ratio = 2, .efficiency = 0.5, .backdriving = 0.5};

  /// The torque on b is the load's, against its motion when positive; T_a = J_eff a + share T_load.
  double effectiveInertia(double speed, double load, double acceleration) const {
    Drive loaded = drive;
    loaded.loadTorque = load;
    return (loaded.motorTorque(speed, acceleration) - loaded.motorTorque(speed, 0)) / acceleration;
  }
};

// By hand: backward 9.5 w_b' = T_b + 4 T_a, forward 3.5 w_b' = T_b + T_a. For the torque at a that
// is 9.5/4 and 3.5/1 per unit of acceleration, and 1/4 and 1 of the load.
TEST_F(LossyGear, EffectiveInertiasOfBothDirections) {
  EXPECT_NEAR(4 * effectiveInertia(-1, 10, -0.5), 9.5, 1e-12);
  EXPECT_NEAR(1 * effectiveInertia(+1, 10, 0.5), 3.5, 1e-12);
  Drive loaded = drive;
  loaded.loadTorque = 10;
  EXPECT_NEAR(loaded.motorTorque(-1, 0), 10.0 / 4, 1e-12);
  EXPECT_NEAR(loaded.motorTorque(+1, 0), 10.0, 1e-12);
}

// Trace: w_b(0.049 s) = -0.0197533 rad/s on the way backward from rest, and the gear sticks at
// t = 0.08048 s, where w_b is 0 again. Backward w_b = ∫ (T_b + 4 T_a)/9.5 dt in closed form, the
// factors taken from the chain.
TEST_F(LossyGear, BackwardPartOfTheReferenceTrace) {
  const double inertia = effectiveInertia(-1, 10, -0.5);
  Drive loaded = drive;
  loaded.loadTorque = 1;
  const double share = loaded.motorTorque(-1, 0);
  const auto speedAt = [&](double t) {
    const double fromA = 10 * (1 - std::cos(2 * std::numbers::pi * t)) / (2 * std::numbers::pi);
    return (fromA + share * (-10 * t + 1.25 * t * t)) / inertia;
  };
  EXPECT_NEAR(speedAt(0.049), -0.0197533, 5e-8);
  EXPECT_NEAR(speedAt(0.08048), 0, 2e-5);
}

// Trace: it breaks away forward at t = 0.1995199 s, when T_a alone can drive b: T_b + T_a = 0.
TEST_F(LossyGear, ForwardBreakAway) {
  Drive loaded = drive;
  const double t = 0.1995199;
  loaded.loadTorque = 10 - 2.5 * t;
  EXPECT_NEAR(loaded.motorTorque(+1, 0), 10 * std::sin(2 * std::numbers::pi * t), 1e-5);
}

// With only the forward efficiency of 0.5 known, 2 - 1/0.5 = 0: the estimate says it locks itself.
TEST_F(LossyGear, EstimateOfBackdrivingLocks) {
  Stage stage;
  stage.ratio = 2;
  stage.efficiency = 0.5;
  const auto efficiency = stageEfficiency(stage, "transmission[0]");
  ASSERT_TRUE(efficiency.has_value());
  EXPECT_TRUE(efficiency->backdrivingEstimated);
  EXPECT_TRUE(efficiency->selfLocking());
}

}  // namespace
}  // namespace jw

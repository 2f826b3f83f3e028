// The academic six-axis benchmark arm "Puma 560": parameters of Corke and Armstrong-Helouvry (IEEE
// ICRA 1994, pp. 1608-1613) as coded in the open Robotics Toolbox for Python (MIT licence,
// models/DH/Puma560.py and tests/test_DHRobot.py, read). Outer links locked, each joint must show
// the published gravity torque, inertia and friction.
#include <array>
#include <cmath>
#include <numbers>

#include <gtest/gtest.h>
#include <kdl/chain.hpp>

#include "core/physics/load_torque.h"
#include "core/physics/motor_demand.h"
#include "tests/core/physics/hand_cycle.h"
#include "tests/published/planar_arm.h"

namespace jw {
namespace {

constexpr double kPi = std::numbers::pi;
constexpr double kRight = kPi / 2;

/// Standard Denavit-Hartenberg row; r and I in the link's frame, I about the centre of mass.
struct Link {
  double d, a, alpha, mass;
  std::array<double, 3> centre, inertia;
  double rotorInertia, ratio, viscous, coulomb;  ///< of the motor; Coulomb for positive joint speed
};

constexpr std::array<Link, 6> kArm{{
    {0.67183, 0, kRight, 0, {0, 0, 0}, {0, 0.35, 0}, 200e-6, -62.6111, 1.48e-3, 0.395},
    {0,
     0.4318,
     0,
     17.4,
     {-0.3638, 0.006, 0.2275},
     {0.13, 0.524, 0.539},
     200e-6,
     107.815,
     0.817e-3,
     0.126},
    {0.15005,
     0.0203,
     -kRight,
     4.8,
     {-0.0203, -0.0141, 0.070},
     {0.066, 0.086, 0.0125},
     200e-6,
     -53.7063,
     1.38e-3,
     0.132},
    {0.4318,
     0,
     kRight,
     0.82,
     {0, 0.019, 0},
     {1.8e-3, 1.3e-3, 1.8e-3},
     33e-6,
     76.0364,
     71.2e-6,
     11.2e-3},
    {0, 0, -kRight, 0.34, {0, 0, 0}, {0.3e-3, 0.4e-3, 0.3e-3}, 33e-6, 71.923, 82.6e-6, 9.26e-3},
    {0, 0, 0, 0.09, {0, 0, 0.032}, {0.15e-3, 0.15e-3, 0.04e-3}, 33e-6, 76.686, 36.7e-6, 3.96e-3},
}};
constexpr std::array<double, 6> kPose{0, kPi / 4, kPi, 0, kPi / 4, 0};

KDL::RigidBodyInertia bodyOf(const Link& link) {
  return KDL::RigidBodyInertia(
      link.mass, KDL::Vector(link.centre[0], link.centre[1], link.centre[2]),
      KDL::RotationalInertia(link.inertia[0], link.inertia[1], link.inertia[2]));
}

/// All links from joint `first` (0-based) outwards as one body, in the frame of that joint before
/// it turns: its axis is z.
KDL::RigidBodyInertia outerBody(std::size_t first) {
  KDL::RigidBodyInertia body = KDL::RigidBodyInertia::Zero();
  KDL::Frame frame = KDL::Frame::Identity();
  for (std::size_t k = first; k < kArm.size(); ++k) {
    frame = frame * KDL::Frame::DH(kArm[k].a, kArm[k].alpha, kArm[k].d, kPose[k]);
    body = body + frame * bodyOf(kArm[k]);
  }
  return body;
}

/// The joint's load with the outer links locked at the pose. Joint 1 is vertical, 2 and 3 are
/// horizontal, and the x axis of joint 3 stands at the angle of joint 2 above the horizontal.
Load loadOfJoint(std::size_t joint) {
  const double tilt = joint == 2 ? kPose[1] : 0;
  Load load = loadOf(outerBody(joint), tilt);
  if (joint == 0) load.axisTilt = kRight;
  return load;
}

/// Torque [N·m] at the motor for one instant, and the drag there.
struct Instant {
  double motorTorque, drag;
};

Instant instantOf(std::size_t joint, double speed, double acceleration) {
  const Link& link = kArm[joint];
  Cycle source;
  source.segments.resize(1);
  const SampledCycle cycle = oneInstant(speed, acceleration);
  Stage stage;
  stage.ratio = std::abs(link.ratio);
  stage.reverses = link.ratio < 0;
  stage.efficiency = 1;
  const Eigen::ArrayXd torque = loadTorque(cycle, source, loadOfJoint(joint)).total;
  const auto chain = reflectThroughChain({stage}, cycle, torque, 0);
  Motor motor;
  motor.rotorInertia = link.rotorInertia;
  MotorConstants constants;
  constants.torquePerAmp = 1;
  constants.dragTorque = link.coulomb;
  constants.dragDamping = link.viscous;
  const MotorDemand demand = motorDemand(cycle, *chain, motor, constants, {});
  return {demand.torque[0], demand.current[0] - demand.torque[0]};
}

// Published gravity torques at the pose: 0, 31.6399, 6.0351, 0, 0.0283, 0 N·m.
TEST(Puma560, GravityTorque) {
  EXPECT_NEAR(staticTorque(loadOfJoint(0), 0, 0), 0, 1e-14);
  EXPECT_NEAR(staticTorque(loadOfJoint(1), 0, 0), 31.6399, 5e-5);
  EXPECT_NEAR(staticTorque(loadOfJoint(2), 0, 0), 6.0351, 5e-5);
}

// Published diagonal of the mass matrix: 3.6594, 4.4137, 0.9378, 0.1925, 0.1713, 0.1941 kg·m²,
// rotors included; the rotors alone G² J: 0.784030, 2.324815, 0.576873, 0.190791, 0.170706,
// 0.194065 (own arithmetic).
TEST(Puma560, InertiaOfEachJoint) {
  const double published[] = {3.6594, 4.4137, 0.9378, 0.1925, 0.1713, 0.1941};
  const double rotor[] = {0.784030, 2.324815, 0.576873, 0.190791, 0.170706, 0.194065};
  for (std::size_t joint = 0; joint < 6; ++joint) {
    const double perUnit =
        (instantOf(joint, 1, 1).motorTorque - instantOf(joint, 1, 0).motorTorque) *
        kArm[joint].ratio;
    EXPECT_NEAR(perUnit, published[joint], 5e-5) << "joint " << joint + 1;
    EXPECT_NEAR(perUnit - outerBody(joint).getRotationalInertia().data[8], rotor[joint], 5e-7);
  }
}

// Friction at the joint for +1 rad/s, G² B + |G| T_c: 30.5332, 23.0816, 11.0697, 1.26325, 1.09329,
// 0.519500 N·m (published torques less their frictionless part).
TEST(Puma560, FrictionOnTheMotorSide) {
  const double expected[] = {30.5332, 23.0816, 11.0697, 1.26325, 1.09329, 0.519500};
  for (std::size_t joint = 0; joint < 6; ++joint) {
    EXPECT_NEAR(instantOf(joint, 1, 0).drag * kArm[joint].ratio, expected[joint],
                joint < 3 ? 5.1e-5 : 5.1e-6);
  }
}

// From the toolbox's own friction test: G = 2, B = 3, T_c = 2 forward and 1 backward; 1, 2, 3, 4
// and 10 rad/s need 16, 28, 40, 52 and 124 N·m, -10 rad/s needs -122.
TEST(Puma560, FrictionOfTheUnitTest) {
  MotorConstants machine;
  machine.dragTorque = 2;
  machine.dragDamping = 3;
  for (const auto& [speed, torque] : {std::pair{1, 16}, {2, 28}, {3, 40}, {4, 52}, {10, 124}}) {
    EXPECT_NEAR(2 * machine.drag(2 * speed), torque, 1e-12);
  }
  machine.dragTorque = 1;
  EXPECT_NEAR(2 * machine.drag(2 * -10), -122, 1e-12);
}

}  // namespace
}  // namespace jw

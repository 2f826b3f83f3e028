// Static balance by springs, and single joints of a spatial arm, against sources outside.
#include <cmath>
#include <numbers>

#include <gtest/gtest.h>

#include <kdl/chain.hpp>
#include <kdl/chainidsolver_recursive_newton_euler.hpp>

#include "core/motion/cycle_reading.h"
#include "core/physics/load_torque.h"
#include "tests/published/planar_arm.h"

namespace jw {
namespace {

constexpr double kPi = std::numbers::pi;

/// 4 kg at 0.35 m and a spring whose eyes stand 0.1 m on the link and 0.25 m straight above.
Load balancedLoad() {
  Load load;
  load.inertia = 0.5;
  load.linkMass = 4, load.linkDistance = 0.35;
  load.extensionArm = 0.1, load.extensionPost = 0.25;
  load.extensionRate = 4 * load.gravity * 0.35 / (0.1 * 0.25);
  load.extensionFreeLength = 0;
  return load;
}

// A spring of zero free length with k a b = m g r, its fixed eye straight above the axis, balances
// at every angle (textbook result, from memory). A real spring
// acts so if its preload is k times its free length.
TEST(SpringBalance, ZeroFreeLengthBalancesAtEveryAngle) {
  Load load = balancedLoad();
  for (const double freeLength : {0.0, 0.12}) {
    load.extensionFreeLength = freeLength;
    load.extensionPreload = load.extensionRate * freeLength;
    for (double q = -kPi; q <= kPi; q += 0.05) {
      if (freeLength == 0 || std::abs(q - kPi / 2) > 0.6) {  // else shorter than its coils
        EXPECT_NEAR(staticTorque(load, q, 0), 0, 1e-12) << q;
      }
    }
  }
}

// Own, by hand: half the rate leaves half the weight, m g r cos(q) / 2.
TEST(SpringBalance, HalfTheRateBalancesHalf) {
  Load load = balancedLoad();
  load.extensionRate /= 2;
  for (double q = -kPi; q <= kPi; q += 0.3) {
    EXPECT_NEAR(staticTorque(load, q, 0), 2 * load.gravity * 0.35 * std::cos(q), 1e-12);
  }
}

/// Two moves there and back, with a dwell.
Cycle thereAndBack() {
  Cycle cycle;
  cycle.samples = 20'000;
  cycle.startAngle = -0.4;
  for (const double travel : {1.9, 0.0, -1.9}) {
    Segment segment;
    segment.law = travel == 0 ? MotionLaw::Dwell : MotionLaw::Polynomial345;
    segment.travel = travel;
    segment.duration = 0.8;
    cycle.segments.push_back(segment);
  }
  return cycle;
}

// First law: over a closed cycle inertia, gravity and springs give back what they took, so the
// joint's work is the friction loss plus the work of external torques (own identity).
TEST(SpringBalance, WorkOverAClosedCycleIsFrictionPlusExternal) {
  Load load = balancedLoad();
  load.extensionFreeLength = 0.2, load.extensionPreload = 15;
  load.springStiffness = 6, load.springAngle = 0.3, load.balanceTorque = 2;
  load.mounting = Mounting::Direction;
  load.downX = 0.5, load.downY = -1, load.downZ = 2;
  load.masses.resize(1);
  load.masses[0].mass = 2, load.masses[0].x = -0.1, load.masses[0].y = 0.3;
  load.coulombFriction = 1, load.viscousFriction = 0.4;
  load.breakawayFriction = 2.5, load.stribeckSpeed = 0.15;
  load.externalTorque = 0.7;
  load.externalOver = ExternalOver::Time;
  load.externalTable = "0.3 s 0 N*m; 0.5 s 9 N*m; 2 s -4 N*m";
  const Cycle source = thereAndBack();
  const SampledCycle cycle = *sampleCycle(source);
  const LoadTorque torque = loadTorque(cycle, source, load);
  const auto work = [&](const Eigen::ArrayXd& part) {
    return (cycle.weight * part * cycle.speed).sum();
  };
  EXPECT_GT(work(torque.friction), 3);
  EXPECT_GT(work(torque.external), 1);
  EXPECT_NEAR(work(torque.total), work(torque.friction) + work(torque.external), 1e-9);
  EXPECT_NEAR(work(torque.spring), 0, 1e-9);
  EXPECT_NEAR(work(torque.gravity), 0, 1e-9);
}

// Over an angle a torque is conservative on the way there and back: no net work.
TEST(SpringBalance, TableOverAngleGivesBackItsWork) {
  Load load;
  load.inertia = 1;
  load.externalOver = ExternalOver::Angle;
  load.externalTable = "-30 deg 1 N*m; 10 deg 20 N*m; 60 deg -5 N*m; 100 deg 3 N*m";
  const Cycle source = thereAndBack();
  const SampledCycle cycle = *sampleCycle(source);
  const LoadTorque torque = loadTorque(cycle, source, load);
  EXPECT_NEAR((cycle.weight * torque.total * cycle.speed).sum(), 0, 1e-6);
}

// Orocos KDL: a body of full inertia tensor on a single joint about z, gravity from any side,
// against the masses listed in the load.
TEST(SingleJoint, AgreesWithKdlForAnyMounting) {
  const KDL::RigidBodyInertia one(2, KDL::Vector(0.4, 0.1, 0.05),
                                  KDL::RotationalInertia(0.02, 0.03, 0.01, 1e-3, 2e-3, -1e-3));
  const KDL::RigidBodyInertia two(3, KDL::Vector(-0.2, 0.3, -0.2),
                                  KDL::RotationalInertia(0.01, 0.01, 0.02));
  KDL::Chain chain;
  chain.addSegment(KDL::Segment(KDL::Joint(KDL::Joint::RotZ), KDL::Frame::Identity(), one + two));
  Load load;
  load.masses.resize(2);
  load.masses[0].mass = 2, load.masses[0].x = 0.4, load.masses[0].y = 0.1;
  load.masses[0].inertia = 0.01;
  load.masses[1].mass = 3, load.masses[1].x = -0.2, load.masses[1].y = 0.3;
  load.masses[1].inertia = 0.02;
  load.mounting = Mounting::Direction;
  const Cycle source = thereAndBack();
  SampledCycle cycle = *sampleCycle(source);
  for (const KDL::Vector& down : {KDL::Vector(0, -1, 0), KDL::Vector(0.3, -0.5, 2),
                                  KDL::Vector(-4, 1, 0), KDL::Vector(0, 0, -1)}) {
    load.downX = down.x(), load.downY = down.y(), load.downZ = down.z();
    const Eigen::ArrayXd found = loadTorque(cycle, source, load).total;
    for (Eigen::Index i = 0; i < cycle.size(); i += 97) {
      KDL::JntArray q(1), qd(1), qdd(1);
      q(0) = cycle.angle[i], qd(0) = cycle.speed[i], qdd(0) = cycle.acceleration[i];
      EXPECT_NEAR(found[i], torques(chain, q, qd, qdd, down / down.Norm() * load.gravity)(0),
                  1e-10);
    }
  }
}

}  // namespace
}  // namespace jw

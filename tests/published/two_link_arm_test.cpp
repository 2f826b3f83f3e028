// A planar two-link arm against the inverse dynamics of Orocos KDL 1.5.1, run live, and against the
// numbers that KDL gave for the same arm before (kept here so that a change of the library shows).
#include <cmath>
#include <numbers>

#include <gtest/gtest.h>

#include "core/motion/cycle_reading.h"
#include "core/physics/load_torque.h"
#include "core/physics/motor_demand.h"
#include "tests/core/physics/hand_cycle.h"
#include "tests/published/planar_arm.h"

namespace jw {
namespace {

constexpr double kPi = std::numbers::pi;

/// The trajectory of the kept numbers: from (0.2, 0.6) by (+1.2, -1.9) rad in 2 s, sine
/// acceleration.
struct BothJoints {
  static constexpr Eigen::Index kPoints = 2001;
  static constexpr double kDuration = 2;

  SampledCycle first, second;  ///< the two joints' motions
  Eigen::ArrayXd torque1, torque2;

  explicit BothJoints(const PlanarArm& arm) : first(joint(1.2)), second(joint(-1.9)) {
    first.angle += 0.2;
    second.angle += 0.6;
    torque1.resize(kPoints);
    torque2.resize(kPoints);
    const KDL::Chain chain = arm.chain();
    for (Eigen::Index i = 0; i < kPoints; ++i) {
      const KDL::JntArray t = torques(
          chain, joints(first.angle[i], second.angle[i]), joints(first.speed[i], second.speed[i]),
          joints(first.acceleration[i], second.acceleration[i]), PlanarArm::gravity());
      torque1[i] = t(0);
      torque2[i] = t(1);
    }
  }

  /// s = u - sin(2 pi u)/(2 pi) and its derivatives; trapezoidal weights.
  static SampledCycle joint(double travel) {
    const Eigen::ArrayXd u = Eigen::ArrayXd::LinSpaced(kPoints, 0, 1);
    Eigen::ArrayXd weight = Eigen::ArrayXd::Constant(kPoints, kDuration / (kPoints - 1));
    weight[0] = weight[kPoints - 1] = kDuration / (kPoints - 1) / 2;
    SampledCycle cycle =
        handCycle(travel / kDuration * (1 - (2 * kPi * u).cos()),
                  travel * 2 * kPi / (kDuration * kDuration) * (2 * kPi * u).sin(), weight);
    cycle.angle = travel * (u - (2 * kPi * u).sin() / (2 * kPi));
    return cycle;
  }
};

PlanarArm withRotors() {
  PlanarArm arm;
  arm.rotor1 = 8e-5 * 100 * 100;
  arm.rotor2 = 3e-5 * 80 * 80;
  return arm;
}

void expectKept(const BothJoints& arm, const double (&rows)[5][2], const double (&rms)[2],
                const double (&peak)[2]) {
  for (int k = 0; k < 5; ++k) {
    EXPECT_NEAR(arm.torque1[k * 500], rows[k][0], 5e-9);
    EXPECT_NEAR(arm.torque2[k * 500], rows[k][1], 5e-9);
  }
  EXPECT_NEAR(cycleRms(arm.first, arm.torque1), rms[0], 1e-8);
  EXPECT_NEAR(cycleRms(arm.second, arm.torque2), rms[1], 1e-8);
  EXPECT_NEAR(arm.torque1.abs().maxCoeff(), peak[0], 5e-9);
  EXPECT_NEAR(arm.torque2.abs().maxCoeff(), peak[1], 5e-9);
}

TEST(TwoLinkArm, LibraryGivesTheKeptNumbers) {
  expectKept(BothJoints(PlanarArm{}),
             {{23.938975058, 3.075611768},
              {25.346545466, 3.557132652},
              {18.733012744, 3.863924844},
              {8.497021196, 4.233488474},
              {8.010655436, 4.392445888}},
             {18.655582227, 3.876274777}, {25.458902673, 4.398650024});
}

TEST(TwoLinkArm, LibraryGivesTheKeptNumbersWithRotors) {
  expectKept(BothJoints(withRotors()),
             {{23.938975058, 3.075611768},
              {26.854509940, 2.984106152},
              {18.733012744, 3.863924844},
              {6.989056722, 4.806514974},
              {8.010655436, 4.392445888}},
             {19.066641392, 3.927524372}, {26.930058791, 4.868286221});
}

/// Joint torque [N·m] that the motor gives when KDL's torque without rotors is what the chain
/// drives.
SampledCycle motion(const BothJoints& arm, int joint) {
  return joint == 1 ? arm.first : arm.second;
}

Eigen::ArrayXd torqueThroughChain(const SampledCycle& cycle, const Eigen::ArrayXd& torque,
                                  double ratio, double rotorInertia) {
  Stage stage;
  stage.ratio = ratio;
  stage.efficiency = 1;
  const auto chain = reflectThroughChain({stage}, cycle, torque, 0);
  Motor motor;
  motor.rotorInertia = rotorInertia;
  MotorConstants constants;
  constants.torquePerAmp = 1;
  return motorDemand(cycle, *chain, motor, constants, {}).torque * ratio;
}

// The coupled motion of both joints: our reduction and rotor on KDL's rotor-free torque must give
// what KDL gives with the rotors in its joints, and the kept rms and peak.
TEST(TwoLinkArm, RotorsThroughTheChainOnTheCoupledMotion) {
  const BothJoints bare{PlanarArm{}};
  const BothJoints full(withRotors());
  const Eigen::ArrayXd first = torqueThroughChain(motion(bare, 1), bare.torque1, 100, 8e-5);
  const Eigen::ArrayXd second = torqueThroughChain(motion(bare, 2), bare.torque2, 80, 3e-5);
  EXPECT_LT((first - full.torque1).abs().maxCoeff(), 1e-12);
  EXPECT_LT((second - full.torque2).abs().maxCoeff(), 1e-12);
  EXPECT_NEAR(cycleRms(bare.first, first), 19.066641392, 1e-8);
  EXPECT_NEAR(cycleRms(bare.second, second), 3.927524372, 1e-8);
  EXPECT_NEAR(first.abs().maxCoeff(), 26.930058791, 5e-9);
  EXPECT_NEAR(second.abs().maxCoeff(), 4.868286221, 5e-9);
}

/// A there-and-back cycle by two of our motion laws.
Cycle thereAndBack(MotionLaw there, MotionLaw back, double start, double travel) {
  Cycle cycle;
  cycle.startAngle = start;
  cycle.samples = 400;
  Segment move;
  move.law = there;
  move.travel = travel;
  move.duration = 0.9;
  cycle.segments.push_back(move);
  move.law = back;
  move.travel = -travel;
  move.duration = 1.3;
  cycle.segments.push_back(move);
  return cycle;
}

constexpr MotionLaw kLaws[] = {MotionLaw::Trapezoidal,       MotionLaw::JerkLimited,
                               MotionLaw::Polynomial345,     MotionLaw::Polynomial4567,
                               MotionLaw::SineAcceleration,  MotionLaw::Harmonic,
                               MotionLaw::ModifiedTrapezoid, MotionLaw::ModifiedSine};

/// Largest difference [N·m] between our joint torque and KDL's over a cycle of the moving joint,
/// the other joint locked at `locked`; with the rotor behind `ratio` if `rotor` is not 0.
double worstDifference(const Cycle& source, bool elbowMoves, double locked, double rotor,
                       double ratio) {
  PlanarArm arm;
  (elbowMoves ? arm.rotor2 : arm.rotor1) = rotor * ratio * ratio;
  const Load load =
      elbowMoves ? loadOf(PlanarArm{.length1 = 0, .mass1 = 0, .inertia1 = 0}.lockedBody(0), locked)
                 : loadOf(arm.lockedBody(locked));
  const SampledCycle cycle = *sampleCycle(source);
  const Eigen::ArrayXd ours =
      torqueThroughChain(cycle, loadTorque(cycle, source, load).total, ratio, rotor);
  const KDL::Chain chain = arm.chain();
  const auto pose = [&](double moving, double still) {
    return elbowMoves ? joints(still, moving) : joints(moving, still);
  };
  double worst = 0;
  for (Eigen::Index i = 0; i < cycle.size(); ++i) {
    const KDL::JntArray t = torques(chain, pose(cycle.angle[i], locked), pose(cycle.speed[i], 0),
                                    pose(cycle.acceleration[i], 0), PlanarArm::gravity());
    worst = std::max(worst, std::abs(t(elbowMoves ? 1 : 0) - ours[i]));
  }
  return worst;
}

TEST(TwoLinkArm, ElbowWithTheShoulderLocked) {
  for (const MotionLaw law : kLaws) {
    for (const double shoulder : {-0.8, 0.0, 1.9}) {
      const Cycle cycle = thereAndBack(law, MotionLaw::SineAcceleration, 0.6, -1.9);
      EXPECT_LT(worstDifference(cycle, true, shoulder, 0, 1), 1e-12);
      EXPECT_LT(worstDifference(cycle, true, shoulder, 3e-5, 80), 1e-12);
    }
  }
}

TEST(TwoLinkArm, ShoulderWithTheElbowLocked) {
  for (const MotionLaw law : kLaws) {
    for (const double elbow : {-2.1, -1.3, 0.0, 0.6, kPi / 2}) {
      const Cycle cycle = thereAndBack(MotionLaw::Trapezoidal, law, 0.2, 1.2);
      EXPECT_LT(worstDifference(cycle, false, elbow, 0, 1), 1e-12);
      EXPECT_LT(worstDifference(cycle, false, elbow, 8e-5, 100), 1e-12);
    }
  }
}

// The same shoulder with the elbow locked, but the second link given as the payload: its own
// inertia and mass at its distance and angle.
TEST(TwoLinkArm, SecondLinkAsPayload) {
  const PlanarArm arm;
  const double elbow = 0.9;
  const Load whole = loadOf(arm.lockedBody(elbow));
  Load split;
  split.gravity = PlanarArm::kGravity;
  split.inertia = arm.inertia1 + arm.mass1 * arm.centre1 * arm.centre1;
  split.linkMass = arm.mass1;
  split.linkDistance = arm.centre1;
  const double x = arm.length1 + arm.centre2 * std::cos(elbow);
  const double y = arm.centre2 * std::sin(elbow);
  split.payloadMass = arm.mass2;
  split.payloadDistance = std::hypot(x, y);
  split.payloadAngle = std::atan2(y, x);
  split.payloadInertia = arm.inertia2;
  const Cycle source = thereAndBack(MotionLaw::ModifiedSine, MotionLaw::Harmonic, -0.4, 2);
  const SampledCycle cycle = *sampleCycle(source);
  EXPECT_LT((loadTorque(cycle, source, whole).total - loadTorque(cycle, source, split).total)
                .abs()
                .maxCoeff(),
            1e-12);
}

// Kept mass matrix at (0.2, 0.6): [1.419001027 0.306700513; . 0.121], rotors on the diagonal
// [2.219001027 .; . 0.313].
TEST(TwoLinkArm, MassMatrix) {
  const auto massMatrix = [](const PlanarArm& arm) {
    const KDL::Chain chain = arm.chain();  // KDL keeps a reference to it
    KDL::ChainDynParam dynamics(chain, PlanarArm::gravity());
    KDL::JntSpaceInertiaMatrix matrix(2);
    dynamics.JntToMass(joints(0.2, 0.6), matrix);
    return matrix;
  };
  const KDL::JntSpaceInertiaMatrix bare = massMatrix(PlanarArm{});
  EXPECT_NEAR(bare(0, 1), 0.306700513, 5e-10);
  EXPECT_NEAR(loadOf(PlanarArm{}.lockedBody(0.6)).inertia, bare(0, 0), 1e-15);
  EXPECT_NEAR(bare(0, 0), 1.419001027, 5e-10);
  EXPECT_NEAR(bare(1, 1), 0.121, 1e-15);
  const KDL::JntSpaceInertiaMatrix full = massMatrix(withRotors());
  EXPECT_NEAR(full(0, 0), 2.219001027, 5e-10);
  EXPECT_NEAR(full(1, 1), 0.313, 1e-15);
}

}  // namespace
}  // namespace jw

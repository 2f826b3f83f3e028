// What a joint of a robot carries, its worst pose, and a trajectory as the joint's cycle.
#include <cmath>
#include <numbers>
#include <random>

#include <fmt/format.h>
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "core/checks/evaluation.h"
#include "core/files/project_text.h"
#include "core/files/trajectory_table.h"
#include "core/physics/load_torque.h"
#include "core/robot/robot_edits.h"
#include "core/robot/worst_pose.h"
#include "tests/core/checks/example_project.h"
#include "tests/core/robot/example_robot.h"

namespace jw {
namespace {

using Eigen::Vector3d;

constexpr double kG = 9.80665;

double potential(const RobotDescription& robot, const std::vector<double>& pose,
                 const Vector3d& down) {
  const auto frames = linkFrames(robot, pose);
  double energy = 0;
  for (std::size_t k = 0; k < robot.links.size(); ++k) {
    energy -= robot.links[k].mass * kG * down.normalized().dot(frames[k] * robot.links[k].centre);
  }
  return energy;
}

std::vector<double> somePose(const RobotDescription& robot) {
  std::vector<double> pose(robot.joints.size(), 0);
  pose[0] = 0.7, pose[1] = 0.9, pose[2] = -1.1, pose[3] = 0.12;
  return pose;
}

// Virtual work: the static torque is the slope of the potential energy of all links, for every
// turning joint, with the base upright and on its side.
TEST(RobotLoad, StaticTorqueIsTheSlopeOfThePotential) {
  const RobotDescription robot = exampleRobot();
  for (const Vector3d& down : {Vector3d(0, 0, -1), Vector3d(0.5, 2, -0.3)}) {
    for (std::size_t joint = 0; joint < 3; ++joint) {
      std::vector<double> pose = somePose(robot), more = pose, less = pose;
      more[joint] += 1e-5, less[joint] -= 1e-5;
      const double slope = (potential(robot, more, down) - potential(robot, less, down)) / 2e-5;
      const JointLoad load = carriedLoad(robot, joint, pose, down);
      EXPECT_NEAR(staticTorque(load, pose[joint], kG), slope, 1e-6) << joint;
    }
  }
}

// Orocos KDL as the second opinion: with all else at rest, its torque per acceleration is the
// inertia, and at rest the gravity torque.
TEST(RobotLoad, AgreesWithInverseDynamicsOfTheTree) {
  const RobotDescription robot = exampleRobot();
  const std::vector<double> pose = somePose(robot);
  const Vector3d gravity(1, -3, -9);
  for (std::size_t joint = 0; joint < 3; ++joint) {
    RobotMotion motion;
    motion.time = {0};
    for (std::size_t k = 0; k < robot.joints.size(); ++k) {
      motion.place.push_back(Eigen::ArrayXd::Constant(1, pose[k]));
      motion.speed.push_back(Eigen::ArrayXd::Constant(1, k == joint ? 1.7 : 0));
      motion.acceleration.push_back(Eigen::ArrayXd::Constant(1, k == joint ? -2.3 : 0));
    }
    const JointLoad load = carriedLoad(robot, joint, pose, gravity);
    const double own = -2.3 * load.sum.inertia + staticTorque(load, pose[joint], gravity.norm());
    EXPECT_NEAR(own, inverseDynamics(robot, joint, motion, gravity)[0], 1e-10) << joint;
  }
}

// Own, by brute force: 200 000 random poses find nothing worse.
TEST(RobotLoad, WorstPoseIsTheWorst) {
  const RobotDescription robot = exampleRobot();
  const Vector3d down(0.4, 0.1, -1);
  std::mt19937 random(3);
  const std::array low{-std::numbers::pi, -0.5, -2.0, 0.0}, high{std::numbers::pi, 1.9, 2.0, 0.2};
  for (const WorstOf what : {WorstOf::StaticTorque, WorstOf::Inertia}) {
    const RobotPose worst = worstPose(robot, 1, what, down, kG);
    double best = 0;
    for (int k = 0; k < 200'000; ++k) {
      std::vector<double> pose = robot.restPose();
      for (std::size_t j = 0; j < 4; ++j) {
        pose[j] = std::uniform_real_distribution<double>(low[j], high[j])(random);
      }
      const JointLoad load = carriedLoad(robot, 1, pose, down);
      best = std::max(best, what == WorstOf::Inertia ? load.sum.inertia
                                                     : std::abs(staticTorque(load, pose[1], kG)));
    }
    EXPECT_GE(worst.value, best * (1 - 1e-12));
    EXPECT_LT(worst.value, best * 1.02);
    for (std::size_t j = 1; j < 4; ++j) {
      EXPECT_GE(worst.place[j], low[j] - 1e-12);
      EXPECT_LE(worst.place[j], high[j] + 1e-12);
    }
    const JointLoad load = carriedLoad(robot, 1, worst.place, down);
    EXPECT_DOUBLE_EQ(worst.value, what == WorstOf::Inertia
                                      ? load.sum.inertia
                                      : std::abs(staticTorque(load, worst.place[1], kG)));
  }
}

// The load in the project gives what the robot gives.
TEST(RobotLoad, BecomesTheProjectsLoad) {
  const RobotDescription robot = exampleRobot();
  Project project = exampleProject();
  project.load.payloadMass = 0;
  const RobotChoice choice{&robot, 1, somePose(robot), {0, 0, -1}};
  ASSERT_TRUE(applyRobotLoad(project, choice));
  const JointLoad carried = carriedLoad(robot, 1, choice.pose, choice.down);
  ASSERT_EQ(project.load.masses.size(), 3U);
  EXPECT_EQ(project.load.masses[2].name, "hand");
  EXPECT_NEAR(loadInertia(project.load, 0), carried.sum.inertia, 1e-8);
  for (const double q : {-0.4, 0.3, 1.5}) {
    EXPECT_NEAR(staticTorque(project.load, q, 0), staticTorque(carried, q, kG), 1e-7);
  }
  EXPECT_DOUBLE_EQ(project.load.stopHigh, 1.9);
  EXPECT_DOUBLE_EQ(project.requirements.travelMin, -0.5);
  EXPECT_DOUBLE_EQ(project.cycle.speedLimit, 2.5);
  EXPECT_DOUBLE_EQ(project.load.coulombFriction, 1.2);
  const auto again = readProject(writeProject(project), "again");
  ASSERT_TRUE(again.has_value());
  EXPECT_TRUE(again->project == project);
}

TEST(RobotLoad, RefusesJointsThatWillNotDo) {
  const RobotDescription robot = exampleRobot();
  Project project = exampleProject();
  const Project before = project;
  const auto slide = applyRobotLoad(project, {&robot, 3, robot.restPose(), {0, 0, -1}});
  ASSERT_FALSE(slide);
  EXPECT_THAT(slide.error().where, testing::HasSubstr("'Slide', line 54"));
  std::string bare = kExampleRobot;
  for (auto at = bare.find("<inertial>"); at != bare.npos; at = bare.find("<inertial>")) {
    bare.erase(at, bare.find("</inertial>") + 11 - at);
  }
  const auto massless = readRobotDescription(bare, "bare.urdf");
  ASSERT_TRUE(massless.has_value());
  const auto none = applyRobotLoad(project, {&*massless, 1, robot.restPose(), {0, 0, -1}});
  ASSERT_FALSE(none);
  EXPECT_THAT(none.error().what, testing::HasSubstr("'upper' (line 7), 'fore' (line 10)"));
  EXPECT_TRUE(project == before);
}

std::string waves() {
  std::string csv = "slide [mm];Waist [deg];elbow;time [s];SHOULDER [deg];other\n";
  for (int k = 0; k <= 400; ++k) {
    const double t = k * 0.005, w = std::numbers::pi * t;
    csv += fmt::format("{:.12g};{:.12g};{:.12g};{:.12g};{:.12g};7\n", 100 + 50 * std::sin(2 * w),
                       40 * std::sin(w), 0.5 * std::cos(w), t, 30 + 25 * std::sin(w));
  }
  return csv;
}

std::vector<TrajectoryColumn> columns() {
  return {{"Waist", Quantity::Angle},
          {"Shoulder", Quantity::Angle},
          {"Elbow", Quantity::Angle},
          {"Slide", Quantity::Length}};
}

TEST(RobotTrajectory, IsReadByTheJointsNames) {
  const auto read = readTrajectory(waves(), "moves.csv", columns());
  ASSERT_TRUE(read.has_value()) << describe(read.error());
  EXPECT_EQ(read->time.size(), 401U);
  EXPECT_NEAR(read->place[0][100], 40 * std::numbers::pi / 180, 1e-9);
  EXPECT_NEAR(read->place[3][50], 0.15, 1e-9);
  const auto lacking = readTrajectory("time;Waist;Shoulder\n0;1;2\n", "moves.csv", columns());
  ASSERT_FALSE(lacking.has_value());
  EXPECT_THAT(describe(lacking.error()), testing::HasSubstr("Elbow"));
  EXPECT_THAT(describe(lacking.error()), testing::HasSubstr("moves.csv"));
  EXPECT_THAT(readTrajectory("0,1,2,3,0.1\n1,1,2,3,0.1\n", "m", columns()).error().what,
              testing::HasSubstr("too few rows"));
}

// Speeds and accelerations against the waves' own derivatives, by hand.
TEST(RobotTrajectory, DerivativesFollowThePlan) {
  const RobotDescription robot = exampleRobot();
  const RobotMotion motion = motionOf(robot, *readTrajectory(waves(), "m", columns()));
  const double w = std::numbers::pi, amplitude = 25 * w / 180;
  for (const Eigen::Index i : {10, 133, 250, 390}) {
    const double t = motion.time[static_cast<std::size_t>(i)];
    EXPECT_NEAR(motion.speed[1][i], amplitude * w * std::cos(w * t), 1e-6);
    EXPECT_NEAR(motion.acceleration[1][i], -amplitude * w * w * std::sin(w * t), 2e-3);
  }
}

// The joint's torque in the evaluation is KDL's along the trajectory, plus friction: whatever pose
// the load itself was taken in.
TEST(RobotTrajectory, EvaluationUsesTheTorqueOfInverseDynamics) {
  const RobotDescription robot = exampleRobot();
  const JointTrajectory trajectory = *readTrajectory(waves(), "m", columns());
  for (const std::vector<double>& pose : {robot.restPose(), somePose(robot)}) {
    Project project = exampleProject();
    project.load.payloadMass = 0;
    ASSERT_TRUE(applyRobotMotion(project, {&robot, 1, pose, {0, 0, -1}}, trajectory));
    const Evaluation e = evaluate(project);
    ASSERT_TRUE(e.load.has_value());
    const Eigen::ArrayXd torque =
        inverseDynamics(robot, 1, motionOf(robot, trajectory), Vector3d(0, 0, -kG));
    ASSERT_EQ(e.load->total.size(), torque.size());
    EXPECT_LT((e.load->total - e.load->friction - torque).abs().maxCoeff(), 1e-6);
    EXPECT_GT(e.load->external.abs().maxCoeff(), 1);  // the other joints do act on this one
    EXPECT_NEAR(e.cycle->angle[0], std::numbers::pi / 6, 1e-9);
  }
}

}  // namespace
}  // namespace jw

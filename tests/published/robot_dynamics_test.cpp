// Inverse dynamics from a robot description against a published six-axis robot and against the
// closed form of a two-link arm.
#include <array>
#include <cmath>
#include <numbers>

#include <fmt/format.h>
#include <gtest/gtest.h>

#include "core/robot/inverse_dynamics.h"
#include "tests/published/csv_columns.h"

namespace jw {
namespace {

using Eigen::ArrayXd;

/// A link as it stands on the one before it.
struct Body {
  const char* axis;
  const char* origin;  ///< of its joint, in the link before
  double mass;
  const char* centre;
  std::array<double, 4> inertia;  ///< xx, yy, zz, xy
};

std::string descriptionOf(std::span<const Body> bodies) {
  std::string text = "<robot name=\"arm\"><link name=\"base\"/>";
  std::string parent = "base";
  for (std::size_t k = 0; k < bodies.size(); ++k) {
    const Body& b = bodies[k];
    const bool turns = b.axis[0] != '\0';
    text += fmt::format(
        R"(<link name="l{0}"><inertial><origin xyz="{1}"/><mass value="{2}"/>)"
        R"(<inertia ixx="{3}" iyy="{4}" izz="{5}" ixy="{6}" ixz="0" iyz="0"/></inertial></link>)"
        R"(<joint name="j{0}" type="{7}"><origin xyz="{8}"/><parent link="{9}"/>)"
        R"(<child link="l{0}"/><axis xyz="{10}"/></joint>)",
        k + 1, b.centre, b.mass, b.inertia[0], b.inertia[1], b.inertia[2], b.inertia[3],
        turns ? "continuous" : "fixed", b.origin, parent, turns ? b.axis : "1 0 0");
    parent = fmt::format("l{}", k + 1);
  }
  return text + "</robot>";
}

RobotDescription robotOf(std::span<const Body> bodies) {
  auto robot = readRobotDescription(descriptionOf(bodies), "arm.urdf");
  EXPECT_TRUE(robot.has_value()) << describe(robot.error());
  return std::move(*robot);
}

// Masses, centres, inertias and offsets: Modelica Standard Library, RobotR3 (BSD-3, read), see
// tests/data/six_axis_move/README.md; the torques there were computed with Orocos KDL 1.5.1 from a
// chain put together by hand. The places are those of the synchronous trapezoid named there.
TEST(RobotDynamics, SixAxisMove) {
  const std::array<Body, 7> bodies{{
      {"0 1 0", "0 0.351 0", 1, "0 0 0", {0.001, 1.16, 0.001, 0}},
      {"1 0 0", "0 0.324 0.3", 56.5, "0.172 0.205 0", {2.58, 0.64, 2.73, -0.46}},
      {"1 0 0", "0 0.65 0", 26.4, "0.064 -0.034 0", {0.279, 0.245, 0.413, -0.070}},
      {"0 1 0", "0 0.414 -0.155", 28.7, "0 0 0", {1.67, 0.081, 1.67, 0}},
      {"1 0 0", "0 0.186 0", 5.2, "0 0 0", {1.25, 0.81, 1.53, 0}},
      {"0 1 0", "0 0.125 0", 0.5, "0.05 0.05 0.05", {0.001, 0.001, 0.001, 0}},
      {"", "0 0 0", 15, "0.1 0.25 0.1", {0.001, 0.001, 0.001, 0}},
  }};
  const std::array<double, 6> start{-60, 20, 90, 0, -110, 0}, end{60, -70, -35, 45, 110, 45};
  const RobotDescription robot = robotOf(bodies);
  const std::vector<ArrayXd> data = csvColumns("six_axis_move/move.csv");
  const double degree = std::numbers::pi / 180;
  const double speed = 3.1 / (220 * degree), rise = 15 / (125 * degree);  // joints 5 and 3 limit
  const double ramp = speed / rise, whole = 1 / speed + ramp;
  const ArrayXd& t = data[0];
  const ArrayXd share = (t < ramp).select(
      rise * t.square() / 2,
      (t < whole - ramp).select(speed * (t - ramp / 2), 1 - rise * (whole - t).square() / 2));
  RobotMotion motion;
  motion.time.assign(t.begin(), t.end());
  for (std::size_t k = 0; k < 6; ++k) {
    motion.place.push_back(degree * (start[k] + share * (end[k] - start[k])));
    motion.speed.push_back(data[1 + k]);
    motion.acceleration.push_back(data[7 + k]);
  }
  for (auto* list : {&motion.place, &motion.speed, &motion.acceleration}) list->emplace_back();
  for (std::size_t k = 0; k < 6; ++k) {
    const ArrayXd torque = inverseDynamics(robot, k, motion, {0, -9.81, 0});
    const ArrayXd& published = data[13 + k];
    EXPECT_LT((torque - published).abs().maxCoeff(), 1e-4 * published.abs().maxCoeff())
        << "joint " << k + 1;
  }
}

// Two links in a plane, closed form (textbook, e.g. Craig, Introduction to Robotics, ch. 6; from
// memory): M = [a + 2 b c2, d + b c2; ., d], h = -b s2, gravity by the centres' moments.
TEST(RobotDynamics, TwoLinkArmInClosedForm) {
  const double l1 = 0.5, m1 = 4, m2 = 2.5, r1 = 0.23, r2 = 0.18, i1 = 0.09, i2 = 0.04, g = 9.81;
  const std::array<Body, 2> bodies{{{"0 0 1", "0 0 0", m1, "0.23 0 0", {0.01, 0.09, i1, 0}},
                                    {"0 0 1", "0.5 0 0", m2, "0.18 0 0", {0.01, 0.04, i2, 0}}}};
  const RobotDescription robot = robotOf(bodies);
  const int n = 50;
  RobotMotion motion;
  const ArrayXd t = ArrayXd::LinSpaced(n, 0, 3);
  motion.time.assign(t.begin(), t.end());
  motion.place = {(1.3 * t).sin(), 0.4 + (2 * t).cos()};
  motion.speed = {1.3 * (1.3 * t).cos(), -2 * (2 * t).sin()};
  motion.acceleration = {-1.69 * (1.3 * t).sin(), -4 * (2 * t).cos()};
  const ArrayXd &q1 = motion.place[0], &q2 = motion.place[1], &v1 = motion.speed[0],
                &v2 = motion.speed[1], &a1 = motion.acceleration[0], &a2 = motion.acceleration[1];
  const double a = i1 + i2 + m1 * r1 * r1 + m2 * (l1 * l1 + r2 * r2), b = m2 * l1 * r2;
  const double d = i2 + m2 * r2 * r2;
  const ArrayXd gravity2 = m2 * r2 * g * (q1 + q2).cos();
  const ArrayXd first = (a + 2 * b * q2.cos()) * a1 + (d + b * q2.cos()) * a2 -
                        b * q2.sin() * (2 * v1 * v2 + v2.square()) +
                        (m1 * r1 + m2 * l1) * g * q1.cos() + gravity2;
  const ArrayXd second = (d + b * q2.cos()) * a1 + d * a2 + b * q2.sin() * v1.square() + gravity2;
  EXPECT_LT((inverseDynamics(robot, 0, motion, {0, -g, 0}) - first).abs().maxCoeff(), 1e-11);
  EXPECT_LT((inverseDynamics(robot, 1, motion, {0, -g, 0}) - second).abs().maxCoeff(), 1e-11);
}

}  // namespace
}  // namespace jw

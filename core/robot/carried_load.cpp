#include "core/robot/carried_load.h"

#include <cmath>

#include "core/physics/load_torque.h"

namespace jw {
namespace {

using Eigen::Isometry3d;
using Eigen::Vector3d;

Isometry3d motionOf(const RobotJoint& joint, double place) {
  Isometry3d motion = Isometry3d::Identity();
  if (joint.kind == RobotJointKind::Turning) motion.rotate(Eigen::AngleAxisd(place, joint.axis));
  if (joint.kind == RobotJointKind::Sliding) motion.translate(place * joint.axis);
  return motion;
}

/// The joint's own axes as columns, in its frame: z along the axis.
Eigen::Matrix3d axesOf(const RobotJoint& joint) {
  const Vector3d& z = joint.axis;
  const Vector3d first = std::abs(z.x()) < 0.9 ? Vector3d::UnitX() : Vector3d::UnitY();
  const Vector3d x = (first - first.dot(z) * z).normalized();
  Eigen::Matrix3d axes;
  axes << x, z.cross(x), z;
  return axes;
}

}  // namespace

Eigen::Vector2d JointLoad::centre() const {
  if (!(sum.mass > 0)) return Eigen::Vector2d::Zero();
  return {sum.x / sum.mass, sum.y / sum.mass};
}

std::vector<double> completedPose(const RobotDescription& robot, std::span<const double> pose) {
  std::vector<double> places(pose.begin(), pose.end());
  for (std::size_t k = 0; k < robot.joints.size(); ++k) {
    const RobotJoint& joint = robot.joints[k];
    if (joint.follows < 0) continue;
    places[k] = joint.factor * pose[static_cast<std::size_t>(joint.follows)] + joint.offset;
  }
  return places;
}

std::vector<Isometry3d> linkFrames(const RobotDescription& robot, std::span<const double> pose) {
  const std::vector<double> places = completedPose(robot, pose);
  std::vector<Isometry3d> frames(robot.links.size(), Isometry3d::Identity());
  for (std::size_t k = 0; k < robot.joints.size(); ++k) {
    const RobotJoint& joint = robot.joints[k];
    frames[joint.child] = frames[joint.parent] * joint.origin * motionOf(joint, places[k]);
  }
  return frames;
}

std::vector<bool> carriedLinks(const RobotDescription& robot, std::size_t joint) {
  std::vector<bool> carried(robot.links.size(), false);
  carried[robot.joints[joint].child] = true;
  for (std::size_t k = joint + 1; k < robot.joints.size(); ++k) {
    if (carried[robot.joints[k].parent]) carried[robot.joints[k].child] = true;
  }
  return carried;
}

JointLoad carriedLoad(const RobotDescription& robot, std::size_t joint,
                      std::span<const double> pose, const Vector3d& down) {
  std::vector<double> places = completedPose(robot, pose);
  places[joint] = 0;
  const auto frames = linkFrames(robot, places);
  const RobotJoint& own = robot.joints[joint];
  Isometry3d toJoint = frames[own.parent] * own.origin;
  toJoint.linear() = toJoint.linear() * axesOf(own);
  toJoint = toJoint.inverse(Eigen::Isometry);
  const std::vector<bool> carried = carriedLinks(robot, joint);
  JointLoad load;
  load.down = (toJoint.linear() * down).normalized();
  for (std::size_t k = 0; k < robot.links.size(); ++k) {
    const RobotLink& link = robot.links[k];
    if (!carried[k] || !(link.mass > 0)) continue;
    const Isometry3d frame = toJoint * frames[k];
    const Vector3d axis = frame.linear().row(2);  // the joint's axis in the link's frame
    const CarriedBody body{link.name, link.mass, frame * link.centre,
                           axis.dot(link.inertia * axis)};
    load.sum.add(body.mass, body.centre, body.inertia);
    load.bodies.push_back(body);
  }
  return load;
}

double staticTorque(const JointLoad& load, double angle, double gravity) {
  const GravityMoment moment = gravityMoment(load.sum, gravity * load.down);
  return moment.x * std::cos(angle) - moment.y * std::sin(angle);
}

}  // namespace jw

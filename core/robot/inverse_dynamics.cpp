#include "core/robot/inverse_dynamics.h"

#include <algorithm>
#include <stdexcept>

#include <kdl/tree.hpp>
#include <kdl/treeidsolver_recursive_newton_euler.hpp>

#include "core/motion/local_cubic.h"

namespace jw {
namespace {

using Eigen::ArrayXd;
using Eigen::Index;

KDL::Vector toKdl(const Eigen::Vector3d& v) { return {v.x(), v.y(), v.z()}; }

KDL::Frame toKdl(const Eigen::Isometry3d& frame) {
  const Eigen::Matrix3d r = frame.linear();
  return {KDL::Rotation(r(0, 0), r(0, 1), r(0, 2), r(1, 0), r(1, 1), r(1, 2), r(2, 0), r(2, 1),
                        r(2, 2)),
          toKdl(Eigen::Vector3d(frame.translation()))};
}

KDL::RigidBodyInertia toKdl(const RobotLink& link) {
  const Eigen::Matrix3d& j = link.inertia;
  return KDL::RigidBodyInertia(
      link.mass, toKdl(link.centre),
      KDL::RotationalInertia(j(0, 0), j(1, 1), j(2, 2), j(0, 1), j(0, 2), j(1, 2)));
}

KDL::Joint toKdl(const RobotJoint& joint) {
  if (!joint.moves()) return KDL::Joint(joint.name, KDL::Joint::Fixed);
  const KDL::Vector axis = toKdl(Eigen::Vector3d(joint.origin.linear() * joint.axis));
  return KDL::Joint(
      joint.name, toKdl(Eigen::Vector3d(joint.origin.translation())), axis,
      joint.kind == RobotJointKind::Turning ? KDL::Joint::RotAxis : KDL::Joint::TransAxis);
}

KDL::Tree treeOf(const RobotDescription& robot) {
  KDL::Tree tree(robot.links.front().name);
  for (const RobotJoint& joint : robot.joints) {
    const RobotLink& child = robot.links[joint.child];
    const KDL::Segment segment(child.name, toKdl(joint), toKdl(joint.origin), toKdl(child));
    if (!tree.addSegment(segment, robot.links[joint.parent].name)) {
      throw std::logic_error("inverseDynamics: links are not in the order of the tree");
    }
  }
  return tree;
}

/// The place of each joint among KDL's.
std::vector<unsigned> places(const RobotDescription& robot, const KDL::Tree& tree) {
  std::vector<unsigned> found;
  for (const RobotJoint& joint : robot.joints) {
    found.push_back(GetTreeElementQNr(tree.getSegment(robot.links[joint.child].name)->second));
  }
  return found;
}

double medianStep(const std::vector<double>& time) {
  std::vector<double> steps;
  for (std::size_t k = 1; k < time.size(); ++k) steps.push_back(time[k] - time[k - 1]);
  const auto middle = steps.begin() + static_cast<std::ptrdiff_t>(steps.size() / 2);
  std::nth_element(steps.begin(), middle, steps.end());
  return *middle;
}

ArrayXd column(const std::vector<double>& values) {
  return Eigen::Map<const ArrayXd>(values.data(), static_cast<Index>(values.size()));
}

}  // namespace

RobotMotion motionOf(const RobotDescription& robot, const JointTrajectory& trajectory,
                     double window) {
  const std::size_t count = robot.joints.size();
  RobotMotion motion{trajectory.time, std::vector<ArrayXd>(count), std::vector<ArrayXd>(count),
                     std::vector<ArrayXd>(count)};
  // A little more than four steps: the fifth row is within whatever the rounding.
  if (!(window > 0)) window = 4.01 * medianStep(trajectory.time);
  std::size_t list = 0;
  for (std::size_t k = 0; k < count; ++k) {
    if (!robot.joints[k].isFree()) continue;
    const std::vector<double>& place = trajectory.place.at(list++);
    const SmoothedCurve curve = smoothByLocalCubic(trajectory.time, place, window);
    motion.place[k] = column(place);
    motion.speed[k] = column(curve.first);
    motion.acceleration[k] = column(curve.second);
  }
  for (std::size_t k = 0; k < count; ++k) {
    const RobotJoint& joint = robot.joints[k];
    if (joint.follows < 0) continue;
    const auto master = static_cast<std::size_t>(joint.follows);
    motion.place[k] = joint.factor * motion.place[master] + joint.offset;
    motion.speed[k] = joint.factor * motion.speed[master];
    motion.acceleration[k] = joint.factor * motion.acceleration[master];
  }
  return motion;
}

ArrayXd inverseDynamics(const RobotDescription& robot, std::size_t joint, const RobotMotion& motion,
                        const Eigen::Vector3d& gravity) {
  const KDL::Tree tree = treeOf(robot);
  const std::vector<unsigned> at = places(robot, tree);
  KDL::TreeIdSolver_RNE solver(tree, toKdl(gravity));
  const unsigned count = tree.getNrOfJoints();
  KDL::JntArray q(count), qd(count), qdd(count), torque(count);
  const KDL::WrenchMap none;
  ArrayXd result(static_cast<Index>(motion.time.size()));
  for (Index i = 0; i < result.size(); ++i) {
    for (std::size_t k = 0; k < at.size(); ++k) {
      if (!robot.joints[k].moves()) continue;
      q(at[k]) = motion.place[k][i];
      qd(at[k]) = motion.speed[k][i];
      qdd(at[k]) = motion.acceleration[k][i];
    }
    solver.CartToJnt(q, qd, qdd, none, torque);
    result[i] = torque(at[joint]);
  }
  return result;
}

}  // namespace jw

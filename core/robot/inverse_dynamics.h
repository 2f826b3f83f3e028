#pragma once

#include <vector>

#include <Eigen/Core>

#include "core/model/joint_trajectory.h"
#include "core/robot/robot_description.h"

namespace jw {

/// Motion of every joint over time, n rows each; fixed joints are left empty.
struct RobotMotion {
  std::vector<double> time;                  ///< [s]
  std::vector<Eigen::ArrayXd> place;         ///< [rad] or [m]
  std::vector<Eigen::ArrayXd> speed;         ///< [rad/s] or [m/s]
  std::vector<Eigen::ArrayXd> acceleration;  ///< [rad/s²] or [m/s²]
};

/// Speed and acceleration of every joint from a trajectory that has a list for each joint that
/// moves freely, in their order; joints that follow others are led along. Local cubics over
/// `window` [s] as for measured logs (smoothByLocalCubic); 0 takes four median steps, five rows,
/// which leaves a planned trajectory all but as it is. Needs at least 5 rows.
RobotMotion motionOf(const RobotDescription& robot, const JointTrajectory& trajectory,
                     double window = 0);

/// [N·m] or [N] that `joint` has to give at each row: recursive Newton-Euler over the tree of all
/// links (Orocos KDL), gravity included, friction and drives not. `gravity` [m/s²] as a vector in
/// the base's frame.
Eigen::ArrayXd inverseDynamics(const RobotDescription& robot, std::size_t joint,
                               const RobotMotion& motion, const Eigen::Vector3d& gravity);

}  // namespace jw

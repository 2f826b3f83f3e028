#pragma once

#include <span>
#include <string>
#include <vector>

#include <Eigen/Geometry>

#include "core/physics/carried_masses.h"
#include "core/robot/robot_description.h"

namespace jw {

/// A link as a body on the joint, in the joint's axes: z its axis, x and y fixed to what turns with
/// it, at joint angle 0.
struct CarriedBody {
  std::string link;
  double mass = 0;                                   ///< [kg]
  Eigen::Vector3d centre = Eigen::Vector3d::Zero();  ///< [m]
  double inertia = 0;  ///< [kg·m²] about its own centre of mass, parallel to the axis
};

/// All that a joint carries with the robot in one pose, seen from the joint.
struct JointLoad {
  std::vector<CarriedBody> bodies;  ///< those that have a mass
  CarriedMasses sum;
  Eigen::Vector3d down = Eigen::Vector3d::Zero();  ///< direction of gravity, length 1, at angle 0

  Eigen::Vector2d centre() const;  ///< [m] of all masses, across the axis; 0 if there is none
};

/// A place for every joint with those that follow others led along.
std::vector<double> completedPose(const RobotDescription& robot, std::span<const double> pose);

/// The frame of every link in that of the base.
std::vector<Eigen::Isometry3d> linkFrames(const RobotDescription& robot,
                                          std::span<const double> pose);

/// Which links stand beyond `joint`, by index into links.
std::vector<bool> carriedLinks(const RobotDescription& robot, std::size_t joint);

/// What `joint` carries with the others at `pose` ([rad] or [m], one for each joint; its own place
/// does not matter), `down` being the direction of gravity in the base's frame, of any length. x is
/// the joint frame's x axis, or y where the joint turns about x, made square to the axis.
JointLoad carriedLoad(const RobotDescription& robot, std::size_t joint,
                      std::span<const double> pose, const Eigen::Vector3d& down);

/// [N·m] torque that holds the joint at `angle` against gravity [m/s²].
double staticTorque(const JointLoad& load, double angle, double gravity);

}  // namespace jw

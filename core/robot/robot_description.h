#pragma once

#include <string>
#include <string_view>
#include <vector>

#include <Eigen/Geometry>
#include <tl/expected.hpp>

#include "core/model/unset.h"
#include "core/quantity/quantity.h"

namespace jw {

/// A rigid body of a robot.
struct RobotLink {
  std::string name;
  std::size_t line = 0;                               ///< of the text, from 1; 0 = unknown
  bool hasInertial = false;                           ///< whether its mass is stated
  double mass = 0;                                    ///< [kg]
  Eigen::Vector3d centre = Eigen::Vector3d::Zero();   ///< [m] in the link's frame
  Eigen::Matrix3d inertia = Eigen::Matrix3d::Zero();  ///< [kg·m²] about the centre of mass
};

enum class RobotJointKind { Fixed, Turning, Sliding };

/// Joins two links. Its frame is the child link's when it stands at 0.
struct RobotJoint {
  std::string name;
  std::size_t line = 0;
  RobotJointKind kind = RobotJointKind::Fixed;
  std::size_t parent = 0;                                    ///< index into links
  std::size_t child = 0;                                     ///< index into links
  Eigen::Isometry3d origin = Eigen::Isometry3d::Identity();  ///< in the parent link's frame
  Eigen::Vector3d axis = Eigen::Vector3d::UnitX();           ///< of length 1, in its own frame
  double low = kUnset;                                       ///< [rad] or [m]; unset = none
  double high = kUnset;                                      ///< likewise
  double speedLimit = kUnset;                                ///< [rad/s] or [m/s]
  double viscousFriction = 0;                                ///< [N·m·s/rad]
  double coulombFriction = 0;                                ///< [N·m]
  int follows = -1;  ///< index of the joint that it mimics; place = factor * that one's + offset
  double factor = 1;
  double offset = 0;

  bool moves() const { return kind != RobotJointKind::Fixed; }
  bool isFree() const { return moves() && follows < 0; }
};

/// A robot as a tree of links; joints stand behind the joint that carries them.
struct RobotDescription {
  std::string name;
  std::vector<RobotLink> links;  ///< the base first
  std::vector<RobotJoint> joints;
  std::vector<InputError> notes;  ///< what was left out or looks like a slip

  /// A place for each joint: 0, or the nearest to it that the limits allow.
  std::vector<double> restPose() const;
};

/// Reads the text of a URDF robot description (an open XML format: links with inertia, joints with
/// axis and limits) by the URDF library. `fileName` is for messages. Fails, naming what is missing
/// and in which element and line, on text that is no XML, links that are not declared, turning or
/// sliding joints without limits or axis, negative masses and numbers that cannot be read. Links
/// without inertia count as massless and are noted. Not for two threads at once: the library's
/// messages go through one channel.
tl::expected<RobotDescription, InputError> readRobotDescription(std::string_view text,
                                                                std::string_view fileName);

}  // namespace jw

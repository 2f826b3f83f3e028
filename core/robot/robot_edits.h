#pragma once

#include <optional>
#include <vector>

#include <tl/expected.hpp>

#include "core/model/project.h"
#include "core/robot/carried_load.h"
#include "core/robot/inverse_dynamics.h"

namespace jw {

/// A joint of a robot as the project's joint.
struct RobotChoice {
  const RobotDescription* robot = nullptr;
  std::size_t joint = 0;           ///< index of one that turns
  std::vector<double> pose;        ///< a place for each joint
  Eigen::Vector3d down{0, 0, -1};  ///< direction of gravity in the base's frame
};

/// What the choice leaves to be desired: a joint that slides, or carries no mass.
std::optional<InputError> choiceError(const RobotChoice& choice);

/// Makes all that the joint carries the load: each link with a mass a mass of its own, the link's
/// own fields emptied, gravity by direction, friction, end stops and required travel from the joint
/// where it states them, the limit of speed for moves by limits. The payload stays.
tl::expected<void, InputError> applyRobotLoad(Project& project, const RobotChoice& choice);

/// The same, and the joint's motion along the trajectory becomes the cycle: one table of angle,
/// speed and acceleration, with the torque that inverse dynamics finds beyond that of the load in
/// this pose as its external torque. Angle by angle the sum is the torque of inverse dynamics, plus
/// friction, counterbalance and payload; and it moves along when the table does.
tl::expected<void, InputError> applyRobotMotion(Project& project, const RobotChoice& choice,
                                                const JointTrajectory& trajectory);

}  // namespace jw

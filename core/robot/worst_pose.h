#pragma once

#include <vector>

#include "core/robot/carried_load.h"

namespace jw {

/// What a worst pose is the worst of.
enum class WorstOf { StaticTorque, Inertia };

/// A pose and what it asks of the joint.
struct RobotPose {
  std::vector<double> place;  ///< [rad] or [m], one for each joint, the joint's own included
  double value = 0;  ///< largest |static torque| [N·m] or inertia about the axis [kg·m²]
};

/// The pose within the limits of all joints, the joint's own included, in which it has to hold most
/// or carries most inertia. Joints without limits turn within half a turn either way. Each joint in
/// turn goes to its best place (scan in steps, then golden section) until nothing improves, from
/// some twenty starts; the starts are the same every time.
RobotPose worstPose(const RobotDescription& robot, std::size_t joint, WorstOf what,
                    const Eigen::Vector3d& down, double gravity);

}  // namespace jw

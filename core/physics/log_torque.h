#pragma once

#include <vector>

#include "core/model/load.h"
#include "core/model/measured_log.h"
#include "core/motion/log_motion.h"

namespace jw {

/// [N·m] torque at the joint that `load` asks for at every row of a log with its motion (see
/// loadTorque), the load's own payload carried throughout. O(n), in blocks: needs little memory
/// beside the result. NaN where the load's inertia is unset.
std::vector<double> modelledTorque(const MeasuredLog& log, const LogMotion& motion,
                                   const Load& load);

}  // namespace jw

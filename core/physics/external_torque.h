#pragma once

#include <Eigen/Core>

#include "core/model/load.h"
#include "core/motion/sampled_cycle.h"
#include "core/physics/point_table.h"

namespace jw {

/// The load's table of external torques [N·m] over time [s] or joint angle [rad]; empty if there is
/// none. Fails saying which pair is wrong.
tl::expected<PointTable, InputError> externalTable(const Load& load);

/// Adds the table to `torque`, n samples. Over time it runs from the cycle's start and repeats with
/// it; between points it is straight, beyond its ends it keeps the end values.
void addExternal(const PointTable& table, ExternalOver over, const SampledCycle& cycle,
                 Eigen::ArrayXd& torque);

/// Adds the torques that the points of motion tables bring along, row by row.
void addTableTorques(const Cycle& source, const SampledCycle& cycle, Eigen::ArrayXd& torque);

}  // namespace jw

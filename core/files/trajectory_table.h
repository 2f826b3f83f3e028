#pragma once

#include <span>
#include <string>
#include <string_view>

#include <tl/expected.hpp>

#include "core/model/joint_trajectory.h"
#include "core/quantity/quantity.h"

namespace jw {

/// A joint that a trajectory table has to tell of.
struct TrajectoryColumn {
  std::string joint;                    ///< its name is the column's
  Quantity quantity = Quantity::Angle;  ///< Length for one that slides
};

/// Reads a table of time and one column for each joint, named as the joint, in any order: see
/// readDelimitedTable. Other columns are passed over; without a line of names the columns are the
/// time and the joints in their order, in s, rad and m. Needs at least 5 rows.
tl::expected<JointTrajectory, InputError> readTrajectory(std::string_view text,
                                                         std::string_view fileName,
                                                         std::span<const TrajectoryColumn> joints);

}  // namespace jw

#pragma once

#include <string_view>

#include <tl/expected.hpp>

#include "core/model/cycle.h"
#include "core/quantity/quantity.h"

namespace jw {

/// Reads motion points from text, one point a line, e.g. from a controller's log. `name` is the
/// file's name, for messages.
///
/// Columns stand apart by tabs, semicolons or commas, whichever of these the first line has
/// (looked for in that order). Numbers take a decimal point, or a decimal comma where the comma
/// does not part columns. The first line may name the columns in any order, with units in brackets:
/// "time [s]; angle (deg)". Names: time or t; angle, position, pos or q; speed, velocity or v;
/// acceleration, accel or a; external torque (positive opposes positive motion; a column that is
/// called torque alone could be the joint's own and is passed over). Time and angle are needed,
/// other names are passed over. A column without a unit is in s, rad, rad/s, rad/s², N·m. Without a
/// first line of names the columns are time, angle, speed, acceleration, external torque in these
/// units. Empty lines and lines that start with '#' are passed over.
///
/// In the result the time starts at 0 and the angle is relative to the first row. Fails, naming
/// file, line and column, on text that is no number, on values that are missing, surplus or not
/// finite, on time that does not rise, on unknown units, and on fewer than 2 points.
tl::expected<MotionTable, InputError> readMotionTable(std::string_view csv, std::string_view name);

}  // namespace jw

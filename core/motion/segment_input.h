#pragma once

#include <optional>
#include <string>

#include "core/model/cycle.h"
#include "core/quantity/quantity.h"

namespace jw {

/// "cycle.segments[2]".
std::string segmentPath(std::size_t index);

/// `segment 3 "Lift"`, or `segment 3` if it has no name; counts from 1.
std::string segmentTitle(const Segment& segment, std::size_t index);

/// The first value of the cycle that cannot be used, with its path, what was found and what is
/// allowed; nothing if the cycle can be sampled. Only values that matter with the segment's law
/// count, and none of a disabled segment. Allowed is what the field catalogue says, with at least
/// one segment and accelShare + decelShare at most 1.
std::optional<InputError> cycleInputError(const Cycle& cycle);

/// As cycleInputError, of one segment.
std::optional<InputError> segmentInputError(const Segment& segment, std::size_t index);

/// As cycleInputError, of imported points: at least 2 rows (5 if speed or acceleration have to be
/// found from the rows), columns of one length, every value finite, time rising from 0.
std::optional<InputError> tableInputError(const MotionTable& table, const std::string& path);

}  // namespace jw

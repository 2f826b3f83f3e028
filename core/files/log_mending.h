#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "core/files/measured_log.h"

namespace jw {

/// A log whose rows stand as they were read: times may be equal, positions wrapped.
struct RawLog {
  MeasuredLog log;
  std::vector<std::uint32_t> lines;  ///< of the text, one for each row
};

/// Notes the place of a mend; only the first 100 are kept.
void addPlace(LogMend& mend, std::size_t line, std::size_t row);

/// Adds turns to wrapped positions, merges rows of one time, finds gaps and shifts the time to 0,
/// in this order, and lists what was done. Gives an error text if duplicates are refused.
std::optional<InputError> mendLog(RawLog& raw, const LogReading& reading, std::string_view name);

}  // namespace jw

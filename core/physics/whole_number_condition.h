#pragma once

#include <cmath>
#include <string>
#include <string_view>

#include "core/physics/geometry_condition.h"

namespace jw {

/// Condition that a count is whole, to rounding: demand 0 where it is and 1 where it is not,
/// against a capacity of 0.
inline GeometryCondition wholeNumberCondition(std::string label, double count,
                                              std::string_view field, std::string_view source) {
  const bool whole = std::abs(count - std::round(count)) < 1e-9;
  return {std::move(label), whole ? 0.0 : 1.0, 0, Quantity::Number, "1", field, source};
}

}  // namespace jw

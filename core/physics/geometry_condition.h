#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "core/quantity/quantity.h"

namespace jw {

/// Something that a stage's geometry has to satisfy: `demand` must not exceed `capacity`.
struct GeometryCondition {
  std::string label;    ///< "neighbouring planets clear each other"
  double demand = 0;    ///< internal unit of `quantity`
  double capacity = 0;  ///< likewise
  Quantity quantity = Quantity::Number;
  std::string_view unit;    ///< display unit
  std::string_view field;   ///< key of the field to look at first, "planets"
  std::string_view source;  ///< standard or textbook, or "common practice, no source"

  bool holds() const { return demand <= capacity; }
  /// capacity / demand - 1; +inf when nothing is demanded.
  double margin() const;
};

using GeometryConditions = std::vector<GeometryCondition>;

}  // namespace jw

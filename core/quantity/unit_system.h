#pragma once

#include <array>
#include <memory>
#include <string>
#include <string_view>

#include <tl/expected.hpp>

#include "core/quantity/unit_text.h"

namespace jw::detail {

/// Powers of m, kg, s, A, K and rad.
using Dimension = std::array<int, 6>;

/// What a unit text means: base = (value - zero) * factor / divisor. Both are whole numbers where
/// the unit allows it (an inch is 254 / 10000 m), so that 3 mm is exactly the double 0.003.
struct UnitMeaning {
  Dimension dimension{};
  double factor = 1.0;
  double divisor = 1.0;
  double zero = 0.0;    ///< of a temperature scale, against the degree Celsius
  bool single = false;  ///< one word without a power: only such a unit can be a scale
  UnitText text;
};

using SharedMeaning = std::shared_ptr<const UnitMeaning>;

/// The meaning of `unit` as typed. Cached and thread safe.
tl::expected<SharedMeaning, UnitTextError> meaningOf(std::string_view unit);

}  // namespace jw::detail

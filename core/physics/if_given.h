#pragma once

#include <cmath>
#include <optional>

namespace jw {

/// The value; nothing where it is NaN or infinite, as it is when something it follows from is not
/// given.
inline std::optional<double> ifGiven(double value) {
  return std::isfinite(value) ? std::optional(value) : std::nullopt;
}

}  // namespace jw

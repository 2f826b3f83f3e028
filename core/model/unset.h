#pragma once

#include <cmath>
#include <limits>

namespace jw {

/// A number that nobody has given. Never 0.
inline constexpr double kUnset = std::numeric_limits<double>::quiet_NaN();

inline bool isSet(double value) { return !std::isnan(value); }

}  // namespace jw

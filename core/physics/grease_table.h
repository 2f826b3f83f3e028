#pragma once

#include <string_view>
#include <vector>

#include <tl/expected.hpp>

#include "core/quantity/quantity.h"

namespace jw {

/// Factors on a no-load torque by temperature, rising temperatures.
struct GreaseTable {
  std::vector<double> temperature;  ///< [°C]
  std::vector<double> factor;

  /// The factor at `at` [°C]: straight lines between the points, the end values beyond them (no law
  /// is made up); 1 without points.
  double factorAt(double at) const;
};

/// Reads "-20 degC 2.4; 0 degC 1.5; 20 degC 1": pairs of temperature and factor, parted by
/// semicolons or lines, in any order. Fails saying which pair is wrong and what would be right.
tl::expected<GreaseTable, InputError> readGreaseTable(std::string_view text);

}  // namespace jw

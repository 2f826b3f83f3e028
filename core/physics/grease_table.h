#pragma once

#include "core/physics/point_table.h"

namespace jw {

/// Factors on a no-load torque by temperature [°C], rising temperatures.
struct GreaseTable {
  PointTable points;

  /// The factor at `at` [°C]; 1 without points.
  double factorAt(double at) const { return points.empty() ? 1 : points.valueAt(at); }
};

/// Reads "-20 degC 2.4; 0 degC 1.5; 20 degC 1": pairs of temperature and factor. Fails saying which
/// pair is wrong and what would be right.
tl::expected<GreaseTable, InputError> readGreaseTable(std::string_view text);

}  // namespace jw

#pragma once

#include <limits>
#include <string_view>
#include <vector>

#include <tl/expected.hpp>

#include "core/quantity/quantity.h"

namespace jw {

/// A curve through points, x strictly rising, both in internal units.
struct PointTable {
  std::vector<double> x;
  std::vector<double> y;

  bool empty() const { return x.empty(); }
  /// The value at `at`: straight lines between the points, the end values beyond them (no law is
  /// made up). Not for an empty table.
  double valueAt(double at) const;
};

/// What one column of such a table holds.
struct PointColumn {
  std::string_view noun;  ///< "temperature"
  Quantity quantity = Quantity::Number;
  std::string_view unit;                                  ///< of a bare number
  double low = -std::numeric_limits<double>::infinity();  ///< excluded; internal unit
  double high = std::numeric_limits<double>::infinity();  ///< allowed; internal unit
};

/// What a table is of.
struct PointTableKind {
  PointColumn x;
  PointColumn y;
  std::string_view example;  ///< "-20 degC 2.4; 20 degC 1"
};

/// Reads pairs like "0.2 s 5 N*m; 1 s 12 N*m", parted by semicolons or lines, in any order. Empty
/// text gives an empty table. Fails saying which pair is wrong and what would be right.
tl::expected<PointTable, InputError> readPointTable(std::string_view text,
                                                    const PointTableKind& kind);

}  // namespace jw

#pragma once

#include <string>
#include <string_view>

namespace jw::detail {

/// A rounded number as ±0.d1d2d3… · 10^point, without trailing zeros.
struct Decimal {
  bool negative = false;
  std::string digits;  ///< "0" for zero
  int point = 1;       ///< digits before the decimal point, e.g. 2 for 12.5, -1 for 0.0125

  std::string whole() const;     ///< "12", "0", "1200"
  std::string decimals() const;  ///< digits after the point, may be empty
  /// As it can be typed: "-12.5", "3000", "1.5e-9".
  std::string plain() const;
};

/// `value` (finite) rounded to `digits` significant digits (1 to 17). Never depends on the locale.
Decimal toDecimal(double value, int digits);

}  // namespace jw::detail

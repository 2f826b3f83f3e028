#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace jw {

/// A number as text that reads back as the same number (RFC 4180 cells): empty for NaN, "inf" and
/// "-inf" for what has no end. Never depends on the locale.
std::string csvNumber(double value);

/// A cell; in quotation marks where commas, quotation marks or line ends ask for them.
std::string csvCell(std::string_view text);

/// Cells as one line.
std::string csvLine(const std::vector<std::string>& cells);

/// "motor.torque_peak [N*m]"; without brackets for the unit "1".
std::string csvTitle(std::string_view name, std::string_view unit);

}  // namespace jw

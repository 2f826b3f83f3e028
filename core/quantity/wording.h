#pragma once

#include <string>
#include <string_view>

namespace jw::detail {

/// `text` in quotation marks for a message: broken UTF-8 and control characters replaced, long
/// text cut short.
std::string quoted(std::string_view text);

/// "⁰" to "⁹".
std::string_view superscript(int digit);

/// "a torque", "an inertia".
std::string withArticle(std::string_view noun);

/// A number for a remedy, at most six significant digits, e.g. "3000" or "0.0712"; it can be typed.
std::string shortNumber(double value);

}  // namespace jw::detail

#include "app/whole_number.h"

#include <charconv>

#include <fmt/format.h>

#include "widgets/theme/number_text.h"

namespace jw {

std::string countText(std::size_t count) {
  return fixedNumber(static_cast<double>(count), 0).toStdString();
}

tl::expected<long long, InputError> readWholeNumber(const std::string& text, long long low,
                                                    long long high) {
  const auto refuse = [&](const char* what) {
    return tl::unexpected(InputError{fmt::format("'{}' is {}", text, what), "",
                                     fmt::format("give a whole number from {} to {}", low,
                                                 countText(static_cast<std::size_t>(high)))});
  };
  long long value = 0;
  const char* const end = text.data() + text.size();
  const auto read = std::from_chars(text.data(), end, value);
  if (read.ptr != end || read.ec == std::errc::invalid_argument) return refuse("no whole number");
  if (read.ec != std::errc() || value < low || value > high) return refuse("out of range");
  return value;
}

}  // namespace jw

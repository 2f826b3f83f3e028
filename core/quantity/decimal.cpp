#include "core/quantity/decimal.h"

#include <algorithm>
#include <charconv>
#include <cstddef>

#include <fmt/format.h>

namespace jw::detail {
namespace {

constexpr int kMostZeros = 6;
constexpr int kMostWholeDigits = 15;

std::string zeros(int count) {
  return std::string(static_cast<std::size_t>(std::max(count, 0)), '0');
}

std::string joined(const std::string& whole, const std::string& decimals) {
  return decimals.empty() ? whole : whole + '.' + decimals;
}

}  // namespace

std::string Decimal::whole() const {
  if (point <= 0) return "0";
  const auto count = static_cast<int>(digits.size());
  return digits.substr(0, static_cast<std::size_t>(point)) + zeros(point - count);
}

std::string Decimal::decimals() const {
  if (point <= 0) return zeros(-point) + digits;
  const auto start = static_cast<std::size_t>(point);
  return start < digits.size() ? digits.substr(start) : std::string();
}

std::string Decimal::plain() const {
  const std::string sign = negative ? "-" : "";
  if (point > -kMostZeros && point <= kMostWholeDigits) return sign + joined(whole(), decimals());
  return fmt::format("{}{}e{}", sign, joined(digits.substr(0, 1), digits.substr(1)), point - 1);
}

Decimal toDecimal(double value, int digits) {
  const auto text = fmt::format("{:.{}e}", value, std::clamp(digits, 1, 17) - 1);
  const auto exponent = text.find('e');
  Decimal result;
  result.negative = text[0] == '-';
  for (const char c : text.substr(0, exponent)) {
    if (c >= '0' && c <= '9') result.digits += c;
  }
  result.digits.erase(std::max<std::size_t>(result.digits.find_last_not_of('0') + 1, 1));
  const auto* power = text.data() + exponent + 1;
  if (*power == '+') ++power;
  std::from_chars(power, text.data() + text.size(), result.point);
  result.point = value == 0.0 ? 1 : result.point + 1;
  return result;
}

}  // namespace jw::detail

#include "core/quantity/wording.h"

#include <array>
#include <cassert>
#include <cstddef>

#include <fmt/format.h>

#include "core/quantity/decimal.h"

namespace jw::detail {
namespace {

constexpr std::size_t kLongestQuote = 40;

/// Bytes of the UTF-8 character `text` begins with; 0 if it is broken.
std::size_t leadingCharacter(std::string_view text) {
  const auto first = static_cast<unsigned char>(text[0]);
  const std::size_t length = first < 0x80                    ? 1
                             : first >= 0xC2 && first < 0xE0 ? 2
                             : first >= 0xE0 && first < 0xF0 ? 3
                             : first >= 0xF0 && first < 0xF5 ? 4
                                                             : 0;
  if (length > text.size()) return 0;
  for (std::size_t i = 1; i < length; ++i) {
    if ((static_cast<unsigned char>(text[i]) & 0xC0) != 0x80) return 0;
  }
  return length;
}

bool isControl(char c) {
  return static_cast<unsigned char>(c) < 0x20 || c == '\x7F';
}

}  // namespace

std::string quoted(std::string_view text) {
  std::string clean;
  while (!text.empty() && clean.size() < kLongestQuote) {
    const auto length = leadingCharacter(text);
    const bool readable = length > 0 && !isControl(text[0]);
    clean += readable ? text.substr(0, length) : std::string_view("\uFFFD");
    text.remove_prefix(length > 0 ? length : 1);
  }
  return fmt::format("'{}{}'", clean, text.empty() ? "" : "…");
}

std::string_view superscript(int digit) {
  static constexpr std::array<std::string_view, 10> kSigns = {"⁰", "¹", "²", "³", "⁴",
                                                              "⁵", "⁶", "⁷", "⁸", "⁹"};
  assert(digit >= 0 && digit <= 9);
  return kSigns[static_cast<std::size_t>(digit)];
}

std::string withArticle(std::string_view noun) {
  const bool vowel = std::string_view("aeio").find(noun[0]) != std::string_view::npos;
  return fmt::format("{} {}", vowel ? "an" : "a", noun);
}

std::string shortNumber(double value) {
  return toDecimal(value, 6).plain();
}

}  // namespace jw::detail

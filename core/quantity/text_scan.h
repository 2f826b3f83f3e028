#pragma once

#include <cstddef>
#include <initializer_list>
#include <string_view>

namespace jw::detail {

inline bool isDigit(char c) {
  return c >= '0' && c <= '9';
}

inline bool isAsciiLetter(char c) {
  return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z');
}

/// Length of the first of `signs` that `text` begins with; 0 if it begins with none.
inline std::size_t leading(std::string_view text, std::initializer_list<std::string_view> signs) {
  for (const auto sign : signs) {
    if (text.starts_with(sign)) return sign.size();
  }
  return 0;
}

/// Length of one leading space: blank, tab, no-break (U+00A0), figure (U+2007), thin (U+2009) or
/// narrow no-break space (U+202F).
inline std::size_t leadingSpace(std::string_view text) {
  return leading(text, {" ", "\t", "\u00A0", "\u2007", "\u2009", "\u202F"});
}

inline std::size_t leadingDigits(std::string_view text) {
  std::size_t count = 0;
  while (count < text.size() && isDigit(text[count])) ++count;
  return count;
}

inline std::string_view withoutLeadingSpace(std::string_view text) {
  while (const auto length = leadingSpace(text)) text.remove_prefix(length);
  return text;
}

/// `text` without spaces (as in leadingSpace) at either end.
std::string_view trimmed(std::string_view text);

}  // namespace jw::detail

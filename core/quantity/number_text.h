#pragma once

#include <string>
#include <string_view>

#include <tl/expected.hpp>

#include "core/quantity/quantity.h"

namespace jw::detail {

struct ReadNumber {
  double value;
  std::string_view rest;  ///< what follows, without spaces at its ends
};

/// Reads the number `text` begins with: 12, -5, −5, 1.5, 1,5, .5, 1e3, 1.2×10⁻³, 7 000, 3/8, 1 3/8.
/// An error may come without a remedy; then an example of the quantity asked for is right.
tl::expected<ReadNumber, InputError> readNumber(std::string_view text);

/// If `text` begins with a word in which letters stand for digits ("OOO h", "1O0"), the text with
/// digits in their place; else empty.
std::string withDigitsForLetters(std::string_view text);

}  // namespace jw::detail

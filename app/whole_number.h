#pragma once

#include <string>

#include <tl/expected.hpp>

#include "core/quantity/quantity.h"

namespace jw {

/// "191 488 000": thin spaces (U+2009) between thousands.
std::string countText(std::size_t count);

/// Reads a whole number from `low` to `high`, digits with an optional minus sign. The error says
/// what was found and what is right; its place is for the caller to name.
tl::expected<long long, InputError> readWholeNumber(const std::string& text, long long low,
                                                    long long high);

}  // namespace jw

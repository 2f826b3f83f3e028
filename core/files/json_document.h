#pragma once

#include <string>
#include <string_view>

#include <nlohmann/json.hpp>
#include <tl/expected.hpp>

#include "core/quantity/quantity.h"

namespace jw {

/// JSON that keeps the order of its keys.
using Json = nlohmann::ordered_json;

/// Deepest nesting and most keys of one object that a document may have.
inline constexpr std::size_t kDeepestNesting = 32;
inline constexpr std::size_t kMostKeys = 10'000;

/// Reads one JSON document strictly (RFC 8259): UTF-8 only, no key twice in one object, no number
/// beyond a double, no nesting deeper than kDeepestNesting, nothing after the document. Errors name
/// file, line and column, or the path at which a key is repeated.
tl::expected<Json, InputError> parseJson(std::string_view text, std::string_view fileName);

/// "motor" + "ratio" -> "motor.ratio"; an empty parent gives the key alone.
std::string childPath(std::string_view parent, std::string_view key);

/// "transmission", 1 -> "transmission[1]".
std::string elementPath(std::string_view parent, std::size_t index);

/// A value as a message quotes it: its kind and, if short, its text: `the text "12 J"`.
std::string quoteValue(const Json& value);

}  // namespace jw

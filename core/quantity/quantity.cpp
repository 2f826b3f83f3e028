#include "core/quantity/quantity.h"

#include <cmath>

#include <fmt/format.h>

#include "core/quantity/conversion.h"
#include "core/quantity/number_text.h"
#include "core/quantity/quantity_row.h"
#include "core/quantity/refusal.h"
#include "core/quantity/text_scan.h"
#include "core/quantity/wording.h"

namespace jw {
namespace {

using detail::askFor;
using detail::convertIn;
using detail::leading;
using detail::meaningOf;
using detail::measures;
using detail::quoted;
using detail::ReadNumber;
using detail::readNumber;
using detail::shortNumber;
using detail::trimmed;
using detail::UnitTextError;
using detail::unknownUnit;
using detail::withDigitsForLetters;
using detail::wrongUnit;
using Parsed = tl::expected<ParsedQuantity, InputError>;

constexpr std::size_t kLongestEntry = 200;

Parsed refuse(InputError error, Quantity quantity) {
  if (error.remedy.empty()) error.remedy = askFor(quantity);
  return tl::unexpected(std::move(error));
}

Parsed kept(double value, std::string_view unit, Quantity quantity) {
  if (std::isfinite(value)) return ParsedQuantity{value, std::string(unit)};
  return refuse({"the number is too large to be kept", {}, {}}, quantity);
}

Parsed inUnit(const ReadNumber& number, Quantity quantity) {
  auto unit = meaningOf(number.rest);
  if (number.rest == "1") unit = tl::unexpected(UnitTextError{});  // as in "5 1"
  if (!unit) {
    return refuse(unknownUnit(number.value, number.rest, unit.error(), quantity), quantity);
  }
  if (!measures(**unit, quantity)) {
    return refuse(wrongUnit(number.value, **unit, quantity), quantity);
  }
  return kept(convertIn(number.value, **unit, quantity), number.rest, quantity);
}

Parsed lettersForDigits(const std::string& digits, std::string_view rest, Quantity quantity) {
  const auto word = rest.substr(0, rest.find(' '));
  return refuse({fmt::format("a number is expected, but {} is typed with letters", quoted(word)),
                 {},
                 fmt::format("type digits, e.g. {}", digits)},
                quantity);
}

std::size_t leadingColon(std::string_view text) {
  return leading(text, {":", "\u2236"});
}

/// "100:1"; `first` is read already.
Parsed ratioTo(const ReadNumber& first, std::string_view second) {
  const auto number = readNumber(second);
  if (!number) return refuse(number.error(), Quantity::Ratio);
  if (!number->rest.empty() || !(number->value > 0.0) || !(first.value > 0.0)) {
    return refuse({"a speed ratio is two positive numbers, as in 100:1", {}, {}}, Quantity::Ratio);
  }
  const double ratio = first.value / number->value;
  if (ratio >= 1.0) return kept(ratio, {}, Quantity::Ratio);
  return refuse({"a speed ratio is input over output speed: a reduction is above 1",
                 {},
                 fmt::format("type {} for a reduction, or {} if the output turns faster",
                             shortNumber(1.0 / ratio), shortNumber(ratio))},
                Quantity::Ratio);
}

}  // namespace

std::string describe(const InputError& error) {
  std::string line = error.where;
  if (!line.empty()) line += ": ";
  line += error.what;
  if (!error.remedy.empty()) line += "; " + error.remedy;
  return line;
}

Parsed parseQuantity(std::string_view text, Quantity quantity, std::string_view bareUnit) {
  if (text.size() > kLongestEntry) {
    return refuse({fmt::format("the entry is longer than {} characters", kLongestEntry), {}, {}},
                  quantity);
  }
  text = trimmed(text);
  const auto number = readNumber(text);
  const auto rest = number ? number->rest : text;
  const auto before = text.substr(0, static_cast<std::size_t>(rest.data() - text.data()));
  if (const auto digits = withDigitsForLetters(rest); !digits.empty()) {
    return lettersForDigits(std::string(before) + digits, rest, quantity);
  }
  if (!number) return refuse(number.error(), quantity);
  if (quantity == Quantity::Ratio) {
    if (const auto colon = leadingColon(rest)) return ratioTo(*number, rest.substr(colon));
  }
  if (!rest.empty()) return inUnit(*number, quantity);
  if (bareUnit.empty()) bareUnit = quantityInfo(quantity).internalUnit;
  return kept(toInternal(number->value, bareUnit, quantity), {}, quantity);
}

}  // namespace jw

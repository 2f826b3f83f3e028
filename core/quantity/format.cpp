#include <cmath>
#include <limits>
#include <optional>
#include <string>

#include "core/quantity/conversion.h"
#include "core/quantity/decimal.h"
#include "core/quantity/number_text.h"
#include "core/quantity/quantity.h"
#include "core/quantity/quantity_row.h"
#include "core/quantity/unit_text.h"
#include "core/quantity/wording.h"

namespace jw {
namespace {

constexpr int kFewestDigits = 12;  // shorter numbers end in zeros, which are dropped
constexpr int kMostDigits = 17;
constexpr int kNeighbours = 2;

std::string withThinSpaces(const std::string& whole) {
  std::string spaced;
  for (std::size_t i = 0; i < whole.size(); ++i) {
    if (i > 0 && (whole.size() - i) % 3 == 0) spaced += "\u2009";
    spaced += whole[i];
  }
  return spaced;
}

std::string withDecimals(std::string whole, const std::string& decimals) {
  return decimals.empty() ? whole : std::move(whole) + "." + decimals;
}

/// "1.2×10⁻⁵"
std::string scientific(const detail::Decimal& number) {
  auto text = withDecimals(number.digits.substr(0, 1), number.digits.substr(1)) + "×10";
  const int power = number.point - 1;
  if (power < 0) text += "⁻";
  for (const char digit : std::to_string(std::abs(power))) text += detail::superscript(digit - '0');
  return text;
}

/// From 1e-4 to 1e7.
bool readsPlain(const detail::Decimal& number) {
  return number.point >= -3 && (number.point <= 7 || (number.point == 8 && number.digits == "1"));
}

std::string_view usualUnit(Quantity quantity) {
  return quantityInfo(quantity).units.front();
}

/// Fewest digits of a number near `shown` that is read as exactly `internal`.
std::optional<std::string> exactDigits(double shown, double internal,
                                       const detail::UnitMeaning& unit, Quantity quantity) {
  for (int digits = kFewestDigits; digits <= kMostDigits; ++digits) {
    auto text = detail::toDecimal(shown, digits).plain();
    const auto read = detail::readNumber(text);
    if (read && detail::convertIn(read->value, unit, quantity) == internal) return text;
  }
  return std::nullopt;
}

/// As exactDigits, from the conversion of `internal` and its nearest neighbours.
std::optional<std::string> exactDigits(double internal, const detail::UnitMeaning& unit,
                                       Quantity quantity) {
  const double nearest = detail::convertOut(internal, unit, quantity);
  double below = nearest;
  double above = nearest;
  for (int step = 0; step <= kNeighbours; ++step) {
    if (auto text = exactDigits(below, internal, unit, quantity)) return text;
    if (auto text = exactDigits(above, internal, unit, quantity)) return text;
    below = std::nextafter(below, -std::numeric_limits<double>::infinity());
    above = std::nextafter(above, std::numeric_limits<double>::infinity());
  }
  return std::nullopt;
}

std::string typed(const std::string& digits, std::string_view unit) {
  return unit == "1" ? digits : digits + " " + std::string(unit);
}

}  // namespace

std::string formatNumber(double value, int digits) {
  if (std::isnan(value)) return "–";
  const std::string sign = value < 0.0 ? "−" : "";
  if (std::isinf(value)) return sign + "∞";
  const auto number = detail::toDecimal(std::abs(value), digits);
  if (!readsPlain(number)) return sign + scientific(number);
  return sign + withDecimals(withThinSpaces(number.whole()), number.decimals());
}

std::string prettyUnit(std::string_view unit) {
  if (unit == "1") return {};
  const auto text = detail::readUnitText(unit);
  return text ? text->print : std::string(unit);
}

std::string formatQuantity(double internal, Quantity quantity, std::string_view unit, int digits) {
  if (unit.empty()) unit = usualUnit(quantity);
  const auto meaning = detail::unitFor(unit, quantity);
  const auto number = formatNumber(detail::convertOut(internal, *meaning, quantity), digits);
  if (unit == "1") return number;
  // No space before the degree of an angle: SI Brochure, 5.4.3; from memory.
  const bool close = meaning->text.print == "°" && std::isfinite(internal);
  return number + (close ? "" : " ") + meaning->text.print;
}

std::string typedForm(double internal, Quantity quantity, std::string_view unit) {
  if (!std::isfinite(internal)) return {};
  if (unit.empty()) unit = usualUnit(quantity);
  const auto meaning = detail::unitFor(unit, quantity);
  if (const auto digits = exactDigits(internal, *meaning, quantity)) return typed(*digits, unit);
  const auto& own = quantityInfo(quantity).internalUnit;
  return typed(*exactDigits(internal, *detail::unitFor(own, quantity), quantity), own);
}

}  // namespace jw

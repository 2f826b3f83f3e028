#include "core/quantity/conversion.h"

#include <cstddef>
#include <optional>
#include <stdexcept>
#include <vector>

#include <fmt/format.h>

#include "core/quantity/quantity_row.h"

namespace jw {
namespace detail {
namespace {

struct Dimensions {
  Dimension internal{};
  std::optional<Dimension> alternative;
};

std::vector<Dimensions> allDimensions() {
  std::vector<Dimensions> all;
  for (const auto& row : quantityRows()) {
    auto& entry = all.emplace_back();
    entry.internal = meaningOf(row.info.internalUnit).value()->dimension;
    if (!row.alternative.empty()) {
      entry.alternative = meaningOf(row.alternative).value()->dimension;
    }
  }
  return all;
}

const Dimensions& dimensions(Quantity quantity) {
  static const auto all = allDimensions();
  return all.at(static_cast<std::size_t>(quantity));
}

bool isScaleFree(const UnitMeaning& unit) {
  return unit.factor == 1.0 && unit.divisor == 1.0;
}

}  // namespace

const Dimension& dimensionOf(Quantity quantity) {
  return dimensions(quantity).internal;
}

bool measures(const UnitMeaning& unit, Quantity quantity) {
  const auto& wanted = dimensions(quantity);
  if (unit.dimension != wanted.internal && unit.dimension != wanted.alternative) return false;
  switch (quantity) {
    case Quantity::Number:
    case Quantity::Ratio:
      return isScaleFree(unit);
    case Quantity::Temperature:
      return unit.single;
    default:
      return true;
  }
}

double convertIn(double value, const UnitMeaning& unit, Quantity quantity) {
  const double zero = quantity == Quantity::Temperature ? unit.zero : 0.0;
  return (value - zero) * unit.factor / unit.divisor;
}

double convertOut(double internal, const UnitMeaning& unit, Quantity quantity) {
  const double zero = quantity == Quantity::Temperature ? unit.zero : 0.0;
  return internal * unit.divisor / unit.factor + zero;
}

SharedMeaning unitFor(std::string_view unit, Quantity quantity) {
  auto meaning = meaningOf(unit);
  if (meaning && measures(**meaning, quantity)) return *meaning;
  throw std::logic_error(
      fmt::format("'{}' is no unit of {}", unit, quantityRow(quantity).info.name));
}

}  // namespace detail

double toInternal(double value, std::string_view unit, Quantity quantity) {
  return detail::convertIn(value, *detail::unitFor(unit, quantity), quantity);
}

double fromInternal(double internal, std::string_view unit, Quantity quantity) {
  return detail::convertOut(internal, *detail::unitFor(unit, quantity), quantity);
}

bool isUnitOf(std::string_view unit, Quantity quantity) {
  const auto meaning = detail::meaningOf(unit);
  return meaning && detail::measures(**meaning, quantity);
}

}  // namespace jw

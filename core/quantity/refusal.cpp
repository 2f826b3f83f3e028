#include "core/quantity/refusal.h"

#include <algorithm>
#include <array>
#include <cctype>
#include <cstddef>
#include <functional>
#include <numeric>
#include <optional>
#include <utility>
#include <vector>

#include <fmt/format.h>

#include "core/quantity/conversion.h"
#include "core/quantity/quantity_row.h"
#include "core/quantity/text_scan.h"
#include "core/quantity/wording.h"

namespace jw::detail {
namespace {

using enum Quantity;

/// Kinds that no field asks for, but that people type.
constexpr std::pair<std::string_view, std::string_view> kOtherKinds[] = {
    {"kg*m", "mass times length"},
    {"kg*m*s^2", "mass times length times time squared"},
    {"N*m^2", "force times area"},
    {"N*m*s", "angular momentum"},
    {"N*s", "momentum"},
    {"N*m/s", "torque per time"},
    {"m^2", "area"},
    {"m^3", "volume"},
    {"N/m^2", "pressure"},
    {"kg/m^3", "density"},
    {"N/m", "linear stiffness"},
    {"1/s^2", "frequency squared"},
};

/// What a unit near the wanted one may have meant: the typed value in base units times a factor.
struct Meant {
  std::string_view unit;
  double factor = 1.0;
};

struct Hint {
  Quantity field;
  std::string_view like;
  Meant meant;
  Meant orMeant = {};
};

constexpr double kPerTurn = 0.15915494309189535;  // 1/(2π)

constexpr Hint kHints[] = {
    {AngularSpeed, "1/s", {"rev/s"}, {"rpm", 60.0}},
    {AngularAcceleration, "1/s^2", {"rad/s^2"}, {"rev/s^2"}},
    {AngularJerk, "1/s^3", {"rad/s^3"}},
    {Frequency, "rad/s", {"Hz", kPerTurn}},
    {Torque, "J", {"N*m"}},
    {Energy, "N*m", {"J"}},
    {Power, "N*m/s", {"W"}},
    {FluxLinkage, "V*s/rad", {"Wb"}},
    {VoltageConstant, "V*s", {"V*s/rad"}},
    {TorqueConstant, "V*s", {"V*s/rad"}},
    {SpeedConstant, "1/(V*s)", {"rpm/V", 60.0}, {"rad/(s*V)"}},
    {TorsionalStiffness, "N*m", {"N*m/rad"}},
    {TorsionalStiffness, "J", {"N*m/rad"}},
    {TorsionalDamping, "N*m", {"N*m*s/rad"}},
};

using Words = std::vector<std::pair<std::string_view, std::string_view>>;

/// Mix-ups of one word for another: weight for mass, a letter for a temperature scale.
const std::array<Words, 3>& mixUps() {
  static const std::array<Words, 3> kMixUps = {{
      {{"lb", "lbf"}, {"oz", "ozf"}, {"kg", "kgf"}, {"g", "gf"}},
      {{"lbf", "lb"}, {"ozf", "oz"}, {"kgf", "kg"}, {"gf", "g"}},
      {{"deg*C", "degC"}, {"deg*F", "degF"}, {"C", "degC"}, {"F", "degF"}},
  }};
  return kMixUps;
}

bool isWordEdge(const std::string& text, std::size_t at) {
  return at >= text.size() || !(isAsciiLetter(text[at]) || text[at] == '_');
}

std::string replaceWord(std::string text, std::string_view word, std::string_view by) {
  for (auto at = text.find(word); at != std::string::npos; at = text.find(word, at + 1)) {
    if (!isWordEdge(text, at - 1) || !isWordEdge(text, at + word.size())) continue;
    text.replace(at, word.size(), by);
    at += by.size() - 1;
  }
  return text;
}

std::string typeInstead(double value, std::string_view unit) {
  return fmt::format("{} {}", shortNumber(value), prettyUnit(unit));
}

std::optional<std::string> mixUpRemedy(double value, const UnitMeaning& unit, Quantity quantity) {
  for (const auto& words : mixUps()) {
    auto text = unit.text.canonical;
    for (const auto& [word, by] : words) text = replaceWord(std::move(text), word, by);
    if (isUnitOf(text, quantity)) {
      return fmt::format("type {} for {}", typeInstead(value, text),
                         withArticle(quantityInfo(quantity).name));
    }
  }
  return std::nullopt;
}

std::optional<std::string> hintRemedy(double value, const UnitMeaning& unit, Quantity quantity) {
  const double base = value * unit.factor / unit.divisor;
  for (const auto& hint : kHints) {
    if (hint.field != quantity) continue;
    if (meaningOf(hint.like).value()->dimension != unit.dimension) continue;
    auto remedy = "type " + typeInstead(base * hint.meant.factor, hint.meant.unit);
    if (!hint.orMeant.unit.empty()) {
      remedy += " or " + typeInstead(base * hint.orMeant.factor, hint.orMeant.unit);
    }
    const bool shaft = quantity == AngularSpeed;
    return remedy + " for " + (shaft ? "a shaft speed" : withArticle(quantityInfo(quantity).name));
  }
  return std::nullopt;
}

bool hasVoltWord(const UnitMeaning& unit) {
  return unit.text.print.find_first_of("Vb") != std::string::npos;
}

/// The trade name of what `unit` measures; empty if it has none.
std::string_view kindOf(const UnitMeaning& unit) {
  for (const auto& row : quantityRows()) {
    const auto quantity = row.info.quantity;
    if (quantity == Number || quantity == Ratio || quantity == Fraction) continue;
    if (quantity == TorqueConstant && hasVoltWord(unit)) continue;
    if (unit.dimension == dimensionOf(quantity)) return row.info.name;
  }
  for (const auto& [like, name] : kOtherKinds) {
    if (unit.dimension == meaningOf(like).value()->dimension) return name;
  }
  return {};
}

std::string whatIsWrong(const UnitMeaning& unit, Quantity quantity) {
  const auto wanted = quantityInfo(quantity).name;
  const auto& print = unit.text.print;
  if (quantity == Number || quantity == Ratio) {
    return fmt::format("{} has no unit, but {} is typed", withArticle(wanted), print);
  }
  if (unit.dimension == Dimension{}) {
    return fmt::format("{} is a share of one, not {}", print, withArticle(wanted));
  }
  const auto kind = kindOf(unit);
  if (!kind.empty() && kind != wanted) {
    return fmt::format("{} is a unit of {}, not of {}", print, kind, wanted);
  }
  return fmt::format("{} is no unit of {}", print, wanted);
}

std::string remedyFor(double value, const UnitMeaning& unit, Quantity quantity) {
  if (quantity == Number || quantity == Ratio) return "type " + shortNumber(value);
  if (auto remedy = mixUpRemedy(value, unit, quantity)) return *remedy;
  if (auto remedy = hintRemedy(value, unit, quantity)) return *remedy;
  return askFor(quantity);
}

/// Small letters, digits and slashes only: how a unit sounds.
std::string folded(std::string_view unit) {
  std::string result;
  for (const char c : unit) {
    if (isAsciiLetter(c)) result += static_cast<char>(c | 0x20);
    if (isDigit(c) || c == '/') result += c;
  }
  return result;
}

/// Levenshtein distance.
std::size_t editDistance(std::string_view a, std::string_view b) {
  std::vector<std::size_t> row(b.size() + 1);
  std::iota(row.begin(), row.end(), std::size_t{0});
  for (std::size_t i = 0; i < a.size(); ++i) {
    auto diagonal = std::exchange(row[0], i + 1);
    for (std::size_t j = 0; j < b.size(); ++j) {
      const auto change = diagonal + (a[i] == b[j] ? 0 : 1);
      diagonal = row[j + 1];
      row[j + 1] = std::min({change, row[j] + 1, diagonal + 1});
    }
  }
  return row.back();
}

/// The offered unit spelt most like `typed`; empty if none is close.
std::string_view nearestUnit(std::string_view typed, Quantity quantity) {
  const auto wanted = folded(typed);
  std::size_t nearest = wanted.size() < 2 ? 1 : wanted.size() < 5 ? 2 : 3;
  std::string_view found;
  for (const auto unit : quantityInfo(quantity).units) {
    const auto distance = editDistance(wanted, folded(unit));
    if (wanted.empty() || distance >= std::min(nearest, folded(unit).size())) continue;
    nearest = distance;
    found = unit;
  }
  return found;
}

std::string offeredUnits(Quantity quantity) {
  const auto units = quantityInfo(quantity).units;
  std::string list = prettyUnit(units[0]);
  const auto count = std::min<std::size_t>(units.size(), 3);
  for (std::size_t i = 1; i < count; ++i) {
    const auto print = prettyUnit(units[i]);
    if (!print.empty()) list += (i + 1 == count ? " or " : ", ") + print;
  }
  return list;
}

}  // namespace

std::string askFor(Quantity quantity) {
  const auto& row = quantityRow(quantity);
  return fmt::format("type {}, e.g. {}", withArticle(row.info.name), row.example);
}

InputError unknownUnit(double value, std::string_view typed, const UnitTextError& error,
                       Quantity quantity) {
  auto what = error.unknown.empty() ? quoted(typed) + " cannot be read as a unit"
                                    : quoted(error.unknown) + " is no known unit";
  if (const auto near = nearestUnit(typed, quantity); !near.empty()) {
    const auto meant = near == "1" ? shortNumber(value) : typeInstead(value, near);
    return {std::move(what), {}, fmt::format("perhaps {} is meant", meant)};
  }
  const auto units = offeredUnits(quantity);
  if (units.empty()) return {std::move(what), {}, askFor(quantity)};
  return {std::move(what), {}, "try " + units};
}

InputError wrongUnit(double value, const UnitMeaning& unit, Quantity quantity) {
  return {whatIsWrong(unit, quantity), {}, remedyFor(value, unit, quantity)};
}

}  // namespace jw::detail

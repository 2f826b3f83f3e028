#include "core/quantity/unit_table.h"

#include <functional>
#include <numbers>
#include <stdexcept>
#include <unordered_map>
#include <utility>

namespace jw::detail {
namespace {

constexpr double kPi = std::numbers::pi;
// Exact by definition: international pound and inch, standard acceleration of free fall
// (NIST SP 811, 2008, Appendix B.6 and B.8).
constexpr double kPound = 0.45359237;
constexpr double kInch = 0.0254;
constexpr double kFoot = 0.3048;
constexpr double kFreeFall = 9.80665;
constexpr double kPoundForce = 4.4482216152605;  // kPound * kFreeFall, exact in decimal
constexpr double kFootPoundForce = 1.3558179483314004;

// The radian is a base unit, so torque (N·m) is not energy (J = N·m·rad) and a rotational speed
// (rad/s) is no frequency (1/s). The degree Celsius is the base unit of temperature: °F then
// converts as (F − 32)·5/9 without a detour over 273.15; in products it is a kelvin.
constexpr UnitRow kRows[] = {
    {"m", "m", "metre metres meter meters", "kcmu", 1, ""},
    {"kg", "kg", "kilogram kilograms", "", 1, ""},
    {"s", "s", "sec second seconds", "mun", 1, ""},
    {"A", "A", "amp amps ampere amperes", "kmu", 1, ""},
    {"degC", "°C", "°C ºC ℃ celsius", "", 1, ""},
    {"rad", "rad", "radian radians", "mu", 1, ""},

    {"K", "K", "kelvin", "", 1, "degC", 273.15},
    {"degF", "°F", "°F ºF ℉ fahrenheit", "", 5.0 / 9.0, "degC", 32.0},

    {"in", "in", "inch inches", "", kInch, "m"},
    {"ft", "ft", "foot feet", "", kFoot, "m"},
    {"g", "g", "gram grams", "m", 1e-3, "kg"},
    {"t", "t", "tonne tonnes", "", 1000, "kg"},
    {"lb", "lb", "lbs lbm pound pounds", "", kPound, "kg"},
    {"oz", "oz", "ounce ounces", "", kPound / 16, "kg"},
    {"slug", "slug", "slugs", "", kPoundForce / kFoot, "kg"},
    {"min", "min", "minute minutes", "", 60, "s"},
    {"h", "h", "hr hrs hour hours", "", 3600, "s"},
    {"d", "d", "day days", "", 86400, "s"},
    {"Hz", "Hz", "hertz", "kM", 1, "s^-1"},

    {"deg", "°", "° º degree degrees", "", kPi / 180, "rad"},
    {"arcmin", "arcmin", "' ′", "", kPi / 10800, "rad"},
    {"arcsec", "arcsec", "\" ″", "", kPi / 648000, "rad"},
    {"grad", "grad", "gon", "", kPi / 200, "rad"},
    {"rev", "rev", "r revs revolution revolutions turn turns", "k", 2 * kPi, "rad"},
    {"rpm", "rpm", "RPM Rpm", "k", kPi / 30, "rad/s"},
    {"rps", "rev/s", "", "", 2 * kPi, "rad/s"},

    {"N", "N", "newton newtons", "kMcmu", 1, "kg*m/s^2"},
    {"lbf", "lbf", "", "", kPoundForce, "N"},
    {"ozf", "ozf", "", "", kPoundForce / 16, "N"},
    {"kgf", "kgf", "kp", "", kFreeFall, "N"},
    {"gf", "gf", "", "", kFreeFall / 1000, "N"},
    {"Pa", "Pa", "pascal pascals", "kMG", 1, "N/m^2"},
    {"psi", "psi", "", "", kPoundForce / (kInch * kInch), "Pa"},
    {"ksi", "ksi", "", "", 1000, "psi"},
    {"Nm", "N·m", "", "kMcmu", 1, "N*m"},
    {"Ncm", "N·cm", "", "", 0.01, "N*m"},
    {"Nmm", "N·mm", "", "", 0.001, "N*m"},
    {"Nms", "N·m·s", "", "mu", 1, "N*m*s"},

    {"J", "J", "joule joules", "kMmu", 1, "N*m*rad"},
    {"W", "W", "watt watts", "kMmu", 1, "J/s"},
    {"Wh", "Wh", "", "kM", 3600, "J"},
    {"Ws", "W·s", "", "k", 1, "J"},
    {"hp", "hp", "HP horsepower", "", 550 * kFootPoundForce, "W"},
    {"hp_metric", "PS", "PS", "", 75 * kFreeFall, "W"},

    {"V", "V", "volt volts", "kmu", 1, "W/A"},
    {"VA", "V·A", "", "k", 1, "W"},
    {"ohm", "Ω", "Ohm ohms Ohms", "kMmu", 1, "V/A"},
    {"Wb", "Wb", "weber webers", "mu", 1, "V*s"},
    {"Vs", "V·s", "", "mu", 1, "V*s"},
    {"H", "H", "henry henries", "mun", 1, "Wb/A"},
    {"C", "C", "coulomb coulombs", "mu", 1, "A*s"},
    {"As", "A·s", "", "m", 1, "A*s"},
    {"Ah", "Ah", "", "m", 3600, "A*s"},
    {"F", "F", "farad farads", "munp", 1, "C/V"},

    {"percent", "%", "%", "", 0.01, "1"},
};

using Spellings = std::unordered_map<std::string, KnownUnit>;

void addSpelling(Spellings& known, std::string spelling, const KnownUnit& unit) {
  const bool fresh = known.emplace(std::move(spelling), unit).second;
  if (!fresh) throw std::logic_error("unit spelt twice: " + unit.symbol);
}

void addRow(Spellings& known, const UnitRow& row) {
  const std::string symbol(row.symbol);
  const std::string print(row.print);
  addSpelling(known, symbol, {symbol, print});
  for (const char prefix : row.prefixes) {
    const std::string printed = prefix == 'u' ? "µ" : std::string(1, prefix);
    addSpelling(known, prefix + symbol, {prefix + symbol, printed + print});
  }
  for (auto rest = row.spellings; !rest.empty();) {
    const auto end = rest.find(' ');
    addSpelling(known, std::string(rest.substr(0, end)), {symbol, print});
    rest = end == std::string_view::npos ? std::string_view() : rest.substr(end + 1);
  }
}

Spellings allSpellings() {
  Spellings known;
  for (const auto& row : kRows) addRow(known, row);
  return known;
}

}  // namespace

std::span<const UnitRow> unitRows() { return kRows; }

double prefixFactor(char prefix) {
  switch (prefix) {
    case 'G': return 1e9;
    case 'M': return 1e6;
    case 'k': return 1e3;
    case 'c': return 1e-2;
    case 'm': return 1e-3;
    case 'u': return 1e-6;
    case 'n': return 1e-9;
    case 'p': return 1e-12;
    default: throw std::logic_error("no SI prefix of the unit table");
  }
}

const KnownUnit* findUnit(std::string_view spelling) {
  static const Spellings known = allSpellings();
  const auto found = known.find(std::string(spelling));
  return found == known.end() ? nullptr : &found->second;
}

}  // namespace jw::detail

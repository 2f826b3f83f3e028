#pragma once

#include <span>
#include <string>
#include <string_view>

#include <tl/expected.hpp>

namespace jw {

/// What a number means. Two quantities may share a dimension and still differ: a torque is not an
/// energy, a shaft speed is not a frequency, and a field of one refuses the units of the other.
enum class Quantity {
  Number,    ///< plain number, e.g. an exponent
  Ratio,     ///< speed ratio, input over output
  Fraction,  ///< share of one, typed as 0.74 or 74 %
  Angle,
  AngularSpeed,
  AngularAcceleration,
  AngularJerk,
  Frequency,
  Time,
  Mass,
  Length,
  Inertia,
  Force,
  Torque,
  Energy,
  Power,
  Voltage,
  Current,
  Resistance,
  Inductance,
  Capacitance,
  Charge,
  FluxLinkage,
  TorqueConstant,   ///< N·m/A
  VoltageConstant,  ///< V·s/rad
  SpeedConstant,    ///< rad/(s·V)
  Temperature,      ///< a point on the scale; °C inside
  TemperatureDifference,
  TemperatureCoefficient,  ///< 1/K
  ThermalResistance,
  HeatCapacity,
  TorsionalStiffness,
  TorsionalDamping,
  Acceleration,
  Speed,
  Pressure,   ///< and stress
  Stiffness,  ///< of a spring that is stretched, N/m
};

/// How one quantity is stored and shown.
struct QuantityInfo {
  Quantity quantity;
  std::string_view name;          ///< trade name in a sentence, "torque"
  std::string_view internalUnit;  ///< unit of the stored double, e.g. "N*m" (°C for Temperature)
  std::span<const std::string_view> units;  ///< offered display units, the usual one first
};

/// The description of `quantity`; every enumerator has one.
const QuantityInfo& quantityInfo(Quantity quantity);

/// What is wrong with something a person entered, where, and what would be right.
struct InputError {
  std::string what;    ///< "J is a unit of energy, not of torque"
  std::string where;   ///< path, file, line or column; may be empty
  std::string remedy;  ///< "type a torque, e.g. 12 N·m or 20 lbf·ft"
  bool operator==(const InputError&) const = default;
};

/// One line: "where: what; remedy".
std::string describe(const InputError& error);

struct ParsedQuantity {
  double value;      ///< in the quantity's internal unit
  std::string unit;  ///< unit text as typed, empty for a bare number
};

/// Reads a number with an optional unit, e.g. "12 lbf·ft", "3/8 in", "95 rpm", "7 000 h", "1,5 kW".
/// '.' and ',' are both decimal signs; group signs are refused, spaces between groups of three are
/// accepted. A bare number is in `bareUnit` (the internal unit if empty). The value must be finite
/// and the entry at most 200 bytes. Never depends on the locale.
tl::expected<ParsedQuantity, InputError> parseQuantity(std::string_view text, Quantity quantity,
                                                       std::string_view bareUnit);

/// Converts a value from `unit` to the quantity's internal unit. Throws std::logic_error if `unit`
/// is no unit of `quantity` (a programming error; use parseQuantity for what a person typed).
double toInternal(double value, std::string_view unit, Quantity quantity);

/// Converts an internal value to `unit`; errors as toInternal.
double fromInternal(double internal, std::string_view unit, Quantity quantity);

/// Whether `unit` can be used for `quantity`.
bool isUnitOf(std::string_view unit, Quantity quantity);

/// "−2 480" or "0.0712": `digits` significant digits, a real minus sign, thin spaces (U+2009)
/// between thousands, no exponent between 1e-4 and 1e7. NaN reads "–" (en dash), ∞ reads "∞".
std::string formatNumber(double value, int digits = 4);

/// The unit as people print it: "N·m/A", "kg·cm²", "°C", "rpm"; empty for "1".
std::string prettyUnit(std::string_view unit);

/// formatNumber of the value in `unit` (the usual unit if empty), then a space and prettyUnit.
std::string formatQuantity(double internal, Quantity quantity, std::string_view unit = {},
                           int digits = 4);

/// The shortest plain text ("0.092 N*m/A") that parseQuantity reads back as exactly `internal`;
/// in `unit` (the usual unit if empty) when that is possible to the last bit, else in the internal
/// unit. The unit "1" is not written. Empty for NaN and ∞.
std::string typedForm(double internal, Quantity quantity, std::string_view unit = {});

}  // namespace jw

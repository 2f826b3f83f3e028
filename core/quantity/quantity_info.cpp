#include <cassert>
#include <cstddef>
#include <iterator>

#include "core/quantity/quantity_row.h"

namespace jw {
namespace detail {
namespace {

using Text = std::string_view;

// Display units, the usual one first.
constexpr Text kPlain[] = {"1"};
constexpr Text kFraction[] = {"%", "1"};
constexpr Text kAngle[] = {"deg", "rad", "rev", "arcmin", "arcsec"};
constexpr Text kAngularSpeed[] = {"rpm", "rad/s", "deg/s", "rev/s"};
constexpr Text kAngularAcceleration[] = {"rad/s^2", "deg/s^2", "rev/s^2", "rpm/s"};
constexpr Text kAngularJerk[] = {"rad/s^3", "deg/s^3", "rev/s^3"};
constexpr Text kFrequency[] = {"Hz", "kHz"};
constexpr Text kTime[] = {"s", "ms", "min", "h"};
constexpr Text kMass[] = {"kg", "g", "lb", "oz"};
constexpr Text kLength[] = {"mm", "m", "cm", "in", "ft"};
constexpr Text kInertia[] = {"kg*cm^2", "kg*m^2", "g*cm^2", "lb*in^2", "ozf*in*s^2"};
constexpr Text kForce[] = {"N", "kN", "lbf", "kgf"};
constexpr Text kTorque[] = {"N*m", "mN*m", "kN*m", "lbf*ft", "lbf*in", "ozf*in", "kgf*cm"};
constexpr Text kEnergy[] = {"J", "kJ", "Wh", "kWh"};
constexpr Text kPower[] = {"W", "kW", "hp", "hp_metric"};
constexpr Text kVoltage[] = {"V", "mV", "kV"};
constexpr Text kCurrent[] = {"A", "mA"};
constexpr Text kResistance[] = {"ohm", "mohm", "kohm"};
constexpr Text kInductance[] = {"mH", "uH", "H"};
constexpr Text kCapacitance[] = {"uF", "mF", "F"};
constexpr Text kCharge[] = {"Ah", "mAh", "C"};
constexpr Text kFluxLinkage[] = {"mWb", "Wb", "V*s"};
constexpr Text kTorqueConstant[] = {"N*m/A", "mN*m/A", "lbf*in/A", "ozf*in/A"};
constexpr Text kVoltageConstant[] = {"V*s/rad", "mV*s/rad", "V/krpm", "mV/rpm"};
constexpr Text kSpeedConstant[] = {"rpm/V", "rad/(s*V)"};
constexpr Text kTemperature[] = {"degC", "degF", "K"};
constexpr Text kTemperatureDifference[] = {"K", "degC", "degF"};
constexpr Text kTemperatureCoefficient[] = {"1/K", "%/K"};
constexpr Text kThermalResistance[] = {"K/W", "degC/W"};
constexpr Text kHeatCapacity[] = {"J/K", "kJ/K"};
constexpr Text kTorsionalStiffness[] = {"N*m/rad", "kN*m/rad", "N*m/deg", "N*m/arcmin",
                                        "lbf*in/rad"};
constexpr Text kTorsionalDamping[] = {"N*m*s/rad", "mN*m*s/rad", "N*m/rpm"};
constexpr Text kAcceleration[] = {"m/s^2", "mm/s^2", "ft/s^2"};
constexpr Text kSpeed[] = {"m/s", "mm/s", "m/min", "ft/s"};
constexpr Text kPressure[] = {"MPa", "GPa", "kPa", "Pa", "psi", "ksi"};
constexpr Text kStiffness[] = {"N/m", "N/mm", "kN/m", "lbf/in"};

using enum Quantity;

constexpr QuantityRow kRows[] = {
    {{Number, "plain number", "1", kPlain}, "1.5"},
    {{Ratio, "speed ratio", "1", kPlain}, "100 or 100:1"},
    {{Fraction, "fraction", "1", kFraction}, "74 % or 0.74"},
    {{Angle, "angle", "rad", kAngle}, "90 deg or 1.57 rad"},
    {{AngularSpeed, "rotational speed", "rad/s", kAngularSpeed}, "3000 rpm or 314 rad/s"},
    {{AngularAcceleration, "angular acceleration", "rad/s^2", kAngularAcceleration}, "50 rad/s²"},
    {{AngularJerk, "angular jerk", "rad/s^3", kAngularJerk}, "400 rad/s³"},
    {{Frequency, "frequency", "Hz", kFrequency}, "50 Hz"},
    {{Time, "time", "s", kTime}, "0.8 s"},
    {{Mass, "mass", "kg", kMass}, "3.5 kg or 8 lb"},
    {{Length, "length", "m", kLength}, "350 mm or 14 in"},
    {{Inertia, "inertia", "kg*m^2", kInertia}, "0.5 kg·cm² or 0.007 ozf·in·s²", "kg*m^2/rad"},
    {{Force, "force", "N", kForce}, "120 N or 27 lbf"},
    {{Torque, "torque", "N*m", kTorque}, "12 N·m or 20 lbf·ft"},
    {{Energy, "energy", "J", kEnergy}, "40 J"},
    {{Power, "power", "W", kPower}, "400 W"},
    {{Voltage, "voltage", "V", kVoltage}, "48 V"},
    {{Current, "current", "A", kCurrent}, "10 A"},
    {{Resistance, "resistance", "ohm", kResistance}, "0.3 Ω or 0.3 ohm"},
    {{Inductance, "inductance", "H", kInductance}, "0.8 mH"},
    {{Capacitance, "capacitance", "F", kCapacitance}, "470 µF"},
    {{Charge, "charge", "C", kCharge}, "5 Ah"},
    {{FluxLinkage, "flux linkage", "Wb", kFluxLinkage}, "9 mWb"},
    {{TorqueConstant, "torque constant", "N*m/A", kTorqueConstant}, "0.09 N·m/A"},
    {{VoltageConstant, "voltage constant", "V*s/rad", kVoltageConstant},
     "0.09 V·s/rad or 9.4 V/krpm"},
    {{SpeedConstant, "speed constant", "rad/(s*V)", kSpeedConstant}, "105 rpm/V"},
    {{Temperature, "temperature", "degC", kTemperature}, "25 °C"},
    {{TemperatureDifference, "temperature difference", "K", kTemperatureDifference}, "80 K"},
    {{TemperatureCoefficient, "temperature coefficient", "1/K", kTemperatureCoefficient},
     "0.00393 1/K or 0.393 %/K"},
    {{ThermalResistance, "thermal resistance", "K/W", kThermalResistance}, "1.2 K/W"},
    {{HeatCapacity, "heat capacity", "J/K", kHeatCapacity}, "150 J/K"},
    {{TorsionalStiffness, "torsional stiffness", "N*m/rad", kTorsionalStiffness},
     "20000 N·m/rad or 6 N·m/arcmin"},
    {{TorsionalDamping, "torsional damping", "N*m*s/rad", kTorsionalDamping},
     "0.002 N·m·s/rad",
     "N*m*s"},
    {{Acceleration, "linear acceleration", "m/s^2", kAcceleration}, "2 m/s²"},
    {{Speed, "linear speed", "m/s", kSpeed}, "0.5 m/s"},
    {{Pressure, "pressure", "Pa", kPressure}, "1200 MPa"},
    {{Stiffness, "stiffness", "N/m", kStiffness}, "2000 N/m or 2 N/mm"},
};

}  // namespace

std::span<const QuantityRow> quantityRows() { return kRows; }

const QuantityRow& quantityRow(Quantity quantity) {
  const auto index = static_cast<std::size_t>(quantity);
  assert(index < std::size(kRows));
  const auto& row = kRows[index];
  assert(row.info.quantity == quantity);
  return row;
}

}  // namespace detail

const QuantityInfo& quantityInfo(Quantity quantity) { return detail::quantityRow(quantity).info; }

}  // namespace jw

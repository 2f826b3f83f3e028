// Reading numbers with units.
//
// Number forms: SI Brochure (BIPM, 9th ed. 2019), 5.4.4: the decimal marker is the point or the
// comma, digits are grouped in threes by thin spaces and never by points or commas (from memory).
// Unit factors are checked in tests/published/units_test.cpp; here the same value must come out of
// every spelling.

#include <cmath>
#include <numbers>
#include <stdexcept>
#include <string>
#include <string_view>

#include <gtest/gtest.h>

#include "core/quantity/quantity.h"

namespace jw {
namespace {

constexpr double kPi = std::numbers::pi;

double read(std::string_view text, Quantity quantity, std::string_view bareUnit = {}) {
  const auto parsed = parseQuantity(text, quantity, bareUnit);
  if (parsed) return parsed->value;
  ADD_FAILURE() << text << " -> " << describe(parsed.error());
  return std::nan("");
}

double number(std::string_view text) {
  return read(text, Quantity::Number, "1");
}

double torque(std::string_view text) {
  return read(text, Quantity::Torque, "N*m");
}

bool isRefused(std::string_view text, Quantity quantity) {
  return !parseQuantity(text, quantity, {}).has_value();
}

TEST(Numbers, PlainAndSigned) {
  EXPECT_EQ(number("42"), 42.0);
  EXPECT_EQ(number("  42\t"), 42.0);
  EXPECT_EQ(number("+5"), 5.0);
  EXPECT_EQ(number("-5"), -5.0);
  EXPECT_EQ(number("\u22125"), -5.0);
  EXPECT_EQ(number("12."), 12.0);
  EXPECT_EQ(number(".5"), 0.5);
  EXPECT_EQ(number("0"), 0.0);
}

TEST(Numbers, BothDecimalSigns) {
  EXPECT_EQ(number("1.5"), 1.5);
  EXPECT_EQ(number("1,5"), 1.5);
  EXPECT_EQ(read("1,5 kW", Quantity::Power), 1500.0);
}

TEST(Numbers, Exponents) {
  EXPECT_EQ(number("1e3"), 1000.0);
  EXPECT_EQ(number("2.5E-3"), 0.0025);
  EXPECT_EQ(number("2,5e\u22123"), 0.0025);
  EXPECT_EQ(number("1e+3"), 1000.0);
  EXPECT_EQ(number("1.2×10⁻³"), 0.0012);
  EXPECT_EQ(number("1.2 · 10^4"), 12000.0);
  EXPECT_EQ(number("5e-324"), 5e-324);
}

TEST(Numbers, GroupsOfThreeBySpaces) {
  EXPECT_EQ(number("7 000"), 7000.0);
  EXPECT_EQ(number("7\u2009000"), 7000.0);
  EXPECT_EQ(number("7\u202F000"), 7000.0);
  EXPECT_EQ(number("7\u00A0000"), 7000.0);
  EXPECT_EQ(number("12 345 678,5"), 12345678.5);
  EXPECT_EQ(read("7 000 h", Quantity::Time), 7000.0 * 3600.0);
  EXPECT_TRUE(isRefused("7 00", Quantity::Number));
  EXPECT_TRUE(isRefused("7 0000", Quantity::Number));
  EXPECT_TRUE(isRefused("1000 000", Quantity::Number));
  EXPECT_TRUE(isRefused("5 1", Quantity::Number));
}

TEST(Numbers, Fractions) {
  EXPECT_EQ(number("3/8"), 0.375);
  EXPECT_EQ(number("1 3/8"), 1.375);
  EXPECT_EQ(number("-1 3/8"), -1.375);
  EXPECT_EQ(number("1 125/1000"), 1.125);
  EXPECT_EQ(read("3/8 in", Quantity::Length), 0.009525);
  EXPECT_EQ(read("3/8in", Quantity::Length), 0.009525);
  EXPECT_EQ(read("1 3/8 in", Quantity::Length), 0.034925);
  EXPECT_EQ(read("3/8", Quantity::Length, "in"), 0.009525);
}

TEST(BareNumbers, AreInTheBareUnit) {
  EXPECT_EQ(read("30", Quantity::AngularSpeed, "rpm"), kPi);
  EXPECT_EQ(read("30", Quantity::AngularSpeed, "rad/s"), 30.0);
  EXPECT_EQ(read("30", Quantity::AngularSpeed), 30.0);
  EXPECT_EQ(read("68", Quantity::Temperature, "degF"), 20.0);
  EXPECT_EQ(parseQuantity("30", Quantity::AngularSpeed, "rpm")->unit, "");
  EXPECT_THROW((void)parseQuantity("30", Quantity::AngularSpeed, "N*m"), std::logic_error);
}

TEST(TypedUnit, IsKeptAsTyped) {
  EXPECT_EQ(parseQuantity(" 12 lbf·ft ", Quantity::Torque, "N*m")->unit, "lbf·ft");
  EXPECT_EQ(parseQuantity("12lbf-ft", Quantity::Torque, "N*m")->unit, "lbf-ft");
  EXPECT_EQ(parseQuantity("74%", Quantity::Fraction, "1")->unit, "%");
}

TEST(Spellings, SeparatorsAndOrder) {
  const double expected = torque("12 lbf*ft");
  for (const auto* text : {"12 lbf·ft", "12 lbf⋅ft", "12 lbf×ft", "12 lbf.ft", "12 lbf ft",
                           "12 lbf-ft", "12 ft·lbf", "12 ft-lbf", "12lbf·ft", "12 lbf\u00A0ft"}) {
    EXPECT_EQ(torque(text), expected) << text;
  }
}

TEST(Spellings, RunTogetherTorque) {
  EXPECT_EQ(torque("5 Nm"), 5.0);
  EXPECT_EQ(torque("5 mNm"), 0.005);
  EXPECT_EQ(torque("5 cNm"), 0.05);
  EXPECT_EQ(torque("5 Ncm"), 0.05);
  EXPECT_EQ(torque("5 Nmm"), 0.005);
  EXPECT_EQ(torque("5 kNm"), 5000.0);
  EXPECT_EQ(torque("5 mN·m"), 0.005);
}

TEST(Spellings, Powers) {
  const double expected = 5e-4;
  for (const auto* text : {"5 kg·cm²", "5 kg*cm^2", "5 kg cm2", "5 cm²·kg"}) {
    EXPECT_EQ(read(text, Quantity::Inertia), expected) << text;
  }
  EXPECT_EQ(read("2 m·s⁻²", Quantity::Acceleration), 2.0);
  EXPECT_EQ(read("2 m s^-2", Quantity::Acceleration), 2.0);
  EXPECT_EQ(read("2 m s-2", Quantity::Acceleration), 2.0);
  EXPECT_EQ(read("2 m/s/s", Quantity::Acceleration), 2.0);
}

TEST(Spellings, MicroAndOhm) {
  EXPECT_EQ(read("8 \u00B5H", Quantity::Inductance), 8e-6);
  EXPECT_EQ(read("8 \u03BCH", Quantity::Inductance), 8e-6);
  EXPECT_EQ(read("8 uH", Quantity::Inductance), 8e-6);
  EXPECT_EQ(read("8 \u03A9", Quantity::Resistance), 8.0);
  EXPECT_EQ(read("8 m\u2126", Quantity::Resistance), 0.008);
  EXPECT_EQ(read("8 kohm", Quantity::Resistance), 8000.0);
}

TEST(Spellings, PerAndSlash) {
  EXPECT_EQ(read("3 rad per s", Quantity::AngularSpeed), 3.0);
  EXPECT_EQ(read("0.0039 1/K", Quantity::TemperatureCoefficient), 0.0039);
  EXPECT_EQ(read("0.0039 /K", Quantity::TemperatureCoefficient), 0.0039);
  EXPECT_EQ(read("0.0039 K⁻¹", Quantity::TemperatureCoefficient), 0.0039);
  EXPECT_NEAR(read("0.39 %/K", Quantity::TemperatureCoefficient), 0.0039, 1e-17);
  EXPECT_EQ(read("60 r/min", Quantity::AngularSpeed), read("60 rpm", Quantity::AngularSpeed));
}

TEST(Spellings, Angles) {
  EXPECT_DOUBLE_EQ(read("180°", Quantity::Angle), kPi);
  EXPECT_DOUBLE_EQ(read("180 deg", Quantity::Angle), kPi);
  EXPECT_DOUBLE_EQ(read("0.5 turn", Quantity::Angle), kPi);
  EXPECT_DOUBLE_EQ(read("200 grad", Quantity::Angle), kPi);
  EXPECT_EQ(read("3'", Quantity::Angle), read("3 arcmin", Quantity::Angle));
  EXPECT_EQ(read("3\"", Quantity::Angle), read("3 arcsec", Quantity::Angle));
}

TEST(Fraction, ShareOrPercent) {
  EXPECT_EQ(read("74 %", Quantity::Fraction, "1"), 0.74);
  EXPECT_EQ(read("74%", Quantity::Fraction, "1"), 0.74);
  EXPECT_EQ(read("0.74", Quantity::Fraction, "1"), 0.74);
}

TEST(Ratio, ToOne) {
  EXPECT_EQ(read("100", Quantity::Ratio, "1"), 100.0);
  EXPECT_EQ(read("100:1", Quantity::Ratio, "1"), 100.0);
  EXPECT_EQ(read("100 : 1", Quantity::Ratio, "1"), 100.0);
  EXPECT_EQ(read("3:2", Quantity::Ratio, "1"), 1.5);
  EXPECT_TRUE(isRefused("100:0", Quantity::Ratio));
  EXPECT_TRUE(isRefused("100:", Quantity::Ratio));
  EXPECT_TRUE(isRefused("-100:1", Quantity::Ratio));
  EXPECT_TRUE(isRefused("100:1", Quantity::Number));
}

TEST(Temperature, ScalesAndDifferences) {
  EXPECT_EQ(read("20 °C", Quantity::Temperature), 20.0);
  EXPECT_EQ(read("68 °F", Quantity::Temperature), 20.0);
  EXPECT_NEAR(read("350 K", Quantity::Temperature), 76.85, 1e-12);
  EXPECT_EQ(read("-40 degF", Quantity::Temperature), -40.0);
  EXPECT_EQ(read("80 K", Quantity::TemperatureDifference), 80.0);
  EXPECT_EQ(read("80 °C", Quantity::TemperatureDifference), 80.0);
  EXPECT_EQ(read("9 °F", Quantity::TemperatureDifference), 5.0);
  EXPECT_EQ(read("2 °C/W", Quantity::ThermalResistance), 2.0);
}

TEST(MotorConstants, Spellings) {
  EXPECT_EQ(read("90 mN·m/A", Quantity::TorqueConstant), 0.09);
  const double expected = read("9 V/krpm", Quantity::VoltageConstant);
  EXPECT_EQ(read("9 V/1000rpm", Quantity::VoltageConstant), expected);
  EXPECT_EQ(read("9 V/1000 rpm", Quantity::VoltageConstant), expected);
  EXPECT_DOUBLE_EQ(read("9 mV/rpm", Quantity::VoltageConstant), expected);
  EXPECT_EQ(read("0.2 V/(rad/s)", Quantity::VoltageConstant), 0.2);
  EXPECT_EQ(read("0.2 V·s/rad", Quantity::VoltageConstant), 0.2);
  EXPECT_EQ(read("5 rad/(s·V)", Quantity::SpeedConstant), 5.0);
}

// Kt in N·m/A and Ke in V·s/rad are one quantity in coherent SI units (power balance T·ω = u·i).
TEST(MotorConstants, TorqueAndVoltageConstantAgree) {
  EXPECT_EQ(read("0.2 V·s/rad", Quantity::TorqueConstant), 0.2);
  EXPECT_EQ(read("0.2 N·m/A", Quantity::VoltageConstant), 0.2);
}

TEST(Torsion, StiffnessAndDamping) {
  EXPECT_EQ(read("3 N·m/rad", Quantity::TorsionalStiffness), 3.0);
  EXPECT_DOUBLE_EQ(read("1 N·m/deg", Quantity::TorsionalStiffness), 180 / kPi);
  EXPECT_DOUBLE_EQ(read("1 kN·m/°", Quantity::TorsionalStiffness), 180000 / kPi);
  EXPECT_EQ(read("3 N·m·s", Quantity::TorsionalDamping), 3.0);
  EXPECT_EQ(read("3 Nms/rad", Quantity::TorsionalDamping), 3.0);
  EXPECT_DOUBLE_EQ(read("1 N·m/rpm", Quantity::TorsionalDamping), 30 / kPi);
}

TEST(Dimensions, DerivedUnitsFollow) {
  EXPECT_EQ(read("3 V·A", Quantity::Power), 3.0);
  EXPECT_EQ(read("3 V·s", Quantity::FluxLinkage), 3.0);
  EXPECT_EQ(read("3 A·s", Quantity::Charge), 3.0);
  EXPECT_EQ(read("3 V/A", Quantity::Resistance), 3.0);
  EXPECT_EQ(read("3 V·s/A", Quantity::Inductance), 3.0);
  EXPECT_EQ(read("3 A·s/V", Quantity::Capacitance), 3.0);
  EXPECT_EQ(read("3 W·s/K", Quantity::HeatCapacity), 3.0);
  EXPECT_EQ(read("2 Ah", Quantity::Charge), 7200.0);
  EXPECT_EQ(read("3 N·m·rad/s", Quantity::Power), 3.0);
}

TEST(Dimensions, RadianSeparatesLookAlikes) {
  EXPECT_FALSE(isUnitOf("J", Quantity::Torque));
  EXPECT_FALSE(isUnitOf("N*m", Quantity::Energy));
  EXPECT_FALSE(isUnitOf("Hz", Quantity::AngularSpeed));
  EXPECT_FALSE(isUnitOf("rpm", Quantity::Frequency));
  EXPECT_FALSE(isUnitOf("s", Quantity::Frequency));
  EXPECT_FALSE(isUnitOf("W/K", Quantity::ThermalResistance));
  EXPECT_FALSE(isUnitOf("%", Quantity::Number));
  EXPECT_FALSE(isUnitOf("what", Quantity::Torque));
  EXPECT_FALSE(isUnitOf("", Quantity::Torque));
  EXPECT_TRUE(isUnitOf("1", Quantity::Ratio));
  EXPECT_TRUE(isUnitOf("%", Quantity::Fraction));
}

TEST(Conversion, RefusesWrongUnitsAsABug) {
  EXPECT_THROW((void)toInternal(1.0, "J", Quantity::Torque), std::logic_error);
  EXPECT_THROW((void)fromInternal(1.0, "what", Quantity::Torque), std::logic_error);
}

}  // namespace
}  // namespace jw

// What a person is told about an entry that cannot be used. The wording is this program's own; the
// numbers in the remedies follow from 1 rev = 2π rad and 1 min = 60 s.

#include <ostream>
#include <string>
#include <string_view>

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "core/quantity/quantity.h"

namespace jw {
namespace {

using testing::HasSubstr;
using enum Quantity;

struct Refusal {
  const char* text;
  Quantity quantity;
  const char* what;
  const char* remedy;
};

void PrintTo(const Refusal& refusal, std::ostream* out) {
  *out << refusal.text;
}

class Refused : public testing::TestWithParam<Refusal> {};

TEST_P(Refused, SaysWhatAndWhatWouldBeRight) {
  const auto& expected = GetParam();
  const auto parsed = parseQuantity(expected.text, expected.quantity, {});
  ASSERT_FALSE(parsed.has_value());
  EXPECT_THAT(parsed.error().what, HasSubstr(expected.what));
  EXPECT_THAT(parsed.error().remedy, HasSubstr(expected.remedy));
}

INSTANTIATE_TEST_SUITE_P(
    LookAlikes, Refused,
    testing::Values(
        Refusal{"5 J", Torque, "J is a unit of energy, not of torque", "type 5 N·m"},
        Refusal{"5 N·m", Energy, "N·m is a unit of torque, not of energy", "type 5 J"},
        Refusal{"50 Hz", AngularSpeed, "Hz is a unit of frequency",
                "50 rev/s or 3000 rpm for a shaft"},
        Refusal{"50 1/s", AngularSpeed, "1/s is a unit of frequency", "50 rev/s or 3000 rpm"},
        Refusal{"1/s", AngularSpeed, "1/s is a unit of frequency", "1 rev/s or 60 rpm"},
        Refusal{"3000 min⁻¹", AngularSpeed, "frequency", "50 rev/s or 3000 rpm"},
        Refusal{"3000 rpm", Frequency, "rpm is a unit of rotational speed", "type 50 Hz"},
        Refusal{"314.159265 rad/s", Frequency, "rotational speed", "type 50 Hz"},
        Refusal{"5 rad", AngularSpeed, "rad is a unit of angle", "type a rotational speed"},
        Refusal{"5 N·m/s", Power, "torque per time", "type 5 W"},
        Refusal{"4 1/s²", AngularAcceleration, "1/s²", "4 rad/s² or 4 rev/s²"}));

INSTANTIATE_TEST_SUITE_P(
    MassAndForce, Refused,
    testing::Values(
        Refusal{"5 lb·ft", Torque, "lb·ft is a unit of mass times length", "type 5 lbf·ft"},
        Refusal{"5 kg·cm", Torque, "kg·cm is a unit of mass times length", "type 5 kgf·cm"},
        Refusal{"5 oz-in", Torque, "oz·in is a unit of mass times length", "type 5 ozf·in"},
        Refusal{"2 kgf·cm²", Inertia, "kgf·cm² is a unit of force times area", "type 2 kg·cm²"},
        Refusal{"2 oz·in·s²", Inertia, "oz·in·s²", "type 2 ozf·in·s²"},
        Refusal{"5 kg", Force, "kg is a unit of mass, not of force", "type 5 kgf"},
        Refusal{"5 lbf", Mass, "lbf is a unit of force, not of mass", "type 5 lb "}));

INSTANTIATE_TEST_SUITE_P(
    TemperatureLetters, Refused,
    testing::Values(Refusal{"77 F", Temperature, "F is a unit of capacitance", "type 77 °F"},
                    Refusal{"25 C", Temperature, "C is a unit of charge", "type 25 °C"},
                    Refusal{"25 deg C", Temperature, "no unit of temperature", "type 25 °C"},
                    Refusal{"2 C/W", ThermalResistance, "C/W", "type 2 °C/W"}));

INSTANTIATE_TEST_SUITE_P(
    MissingRadian, Refused,
    testing::Values(
        Refusal{"5 N·m", TorsionalStiffness, "N·m is a unit of torque", "type 5 N·m/rad"},
        Refusal{"5 N·m", TorsionalDamping, "N·m is a unit of torque", "type 5 N·m·s/rad"},
        Refusal{"0.1 V·s", VoltageConstant, "V·s is a unit of flux linkage", "type 0.1 V·s/rad"},
        Refusal{"0.1 V·s/rad", FluxLinkage, "V·s/rad is a unit of voltage constant", "type 0.1 Wb"},
        Refusal{"2 1/(s·V)", SpeedConstant, "1/(s·V)", "type 120 rpm/V or 2 rad/(s·V)"}));

INSTANTIATE_TEST_SUITE_P(
    UnknownUnits, Refused,
    testing::Values(
        Refusal{"12 foo", Torque, "'foo' is no known unit", "try N·m, mN·m or kN·m"},
        Refusal{"12 NM", Torque, "'NM' is no known unit", "perhaps 12 N·m is meant"},
        Refusal{"12 lbft", Torque, "'lbft' is no known unit", "perhaps 12 lbf·ft is meant"},
        Refusal{"95 rpn", AngularSpeed, "'rpn' is no known unit", "perhaps 95 rpm is meant"},
        Refusal{"5 Kw", Power, "'Kw' is no known unit", "perhaps 5 kW is meant"},
        Refusal{"5 a", Current, "'a' is no known unit", "perhaps 5 A is meant"},
        Refusal{"5 N·", Torque, "'N·' cannot be read as a unit", "try N·m"},
        Refusal{"5 N//m", Force, "cannot be read as a unit", "N"},
        Refusal{"5 (N", Force, "cannot be read as a unit", "N"},
        Refusal{"5 m^0", Length, "cannot be read as a unit", "m"},
        Refusal{"5 2/K", TemperatureCoefficient, "cannot be read as a unit", "1/K"},
        Refusal{"5 1", Fraction, "'1' cannot be read as a unit", ""},
        Refusal{"5 foo", Number, "'foo' is no known unit", "type a plain number"}));

INSTANTIATE_TEST_SUITE_P(
    UnitWhereNoneBelongs, Refused,
    testing::Values(Refusal{"5 m", Number, "a plain number has no unit, but m is typed", "type 5"},
                    Refusal{"5 %", Number, "a plain number has no unit, but % is typed", "type 5"},
                    Refusal{"5 %", Ratio, "a speed ratio has no unit", "type 5"},
                    Refusal{"5 %", Torque, "% is a share of one, not a torque", "type a torque"},
                    Refusal{"5 N", Fraction, "N is a unit of force, not of fraction",
                            "74 % or 0.74"}));

INSTANTIATE_TEST_SUITE_P(
    NumbersGoneWrong, Refused,
    testing::Values(Refusal{"", Torque, "a number is expected", "type a torque, e.g. 12 N·m"},
                    Refusal{" \t\u00A0", Torque, "a number is expected", "type a torque"},
                    Refusal{"abc", Length, "a number is expected, not 'abc'", "type a length"},
                    Refusal{"-", Angle, "a number is expected after the sign", "type an angle"},
                    Refusal{"N·m", Torque, "a number is expected, not 'N·m'", "type a torque"},
                    Refusal{"7 OOO h", Time, "'OOO' is typed with letters", "7 000 h"},
                    Refusal{"1O0 rpm", AngularSpeed, "typed with letters", "100 rpm"},
                    Refusal{"nan", Number, "no finite number", "type a plain number"},
                    Refusal{"-inf", Number, "no finite number", "type a plain number"},
                    Refusal{"∞", Number, "no finite number", "type a plain number"},
                    Refusal{"1e999", Number, "too large", "type a plain number"},
                    Refusal{"1e308 km", Length, "too large", "type a length"},
                    Refusal{"3/0 in", Length, "divides by zero", "type a length"},
                    Refusal{"1 3/0 in", Length, "divides by zero", "type a length"}));

INSTANTIATE_TEST_SUITE_P(
    GroupSigns, Refused,
    testing::Values(Refusal{"1,234.5", Number, "group signs", "type 1234.5"},
                    Refusal{"1.234,5", Number, "group signs", "type 1234.5"},
                    Refusal{"1'000", Number, "group signs", "type 1000"},
                    Refusal{"1’000.5", Number, "group signs", "type 1000.5"},
                    Refusal{"-1,234,567", Number, "group signs", "type -1234567"},
                    Refusal{"1_000", Number, "group signs", "type 1000"},
                    Refusal{"1.2.3", Number, "more than one decimal sign", "type a plain number"},
                    Refusal{"12,34.5", Number, "more than one decimal sign",
                            "type a plain number"}));

INSTANTIATE_TEST_SUITE_P(Ratios, Refused,
                         testing::Values(Refusal{"1:100", Ratio, "input over output",
                                                 "type 100 for a reduction"},
                                         Refusal{"100:0", Ratio, "two positive numbers", "100:1"},
                                         Refusal{"100:1:1", Ratio, "two positive numbers", "100:1"},
                                         Refusal{"100:", Ratio, "a number is expected", "100:1"}));

TEST(Refused, RemediesCanBeTyped) {
  const auto remedied = [](std::string_view text, Quantity quantity) {
    const auto remedy = parseQuantity(text, quantity, {}).error().remedy;
    const auto start = std::string("type ").size();
    return remedy.substr(start, remedy.find(" for ") - start);
  };
  EXPECT_EQ(parseQuantity(remedied("5 lb·ft", Torque), Torque, {})->value,
            toInternal(5.0, "lbf*ft", Torque));
  EXPECT_EQ(parseQuantity(remedied("3000 rpm", Frequency), Frequency, {})->value, 50.0);
  EXPECT_EQ(parseQuantity(remedied("77 F", Temperature), Temperature, {})->value, 25.0);
}

TEST(Refused, BrokenTextIsShownReadably) {
  const auto error = parseQuantity("5 \xff\xfe\x01", Length, "m").error();
  EXPECT_THAT(error.what, HasSubstr("'\uFFFD\uFFFD\uFFFD'"));
}

TEST(Describe, OneLine) {
  EXPECT_EQ(describe({"what", "where", "remedy"}), "where: what; remedy");
  EXPECT_EQ(describe({"what", "", "remedy"}), "what; remedy");
  EXPECT_EQ(describe({"what", "", ""}), "what");
}

}  // namespace
}  // namespace jw

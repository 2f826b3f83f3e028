// Unit factors against published figures.
//
// Factors: NIST Special Publication 811 (2008), Appendix B.8 and B.9, read second-hand in the CRAN
// package "NISTunits", which tabulates them one by one. A printed factor must agree to half a unit
// of its last digit.
// Exact values: computed from the defining constants 1 lb = 0.45359237 kg, 1 in = 0.0254 m and
// g_n = 9.80665 m/s², which also stand in SciPy's scipy/constants/_constants.py.
// Cross-check: GNU Units 2.22.

#include <cmath>
#include <numbers>
#include <ostream>
#include <string>

#include <gtest/gtest.h>

#include "core/quantity/quantity.h"

namespace jw {
namespace {

constexpr double kPi = std::numbers::pi;

void expectRelative(double actual, double expected, double tolerance) {
  EXPECT_NEAR(actual, expected, std::abs(expected) * tolerance);
}

struct Factor {
  const char* name;
  const char* unit;
  Quantity quantity;
  double printed;
  double lastDigit;
  double exact;
};

void PrintTo(const Factor& factor, std::ostream* out) {
  *out << factor.name << ' ' << factor.unit;
}

class Sp811 : public testing::TestWithParam<Factor> {};

TEST_P(Sp811, AgreesToThePrintedDigits) {
  const auto& factor = GetParam();
  EXPECT_NEAR(toInternal(1.0, factor.unit, factor.quantity), factor.printed,
              0.5001 * factor.lastDigit);
}

TEST_P(Sp811, AgreesWithTheDefiningConstants) {
  const auto& factor = GetParam();
  expectRelative(toInternal(1.0, factor.unit, factor.quantity), factor.exact, 1e-13);
}

INSTANTIATE_TEST_SUITE_P(
    Torque, Sp811,
    testing::Values(Factor{"U1", "lbf*ft", Quantity::Torque, 1.355818, 1e-6, 1.3558179483314004},
                    Factor{"U2", "lbf*in", Quantity::Torque, 0.1129848, 1e-7, 0.1129848290276167},
                    Factor{"U3", "ozf*in", Quantity::Torque, 0.007061552, 1e-9,
                           0.007061551814226043},
                    Factor{"U4", "kgf*m", Quantity::Torque, 9.80665, 1e-9, 9.80665},
                    Factor{"U4", "kgf*cm", Quantity::Torque, 0.0980665, 1e-9, 0.0980665}));

INSTANTIATE_TEST_SUITE_P(
    Rotation, Sp811,
    testing::Values(Factor{"U5", "rpm", Quantity::AngularSpeed, 0.1047198, 1e-7, kPi / 30},
                    Factor{"U12", "arcmin", Quantity::Angle, 2.908882e-4, 1e-10, kPi / 10800},
                    Factor{"B.9 degree", "deg", Quantity::Angle, 0.01745329, 1e-8, kPi / 180},
                    Factor{"B.9 second", "arcsec", Quantity::Angle, 4.848137e-6, 1e-12,
                           kPi / 648000},
                    Factor{"B.9 revolution", "rev", Quantity::Angle, 6.283185, 1e-6, 2 * kPi}));

INSTANTIATE_TEST_SUITE_P(
    Inertia, Sp811,
    testing::Values(Factor{"U6", "lb*in^2", Quantity::Inertia, 2.926397e-4, 1e-10,
                           0.45359237 * 0.0254 * 0.0254},
                    Factor{"U7", "ozf*in*s^2", Quantity::Inertia, 0.007061552, 1e-9,
                           0.007061551814226043},
                    // No printed factor in SP 811: 0.45359237/16 · 0.0254², own arithmetic.
                    Factor{"U8", "oz*in^2", Quantity::Inertia, 1.8289978339325e-5, 1e-18,
                           0.45359237 / 16 * 0.0254 * 0.0254}));

INSTANTIATE_TEST_SUITE_P(
    Power, Sp811,
    testing::Values(Factor{"U9", "hp", Quantity::Power, 745.6999, 1e-4, 745.6998715822702},
                    Factor{"U10", "hp_metric", Quantity::Power, 735.4988, 1e-4, 735.49875},
                    Factor{"U10", "PS", Quantity::Power, 735.4988, 1e-4, 735.49875},
                    Factor{"B.9 kilowatt hour", "kWh", Quantity::Energy, 3.6e6, 1, 3.6e6}));

INSTANTIATE_TEST_SUITE_P(
    MassLengthForce, Sp811,
    testing::Values(
        Factor{"B.8 pound", "lb", Quantity::Mass, 0.4535924, 1e-7, 0.45359237},
        Factor{"B.8 ounce", "oz", Quantity::Mass, 0.02834952, 1e-8, 0.028349523125},
        Factor{"B.8 slug", "slug", Quantity::Mass, 14.59390, 1e-5, 14.593902937206365},
        Factor{"B.8 inch", "in", Quantity::Length, 0.0254, 1e-9, 0.0254},
        Factor{"B.8 foot", "ft", Quantity::Length, 0.3048, 1e-9, 0.3048},
        Factor{"B.8 pound-force", "lbf", Quantity::Force, 4.448222, 1e-6, 4.4482216152605},
        Factor{"B.8 ounce-force", "ozf", Quantity::Force, 0.2780139, 1e-7, 0.27801385095378125},
        Factor{"B.8 kilogram-force", "kgf", Quantity::Force, 9.80665, 1e-9, 9.80665}));

// rpm is π/30 rounded once; factors that are whole numbers or decimals are met to the last bit.
TEST(ExactFactors, ToTheLastBit) {
  EXPECT_EQ(toInternal(1.0, "rpm", Quantity::AngularSpeed), kPi / 30);
  EXPECT_EQ(toInternal(1.0, "deg", Quantity::Angle), kPi / 180);
  EXPECT_EQ(toInternal(3.0, "mm", Quantity::Length), 0.003);
  EXPECT_EQ(toInternal(7.0, "g*cm^2", Quantity::Inertia), 7e-7);
  EXPECT_EQ(toInternal(0.375, "in", Quantity::Length), 0.009525);
  EXPECT_EQ(toInternal(470.0, "uF", Quantity::Capacitance), 470e-6);
  EXPECT_EQ(toInternal(70.0, "%", Quantity::Fraction), 0.7);
  EXPECT_EQ(toInternal(3.0, "kgf*cm", Quantity::Torque), 0.2941995);
}

// U13: SP 811 B.9, K = (°F + 459.67)/1.8; 32 °F = 273.15 K is also asserted by SciPy's own test
// scipy/constants/tests/test_constants.py. GNU Units: tempF(68) = 293.15 K.
TEST(Temperature, FahrenheitScale) {
  EXPECT_EQ(toInternal(32.0, "degF", Quantity::Temperature), 0.0);
  EXPECT_EQ(toInternal(68.0, "degF", Quantity::Temperature), 20.0);
  EXPECT_EQ(toInternal(212.0, "degF", Quantity::Temperature), 100.0);
  EXPECT_NEAR(fromInternal(20.0, "K", Quantity::Temperature), 293.15, 1e-12);
  EXPECT_NEAR(toInternal(-459.67, "degF", Quantity::Temperature), -273.15, 1e-12);
}

// U14: SP 811 B.9 prints 0.5555556 for a Fahrenheit interval; exactly 5/9.
TEST(Temperature, FahrenheitInterval) {
  EXPECT_EQ(toInternal(1.0, "degF", Quantity::TemperatureDifference), 5.0 / 9.0);
  EXPECT_EQ(toInternal(30.0, "degC", Quantity::TemperatureDifference), 30.0);
}

// U15: follows from 12 in = 1 ft and 16 oz = 1 lb.
TEST(Consistency, InchesAndOunces) {
  const auto torque = [](double value, const char* unit) {
    return toInternal(value, unit, Quantity::Torque);
  };
  expectRelative(torque(12.0, "lbf*in"), torque(1.0, "lbf*ft"), 1e-15);
  expectRelative(torque(16.0, "ozf*in"), torque(1.0, "lbf*in"), 1e-15);
}

// Ratio of the mass form to the force form is g_n in inches: 386.0886 in/s² (own arithmetic).
TEST(Consistency, MassFormAndForceFormOfInertia) {
  const double force = toInternal(1.0, "lbf*in*s^2", Quantity::Inertia);
  const double mass = toInternal(1.0, "lb*in^2", Quantity::Inertia);
  expectRelative(force, 0.1129848290276167, 1e-13);
  expectRelative(force / mass, 9.80665 / 0.0254, 1e-13);
}

// U16: 1000 N·m/rad = 0.290888 N·m/arcmin, own arithmetic from U12.
TEST(Consistency, StiffnessPerMinuteOfArc) {
  EXPECT_NEAR(fromInternal(1000.0, "N*m/arcmin", Quantity::TorsionalStiffness), 0.290888, 5e-7);
  expectRelative(toInternal(1.0, "kN*m/deg", Quantity::TorsionalStiffness), 180000.0 / kPi, 1e-15);
}

// 1000 rpm = 100π/3 rad/s, so 1 V/krpm = 3/(100π) V·s/rad (own arithmetic from U5).
TEST(Consistency, MotorConstants) {
  expectRelative(toInternal(1.0, "V/krpm", Quantity::VoltageConstant), 3 / (100 * kPi), 1e-15);
  expectRelative(toInternal(1.0, "mV/rpm", Quantity::VoltageConstant), 3 / (100 * kPi), 1e-15);
  expectRelative(toInternal(1.0, "rpm/V", Quantity::SpeedConstant), kPi / 30, 1e-15);
  expectRelative(toInternal(1.0, "ozf*in/A", Quantity::TorqueConstant), 0.007061551814226, 1e-13);
}

// GNU Units 2.22, eight printed digits.
TEST(GnuUnits, EightDigits) {
  EXPECT_NEAR(toInternal(1.0, "lbf*ft", Quantity::Torque), 1.3558179, 5e-8);
  EXPECT_NEAR(toInternal(1.0, "lbf*in", Quantity::Torque), 0.11298483, 5e-9);
  EXPECT_NEAR(toInternal(1.0, "lb*in^2", Quantity::Inertia), 2.9263965e-4, 5e-12);
  EXPECT_NEAR(toInternal(1.0, "rpm", Quantity::AngularSpeed), 0.10471976, 5e-9);
  EXPECT_NEAR(toInternal(1.0, "arcmin", Quantity::Angle), 2.9088821e-4, 5e-12);
  EXPECT_NEAR(toInternal(1.0, "hp_metric", Quantity::Power), 735.49875, 5e-6);
}

// A unit converts to itself through the internal unit, whatever the unit.
TEST(Consistency, BackAndForth) {
  for (int index = 0; index <= static_cast<int>(Quantity::Speed); ++index) {
    const auto quantity = static_cast<Quantity>(index);
    for (const auto unit : quantityInfo(quantity).units) {
      SCOPED_TRACE(std::string(unit));
      const double internal = toInternal(37.5, unit, quantity);
      expectRelative(fromInternal(internal, unit, quantity), 37.5, 1e-14);
    }
  }
}

}  // namespace
}  // namespace jw

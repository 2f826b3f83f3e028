// Showing and writing quantities. Typography after the SI Brochure (BIPM, 9th ed. 2019), 5.4.3 and
// 5.4.4: a space between number and unit, thin spaces between groups of three, · and superscripts
// in compound units (from memory).

#include <cmath>
#include <cstdint>
#include <cstring>
#include <limits>
#include <random>
#include <set>
#include <stdexcept>
#include <string>
#include <string_view>

#include <gtest/gtest.h>

#include "core/quantity/quantity.h"

namespace jw {
namespace {

constexpr int kQuantities = static_cast<int>(Quantity::Stiffness) + 1;

TEST(FormatNumber, SignificantDigits) {
  EXPECT_EQ(formatNumber(0.0712), "0.0712");
  EXPECT_EQ(formatNumber(0.071249), "0.07125");
  EXPECT_EQ(formatNumber(1.0), "1");
  EXPECT_EQ(formatNumber(3.14159265, 6), "3.14159");
  EXPECT_EQ(formatNumber(123456.0), "123\u2009500");
  EXPECT_EQ(formatNumber(123456.0, 6), "123\u2009456");
}

TEST(FormatNumber, MinusAndThinSpaces) {
  EXPECT_EQ(formatNumber(-2480.0), "\u22122\u2009480");
  EXPECT_EQ(formatNumber(-0.0), "0");
  EXPECT_EQ(formatNumber(1234567.0, 7), "1\u2009234\u2009567");
  EXPECT_EQ(formatNumber(1234.5678, 8), "1\u2009234.5678");
}

TEST(FormatNumber, ExponentOnlyOutsideTheUsualRange) {
  EXPECT_EQ(formatNumber(1e7), "10\u2009000\u2009000");
  EXPECT_EQ(formatNumber(12345678.0), "1.235×10⁷");
  EXPECT_EQ(formatNumber(1e-4), "0.0001");
  EXPECT_EQ(formatNumber(9.99996e-5), "0.0001");
  EXPECT_EQ(formatNumber(1.5e-5), "1.5×10⁻⁵");
  EXPECT_EQ(formatNumber(-1e-300), "\u22121×10⁻³⁰⁰");
}

TEST(FormatNumber, UnsetAndInfinite) {
  EXPECT_EQ(formatNumber(std::nan("")), "–");
  EXPECT_EQ(formatNumber(std::numeric_limits<double>::infinity()), "∞");
  EXPECT_EQ(formatNumber(-std::numeric_limits<double>::infinity()), "\u2212∞");
}

TEST(PrettyUnit, AsPeoplePrintIt) {
  EXPECT_EQ(prettyUnit("N*m/A"), "N·m/A");
  EXPECT_EQ(prettyUnit("kg*cm^2"), "kg·cm²");
  EXPECT_EQ(prettyUnit("degC"), "°C");
  EXPECT_EQ(prettyUnit("rpm"), "rpm");
  EXPECT_EQ(prettyUnit("uF"), "µF");
  EXPECT_EQ(prettyUnit("mohm"), "mΩ");
  EXPECT_EQ(prettyUnit("rad/(s*V)"), "rad/(s·V)");
  EXPECT_EQ(prettyUnit("m*s^-2"), "m·s⁻²");
  EXPECT_EQ(prettyUnit("lbf-ft"), "lbf·ft");
  EXPECT_EQ(prettyUnit("1"), "");
  EXPECT_EQ(prettyUnit("1/K"), "1/K");
  EXPECT_EQ(prettyUnit("no unit"), "no unit");
}

TEST(FormatQuantity, NumberSpaceUnit) {
  EXPECT_EQ(formatQuantity(12.0, Quantity::Torque), "12 N·m");
  EXPECT_EQ(formatQuantity(-12.0, Quantity::Torque, "mN*m"), "\u221212\u2009000 mN·m");
  EXPECT_EQ(formatQuantity(0.74, Quantity::Fraction), "74 %");
  EXPECT_EQ(formatQuantity(0.74, Quantity::Fraction, "1"), "0.74");
  EXPECT_EQ(formatQuantity(20.0, Quantity::Temperature, "degF"), "68 °F");
  EXPECT_EQ(formatQuantity(100.0, Quantity::Ratio), "100");
  EXPECT_EQ(formatQuantity(std::nan(""), Quantity::Torque), "– N·m");
  EXPECT_THROW((void)formatQuantity(1.0, Quantity::Torque, "J"), std::logic_error);
}

// What is shown can be typed: every offered unit reads back, within the four digits shown.
TEST(FormatQuantity, ReadsBackInEveryOfferedUnit) {
  for (int index = 0; index < kQuantities; ++index) {
    const auto quantity = static_cast<Quantity>(index);
    for (const auto unit : quantityInfo(quantity).units) {
      for (const double shown : {-2480.0, 0.0712, 3.2e-9}) {
        const double internal = toInternal(shown, unit, quantity);
        const auto text = formatQuantity(internal, quantity, unit);
        const auto read = parseQuantity(text, quantity, unit);
        ASSERT_TRUE(read) << text << ": " << describe(read.error());
        const double scale = std::abs(internal) + (quantity == Quantity::Temperature ? 500 : 0);
        EXPECT_NEAR(read->value, internal, 1e-12 * scale) << text;
      }
    }
  }
}

TEST(TypedForm, ShortestText) {
  EXPECT_EQ(typedForm(0.092, Quantity::TorqueConstant), "0.092 N*m/A");
  EXPECT_EQ(typedForm(toInternal(95.0, "rpm", Quantity::AngularSpeed), Quantity::AngularSpeed),
            "95 rpm");
  EXPECT_EQ(typedForm(0.009525, Quantity::Length, "in"), "0.375 in");
  EXPECT_EQ(typedForm(-25.0, Quantity::Temperature), "-25 degC");
  EXPECT_EQ(typedForm(100.0, Quantity::Ratio), "100");
  EXPECT_EQ(typedForm(0.7, Quantity::Fraction), "70 %");
  EXPECT_EQ(typedForm(1e-9, Quantity::Number), "1e-9");
  EXPECT_EQ(typedForm(std::nan(""), Quantity::Number), "");
}

double randomDouble(std::mt19937_64& random) {
  std::uniform_real_distribution<double> mantissa(-10.0, 10.0);
  std::uniform_int_distribution<int> power(-12, 9);
  return mantissa(random) * std::pow(10.0, power(random));
}

// Round trip to the last bit, for random numbers in every offered unit of every quantity.
TEST(TypedForm, RoundTripsToTheLastBit) {
  std::mt19937_64 random(20240229);
  for (int index = 0; index < kQuantities; ++index) {
    const auto quantity = static_cast<Quantity>(index);
    for (const auto unit : quantityInfo(quantity).units) {
      for (int i = 0; i < 300; ++i) {
        const double internal = randomDouble(random);
        const auto text = typedForm(internal, quantity, unit);
        const auto read = parseQuantity(text, quantity, unit == "1" ? unit : "");
        ASSERT_TRUE(read) << text << ": " << describe(read.error());
        ASSERT_EQ(read->value, internal) << text;
      }
    }
  }
}

// Every bit pattern of a finite double, also the largest and smallest.
TEST(TypedForm, RoundTripsAnyFiniteDouble) {
  std::mt19937_64 random(7);
  for (int i = 0; i < 3000; ++i) {
    const std::uint64_t bits = random();
    double internal = 0.0;
    std::memcpy(&internal, &bits, sizeof internal);
    if (!std::isfinite(internal)) continue;
    const auto read =
        parseQuantity(typedForm(internal, Quantity::Torque, "lbf*ft"), Quantity::Torque, {});
    ASSERT_TRUE(read) << describe(read.error());
    ASSERT_EQ(read->value, internal);
  }
}

// Typed numbers of up to nine digits come back as typed.
TEST(TypedForm, KeepsWhatWasTyped) {
  std::mt19937_64 random(11);
  std::uniform_int_distribution<int> digits(1, 999999999);
  for (const auto* unit : {"rpm", "deg/s", "rad/s"}) {
    for (int i = 0; i < 300; ++i) {
      const auto text = std::to_string(digits(random)) + ' ' + unit;
      const auto read = parseQuantity(text, Quantity::AngularSpeed, {});
      ASSERT_TRUE(read);
      EXPECT_EQ(typedForm(read->value, Quantity::AngularSpeed, unit), text);
    }
  }
}

TEST(QuantityInfo, EveryEnumeratorIsDescribed) {
  std::set<std::string_view> names;
  for (int index = 0; index < kQuantities; ++index) {
    const auto quantity = static_cast<Quantity>(index);
    const auto& info = quantityInfo(quantity);
    EXPECT_EQ(info.quantity, quantity);
    EXPECT_TRUE(names.insert(info.name).second) << info.name;
    EXPECT_EQ(toInternal(1.25, info.internalUnit, quantity), 1.25) << info.name;
    for (const auto unit : info.units) EXPECT_TRUE(isUnitOf(unit, quantity)) << unit;
  }
}

// The example in a remedy must itself be accepted.
TEST(QuantityInfo, ExamplesCanBeTyped) {
  for (int index = 0; index < kQuantities; ++index) {
    const auto quantity = static_cast<Quantity>(index);
    const auto remedy = parseQuantity("", quantity, {}).error().remedy;
    auto examples = remedy.substr(remedy.find("e.g. ") + 5) + " or ";
    for (auto end = examples.find(" or "); end != std::string::npos; end = examples.find(" or ")) {
      const auto example = examples.substr(0, end);
      EXPECT_TRUE(parseQuantity(example, quantity, {})) << example;
      examples.erase(0, end + 4);
    }
  }
}

}  // namespace
}  // namespace jw

// Nothing typed may crash or hang, and neither the locale nor other threads may change a value.

#include <atomic>
#include <clocale>
#include <cmath>
#include <locale>
#include <random>
#include <string>
#include <string_view>
#include <thread>
#include <vector>

#include <gtest/gtest.h>

#include "core/quantity/quantity.h"

namespace jw {
namespace {

constexpr int kQuantities = static_cast<int>(Quantity::Stiffness) + 1;

/// Every answer is a finite value or a message with a remedy in readable UTF-8.
void expectAnswer(std::string_view text, Quantity quantity) {
  const auto parsed = parseQuantity(text, quantity, {});
  if (parsed) {
    EXPECT_TRUE(std::isfinite(parsed->value)) << text;
    return;
  }
  EXPECT_FALSE(parsed.error().what.empty());
  EXPECT_FALSE(parsed.error().remedy.empty());
}

TEST(Fuzz, RandomBytes) {
  std::mt19937 random(1);
  std::uniform_int_distribution<int> byte(0, 255);
  std::uniform_int_distribution<int> length(0, 40);
  for (int i = 0; i < 20000; ++i) {
    std::string text(static_cast<std::size_t>(length(random)), '\0');
    for (auto& c : text) c = static_cast<char>(byte(random));
    expectAnswer(text, static_cast<Quantity>(i % kQuantities));
    expectAnswer("5 " + text, static_cast<Quantity>(i % kQuantities));
  }
}

TEST(Fuzz, RandomPiecesOfEntries) {
  const std::vector<std::string> pieces = {
      "1", "12", "000", ".",   ",",  "-",  "−",  "+",   "e",     "/",   " ",    "\u2009",
      "(", ")",  "^",   "²",   "⁻",  "·",  "*",  "N",   "m",     "rad", "s",    "%",
      "°", "°C", "F",   "rpm", "lb", "oz", "k",  "per", "'",     "\"",  ":",    "Ω",
      "µ", "O",  "nan", "×10", "1/", "@",  "lg", "re",  "since", "\0",  "\xe2", "\xc2"};
  std::mt19937 random(2);
  std::uniform_int_distribution<std::size_t> pick(0, pieces.size() - 1);
  std::uniform_int_distribution<int> count(1, 12);
  for (int i = 0; i < 40000; ++i) {
    std::string text;
    for (int n = count(random); n > 0; --n) text += pieces[pick(random)];
    expectAnswer(text, static_cast<Quantity>(i % kQuantities));
    (void)prettyUnit(text);
  }
}

TEST(Fuzz, LongAndDeepEntries) {
  for (const auto* piece : {"9", "(", "5 m", "1/", "-", " ", "((N", "m2", "m9·", "0.", "km9 "}) {
    for (const std::size_t size : {100u, 190u, 1000000u}) {
      std::string text = "5 ";
      while (text.size() < size) text += piece;
      expectAnswer(text, Quantity::Torque);
      expectAnswer(text.substr(2), Quantity::Number);
      (void)isUnitOf(text.substr(2, 190), Quantity::Length);
    }
  }
}

TEST(Fuzz, TooLongSaysSo) {
  const auto parsed = parseQuantity(std::string(1000000, '1'), Quantity::Torque, {});
  ASSERT_FALSE(parsed);
  EXPECT_EQ(parsed.error().what, "the entry is longer than 200 characters");
}

struct CommaAndDots : std::numpunct<char> {
  char do_decimal_point() const override { return ','; }
  char do_thousands_sep() const override { return '.'; }
  std::string do_grouping() const override { return "\3"; }
};

class Locale : public testing::Test {
 protected:
  void TearDown() override {
    std::locale::global(std::locale::classic());
    std::setlocale(LC_ALL, "C");
  }

  static void expectTheUsual() {
    EXPECT_EQ(parseQuantity("1.5 lbf·yd", Quantity::Torque, {}).has_value(), false);
    EXPECT_EQ(parseQuantity("1.5 mN·m/A", Quantity::TorqueConstant, {})->value, 0.0015);
    EXPECT_EQ(parseQuantity("1,5 in", Quantity::Length, {})->value, 0.0381);
    EXPECT_EQ(formatNumber(1234.5, 5), "1\u2009234.5");
    EXPECT_EQ(typedForm(1234.5, Quantity::Torque), "1234.5 N*m");
  }
};

TEST_F(Locale, StandardLibraryWithComma) {
  std::locale::global(std::locale(std::locale::classic(), new CommaAndDots));
  expectTheUsual();
}

TEST_F(Locale, SystemWithComma) {
  for (const auto* name : {"de_DE.UTF-8", "fr_FR.UTF-8", "es_ES.UTF-8", "nl_NL.UTF-8"}) {
    if (std::setlocale(LC_ALL, name) == nullptr) continue;
    ASSERT_STREQ(std::localeconv()->decimal_point, ",");
    return expectTheUsual();
  }
  GTEST_SKIP() << "no locale with a decimal comma is installed";
}

// Many threads meet units nobody has read before and must all get the same values.
TEST(Threads, ReadUnitsAtTheSameTime) {
  std::atomic<int> wrong = 0;
  const auto work = [&wrong](int start) {
    for (int i = 0; i < 2000; ++i) {
      const int spaces = 1 + (start + i) % 60;
      const auto unit = "N" + std::string(static_cast<std::size_t>(spaces), ' ') + "mm";
      const auto read = parseQuantity("5 " + unit, Quantity::Torque, {});
      if (!read || read->value != 0.005) ++wrong;
      if (parseQuantity("5 J" + std::string(spaces, ' ') + "s", Quantity::Torque, {})) ++wrong;
    }
  };
  std::vector<std::thread> threads;
  for (int i = 0; i < 8; ++i) threads.emplace_back(work, 7 * i);
  for (auto& thread : threads) thread.join();
  EXPECT_EQ(wrong, 0);
}

}  // namespace
}  // namespace jw

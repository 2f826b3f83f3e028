#include "core/files/motion_table.h"

#include <cmath>
#include <numbers>
#include <random>

#include <fmt/format.h>
#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace jw {
namespace {

using testing::DoubleEq;
using testing::ElementsAre;
using testing::HasSubstr;
using testing::IsEmpty;

constexpr double kDegree = std::numbers::pi / 180;

MotionTable read(std::string_view csv) {
  auto table = readMotionTable(csv, "log.csv");
  if (!table) throw std::runtime_error(describe(table.error()));
  return *std::move(table);
}

InputError errorOf(std::string_view csv) {
  const auto table = readMotionTable(csv, "log.csv");
  return table ? InputError{} : table.error();
}

TEST(MotionTable, ReadsNamesAndUnits) {
  const MotionTable table = read(
      "time [ms], angle [deg], speed [deg/s], acceleration [rad/s^2]\n"
      "0, 0, 0, 1\n500, 90, 180, 2\n1000, 180, 0, -3\n");
  EXPECT_THAT(table.time, ElementsAre(0, DoubleEq(0.5), DoubleEq(1)));
  EXPECT_THAT(table.angle, ElementsAre(0, DoubleEq(90 * kDegree), DoubleEq(180 * kDegree)));
  EXPECT_THAT(table.speed, ElementsAre(0, DoubleEq(180 * kDegree), 0));
  EXPECT_THAT(table.acceleration, ElementsAre(1, 2, -3));
}

TEST(MotionTable, TakesSemicolonsTabsAndDecimalCommas) {
  const MotionTable expected = read("t [s],position [deg]\n0,1.5\n0.25,2.5\n");
  EXPECT_EQ(read("t (s);position (deg)\n0;1,5\n0,25;2,5\n"), expected);
  EXPECT_EQ(read("t (s);position (deg)\r\n0;1.5\r\n0.25;2.5\r\n"), expected);
  EXPECT_EQ(read("t [s]\tposition [deg]\n0\t1,5\n0,25\t2.5"), expected);
  EXPECT_EQ(read("\xEF\xBB\xBF\"t [s]\";\"position [deg]\"\n\n# a note\n0;1,5;\n0,25;2,5;\n"),
            expected);
}

TEST(MotionTable, ColumnsMayComeInAnyOrderAmongOthers) {
  const MotionTable table = read("Torque [N*m],Velocity [rpm],Q [rad],T\n9,60,0,0\n9,30,1,2\n");
  EXPECT_THAT(table.time, ElementsAre(0, 2));
  EXPECT_THAT(table.angle, ElementsAre(0, 1));
  EXPECT_THAT(table.speed, ElementsAre(DoubleEq(2 * std::numbers::pi), DoubleEq(std::numbers::pi)));
  EXPECT_THAT(table.acceleration, IsEmpty());
}

TEST(MotionTable, ExternalTorqueIsReadAndTheJointsOwnIsNot) {
  const MotionTable table = read(
      "t [s],angle [rad],torque [N*m],External torque [N*cm]\n"
      "0,0,9,250\n1,0.5,9,-40\n");
  EXPECT_THAT(table.torque, ElementsAre(DoubleEq(2.5), DoubleEq(-0.4)));
  EXPECT_THAT(read("t,angle,torque\n0,0,9\n1,0.5,9\n").torque, IsEmpty());
  EXPECT_THAT(read("0,0,0,0,7\n1,0.5,0,0,8\n").torque, ElementsAre(7, 8));
}

TEST(MotionTable, WithoutNamesTheColumnsAreInInternalUnits) {
  const MotionTable table = read("0,0,1\n1,0.5,2\n");
  EXPECT_THAT(table.time, ElementsAre(0, 1));
  EXPECT_THAT(table.angle, ElementsAre(0, 0.5));
  EXPECT_THAT(table.speed, ElementsAre(1, 2));
}

TEST(MotionTable, StartsAtTime0AndAngle0) {
  const MotionTable table = read("10,3\n11,4\n13,2\n");
  EXPECT_THAT(table.time, ElementsAre(0, 1, 3));
  EXPECT_THAT(table.angle, ElementsAre(0, 1, -1));
}

TEST(MotionTable, ErrorsNameLineAndColumn) {
  const InputError text = errorOf("time,angle\n0,0\n1,abc\n");
  EXPECT_EQ(text.where, "log.csv, line 3, column angle");
  EXPECT_THAT(text.what, HasSubstr("\"abc\" is no number"));
  const InputError missing = errorOf("time,angle\n0,0\n\n# note\n1\n");
  EXPECT_EQ(missing.where, "log.csv, line 5, column angle");
  EXPECT_THAT(missing.what, HasSubstr("missing"));
  const InputError gap = errorOf("time,angle,speed\n0,0,1\n1,,1\n");
  EXPECT_EQ(gap.where, "log.csv, line 3, column angle");
  const InputError order = errorOf("0,0\n1,0\n0.5,0\n");
  EXPECT_EQ(order.where, "log.csv, line 3, column time");
  EXPECT_THAT(order.what, HasSubstr("from 1 s to 0.5 s"));
}

TEST(MotionTable, DecimalCommasBetweenCommasAreNoticed) {
  const InputError error = errorOf("time,angle\n0,5,1,5\n");
  EXPECT_THAT(error.what, HasSubstr("4 values where there are 2 columns"));
  EXPECT_THAT(error.remedy, HasSubstr("decimals take a point"));
}

TEST(MotionTable, NumbersMustBeFinite) {
  for (const char* bad : {"nan", "inf", "-inf", "1e999", "-1e400"}) {
    EXPECT_THAT(errorOf(fmt::format("0,0\n1,{}\n", bad)).what, HasSubstr("not a finite number"));
    EXPECT_THAT(errorOf(fmt::format("0,0\n{},1\n", bad)).where, HasSubstr("line 2, column time"));
  }
  EXPECT_THAT(errorOf("0,-1e308\n1,1e308\n").what, HasSubstr("too far"));
  EXPECT_THAT(errorOf("time [s],speed [rpm],angle\n0,0,0\n1,1e308,0\n").what, IsEmpty());
}

TEST(MotionTable, TimesThatFallTogetherAfterTheShiftAreNoticed) {
  EXPECT_THAT(errorOf("-1e300,0\n0,1\n1,2\n").what, HasSubstr("too close in time"));
}

TEST(MotionTable, UnitsMustSuitTheColumn) {
  const InputError error = errorOf("time [s], angle [kg]\n0,0\n1,1\n");
  EXPECT_THAT(error.what, HasSubstr("\"kg\" is no unit of angle"));
  EXPECT_THAT(error.remedy, HasSubstr("deg"));
  EXPECT_THAT(errorOf("time [], angle\n0,0\n1,1\n").what, HasSubstr("\"\" is no unit of time"));
}

TEST(MotionTable, TimeAndAngleAreNeeded) {
  EXPECT_THAT(errorOf("time [s], speed\n0,0\n").what, HasSubstr("no column of angle"));
  EXPECT_THAT(errorOf("angle\n0\n").what, HasSubstr("no column of time"));
  EXPECT_THAT(errorOf("time, angle, q\n0,0,0\n").what, HasSubstr("two columns of angle"));
  EXPECT_THAT(errorOf("1\n2\n").what, HasSubstr("1 values"));
  EXPECT_THAT(errorOf("1,2,3,4,5,6\n").what, HasSubstr("6 values"));
}

TEST(MotionTable, EmptyTextsAreErrors) {
  for (const char* empty : {"", "\n\n", "# only a note\n", "\xEF\xBB\xBF", " \t \r\n"})
    EXPECT_THAT(errorOf(empty).what, HasSubstr("no lines"));
  EXPECT_THAT(errorOf("time,angle\n").what, HasSubstr("too few points: 0"));
  EXPECT_THAT(errorOf("0,1\n").what, HasSubstr("too few points: 1"));
  EXPECT_FALSE(errorOf(";;;\n;;\n").what.empty());
}

// Whatever the bytes: a table that holds together, or an error that says what and where.
TEST(MotionTable, GarbageIsAnErrorAndNeverACrash) {
  std::mt19937 random(99);
  const std::string_view alphabet = "0123456789.,;\t\n\r eE+-nait[]()\"#\xFF\xC3";
  std::uniform_int_distribution<std::size_t> letter(0, alphabet.size()), length(0, 80);
  for (int run = 0; run < 20000; ++run) {
    std::string text = run % 2 == 0 ? "time,angle\n" : "";
    for (std::size_t k = length(random); k > 0; --k) {
      const std::size_t at = letter(random);
      text += at < alphabet.size() ? alphabet[at] : '\0';
    }
    const auto table = readMotionTable(text, "log.csv");
    if (table) {
      ASSERT_GE(table->time.size(), 2u);
      ASSERT_EQ(table->time.size(), table->angle.size());
    } else {
      ASSERT_FALSE(table.error().what.empty() || table.error().remedy.empty());
      ASSERT_THAT(table.error().where, HasSubstr("log.csv"));
    }
  }
}

TEST(MotionTable, MessagesQuoteOnlyPrintableText) {
  const InputError error = errorOf("0,0\n1,\x01\xFFzz" + std::string(500, 'x') + "\n");
  EXPECT_LT(error.what.size(), 80u);
  EXPECT_THAT(error.what, HasSubstr("\"??zz"));
}

TEST(MotionTable, ReadsLongLogs) {
  std::string csv = "time [s];angle [deg]\n";
  for (int i = 0; i < 200'000; ++i) csv += fmt::format("{:.3f};{:.12g}\n", i * 1e-3, i * 0.01);
  const MotionTable table = read(csv);
  ASSERT_EQ(table.time.size(), 200'000u);
  EXPECT_NEAR(table.angle.back(), 1999.99 * kDegree, 1e-9);
}

}  // namespace
}  // namespace jw

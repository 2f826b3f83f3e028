// Reading and mending measured logs; the numbers are hand made.
#include "core/files/measured_log.h"

#include <cmath>
#include <numbers>
#include <random>

#include <fmt/format.h>
#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace jw {
namespace {

using testing::DoubleEq;
using testing::DoubleNear;
using testing::ElementsAre;
using testing::HasSubstr;

constexpr double kDegree = std::numbers::pi / 180;

tl::expected<MeasuredLog, InputError> tryRead(std::string_view text,
                                              const LogReading& reading = {}) {
  const LogSource source{text, "log.csv", 0};
  const auto columns = guessColumns(source);
  if (!columns) return tl::unexpected(columns.error());
  return readLog(source, *columns, reading);
}

MeasuredLog read(std::string_view text, const LogReading& reading = {}) {
  auto log = tryRead(text, reading);
  if (!log) throw std::runtime_error(describe(log.error()));
  return *std::move(log);
}

InputError errorOf(std::string_view text, const LogReading& reading = {}) {
  const auto log = tryRead(text, reading);
  return log ? InputError{} : log.error();
}

const LogMend* mendOf(const MeasuredLog& log, LogMendKind kind) {
  for (const LogMend& mend : log.mends)
    if (mend.kind == kind) return &mend;
  return nullptr;
}

TEST(MeasuredLog, SiUnitsFromEveryColumn) {
  const MeasuredLog log = read(
      "t [ms];q [deg];n [rpm];acc [deg/s^2];M [mN*m];I [mA]\n"
      "100;180;-60;0;1000;500\n200;90;-30;180;-2000;1\n300;0;0;0;0;0\n400;0;0;0;0;0\n500;0;0;0;0;0\n");
  EXPECT_THAT(log.time, ElementsAre(0, DoubleNear(0.1, 1e-15), DoubleNear(0.2, 1e-15),
                                    DoubleNear(0.3, 1e-15), DoubleNear(0.4, 1e-15)));
  EXPECT_DOUBLE_EQ(log.startTime, 0.1);
  EXPECT_DOUBLE_EQ(log.position[0], std::numbers::pi);
  EXPECT_DOUBLE_EQ(log.speed[0], -2 * std::numbers::pi);
  EXPECT_DOUBLE_EQ(log.acceleration[1], std::numbers::pi);
  EXPECT_DOUBLE_EQ(log.torque[1], -2);
  EXPECT_DOUBLE_EQ(log.current[0], 0.5);
  ASSERT_TRUE(mendOf(log, LogMendKind::StartShifted));
}

TEST(MeasuredLog, SignAndFactorAreTheUsersChoice) {
  const LogSource source{"t,q,tau\n0,1,5\n1,2,5\n2,3,5\n3,4,5\n4,5,5\n", "log.csv", 0};
  LogColumns columns = *guessColumns(source);
  columns.columns[1].factor = 0.01;  // behind a reducer of 100
  columns.columns[2].sign = -1;
  const auto log = readLog(source, columns);
  ASSERT_TRUE(log) << describe(log.error());
  EXPECT_DOUBLE_EQ(log->position[4], 0.05);
  EXPECT_EQ(log->torque[0], -5);
  const LogMend* turned = mendOf(*log, LogMendKind::SignTurned);
  ASSERT_TRUE(turned);
  EXPECT_THAT(turned->text, HasSubstr("joint torque"));
}

TEST(MeasuredLog, RowsOfOneTimeAreAveragedOrAsChosen) {
  const std::string text = "t [s],q [rad]\n0,0\n1,1\n1,3\n1,5\n2,4\n3,4\n4,4\n";
  const MeasuredLog mean = read(text);
  EXPECT_THAT(mean.time, ElementsAre(0, 1, 2, 3, 4));
  EXPECT_THAT(mean.position, ElementsAre(0, 3, 4, 4, 4));
  const LogMend* mend = mendOf(mean, LogMendKind::Duplicate);
  ASSERT_TRUE(mend);
  EXPECT_EQ(mend->count, 2u);
  EXPECT_THAT(mend->lines, ElementsAre(4u, 5u));
  EXPECT_THAT(mend->rows, ElementsAre(1u, 1u));
  EXPECT_EQ(read(text, {DuplicateTimes::KeepFirst}).position[1], 1);
  EXPECT_EQ(read(text, {DuplicateTimes::KeepLast}).position[1], 5);
  const InputError refused = errorOf(text, {DuplicateTimes::Refuse});
  EXPECT_EQ(refused.where, "log.csv, line 4, column time");
}

TEST(MeasuredLog, WrappedPositionsGoOn) {
  std::string text = "t [s];q [deg]\n";
  for (int i = 0; i < 100; ++i) text += fmt::format("{};{}\n", i, (i * 30) % 360);
  const MeasuredLog log = read(text);
  for (std::size_t i = 0; i < 100; ++i)
    ASSERT_NEAR(log.position[i], 30 * kDegree * static_cast<double>(i), 1e-12);
  const LogMend* mend = mendOf(log, LogMendKind::WrapAround);
  ASSERT_TRUE(mend);
  EXPECT_EQ(mend->count, 8u);  // 99 * 30 degrees = 8.25 turns
  EXPECT_EQ(mend->lines[0], 14u);
  LogReading never;
  never.wrapAround = WrapAround::Never;
  EXPECT_NEAR(read(text, never).position[12], 0, 1e-12);
}

TEST(MeasuredLog, BackwardTurnsAndHalfTurnScales) {
  std::string text = "t [s],q [deg]\n";
  for (int i = 0; i < 60; ++i) {
    const int q = ((170 - 20 * i) % 360 + 540) % 360 - 180;  // -180 to 180, turning backwards
    text += fmt::format("{},{}\n", i, q);
  }
  const MeasuredLog log = read(text);
  EXPECT_NEAR(log.position[59], (170 - 20 * 59) * kDegree, 1e-12);
}

TEST(MeasuredLog, AMoveOfMoreThanATurnIsNotUnwrapped) {
  const MeasuredLog log = read("t [s],q [deg]\n0,0\n1,10\n2,400\n3,410\n4,420\n");
  EXPECT_FALSE(mendOf(log, LogMendKind::WrapAround));
  EXPECT_NEAR(log.position[2], 400 * kDegree, 1e-12);
}

TEST(MeasuredLog, GapsAreShown) {
  std::string text = "t [s],q [deg]\n";
  for (int i = 0; i < 100; ++i) text += fmt::format("{:.3f},1\n", i * 0.001 + (i >= 60 ? 0.5 : 0));
  const MeasuredLog log = read(text);
  const LogMend* gap = mendOf(log, LogMendKind::Gap);
  ASSERT_TRUE(gap);
  EXPECT_EQ(gap->count, 1u);
  EXPECT_THAT(gap->lines, ElementsAre(62u));
  EXPECT_NEAR(log.medianStep, 0.001, 1e-12);
  EXPECT_NEAR(log.largestStep, 0.501, 1e-12);
}

TEST(MeasuredLog, EmptyCellsLeaveTheRowOutAndTorqueOpen) {
  const std::string text =
      "t [s],q [deg],tau [Nm]\n0,1,7\n1,,7\n2,3,\n3,nan,7\n4,5,NaN\n5,6,7\n6,7,7\n7,8,7\n";
  const MeasuredLog log = read(text);
  EXPECT_THAT(log.time, ElementsAre(0, 2, 4, 5, 6, 7));
  EXPECT_TRUE(std::isnan(log.torque[1]));
  EXPECT_TRUE(std::isnan(log.torque[2]));
  EXPECT_EQ(log.torque[3], 7);
  const LogMend* mend = mendOf(log, LogMendKind::EmptyCell);
  ASSERT_TRUE(mend);
  EXPECT_THAT(mend->text, HasSubstr("2 of 8 rows"));
  EXPECT_THAT(mend->lines, ElementsAre(3u, 5u));
  LogReading strict;
  strict.emptyCells = EmptyCells::Refuse;
  EXPECT_EQ(errorOf(text, strict).where, "log.csv, line 3, column 2 \"q [deg]\"");
}

struct BadText {
  const char* text;
  const char* what;
  const char* where;
};

const BadText kBadTexts[] = {
    {"", "no lines", "log.csv"},
    {"t,q\n", "no rows of numbers", "log.csv, line 1"},
    {"t,q\n0,1\n1,2\n2\n3,4\n4,5\n5,6\n", "1 values where there are 2 columns", "log.csv, line 4"},
    {"t,q\n0,1\n1,2\n2,3,4\n3,4\n4,5\n5,6\n", "3 values where there are 2 columns",
     "log.csv, line 4"},
    {"t,q\n0,1\n1,abc\n2,3\n3,4\n4,5\n", "\"abc\" is no number", "log.csv, line 3, column 2 \"q\""},
    {"t,q\n0,abc\n1,2\n2,3\n3,4\n4,5\n", "\"abc\" is no number", "log.csv, line 2, column 2 \"q\""},
    {"t,q\n0,1\n1,2\n0.5,3\n3,4\n4,5\n", "runs backwards from 1 s to 0.5 s",
     "log.csv, line 4, column 1 \"t\""},
    {"t,q [rad]\n0,1\n1,1e9\n2,3\n3,4\n4,5\n", "the position is 1e+09 rad",
     "log.csv, line 3, column 2 \"q [rad]\""},
    {"t;q\n0;1,5\n1;2,5\n2;3.5\n3;4,5\n4;5,5\n", "\"3.5\" has a decimal point",
     "log.csv, line 4, column 2 \"q\""},
    {"t;q\n0;1.5\n1;2.5\n2;3,5\n3;4.5\n4;5.5\n", "\"3,5\" has a decimal comma",
     "log.csv, line 4, column 2 \"q\""},
    {"t;q\n0;1.5\n1;2.5\n2;1.234,5\n3;4.5\n4;5.5\n", "is no number",
     "log.csv, line 4, column 2 \"q\""},
    {"t,q\n0,1\n1,inf\n2,3\n3,4\n4,5\n", "not a finite number", "log.csv, line 3, column 2 \"q\""},
    {"t,q\n0,1\n1,1e999\n2,3\n3,4\n4,5\n", "not a finite number",
     "log.csv, line 3, column 2 \"q\""},
    {"t [s],q\n0,1\n2e9,2\n3e9,3\n4e9,4\n5e9,5\n", "lasts 2e+09 s",
     "log.csv, line 3, column 1 \"t [s]\""},
    {"t,q\n0,1\n1,2\n", "too few rows: 2", "log.csv"},
    {"t,q\n0,1\n0,2\n0,3\n0,4\n0,5\n0,6\n", "too few rows: 1", "log.csv"}};

// Each of these must be refused as a whole, with line and column.
TEST(MeasuredLog, BadInputSaysLineAndColumn) {
  for (const BadText& bad : kBadTexts) {
    const InputError error = errorOf(bad.text);
    EXPECT_THAT(error.what, HasSubstr(bad.what)) << bad.text;
    EXPECT_EQ(error.where, bad.where) << bad.text;
    EXPECT_FALSE(error.remedy.empty()) << bad.text;
  }
}

TEST(MeasuredLog, ATextCutShortIsNoticed) {
  const std::string whole = "t,q\n0,1\n1,2\n2,3\n3,4\n4,5\n5,6\n";
  const InputError ragged = errorOf(whole + "6");
  EXPECT_THAT(ragged.what, HasSubstr("may be cut short"));
  EXPECT_EQ(ragged.where, "log.csv, line 8");
  EXPECT_THAT(errorOf(whole + "6,-").what, HasSubstr("may be cut short"));
  EXPECT_TRUE(mendOf(read(whole + "6,7"), LogMendKind::EndMissing));
  EXPECT_FALSE(mendOf(read(whole), LogMendKind::EndMissing));
  LogSource source{whole, "log.csv", 0};
  const LogColumns columns = *guessColumns(source);
  source.size = 5'000'000'000;
  const auto claimed = readLog(source, columns);
  ASSERT_FALSE(claimed);
  EXPECT_THAT(claimed.error().what, HasSubstr("claims 5000 MB, but is cut short after"));
}

TEST(MeasuredLog, ColumnsMustSuit) {
  const LogSource source{"t,q,v\n0,1,1\n1,2,1\n2,3,1\n3,4,1\n4,5,1\n", "log.csv", 0};
  const LogColumns good = *guessColumns(source);
  const auto whatOf = [&](auto change) {
    LogColumns columns = good;
    change(columns.columns);
    const auto log = readLog(source, columns);
    return log ? std::string() : describe(log.error());
  };
  EXPECT_EQ(whatOf([](auto&) {}), "");
  EXPECT_THAT(whatOf([](auto& c) { c[2].role = LogRole::Position, c[2].unit = "deg"; }),
              HasSubstr("two columns of position"));
  EXPECT_THAT(whatOf([](auto& c) { c[1].unit = "kg"; }), HasSubstr("no unit of angle"));
  EXPECT_THAT(whatOf([](auto& c) { c[0].role = LogRole::Unused; }),
              HasSubstr("no column is the time"));
  EXPECT_THAT(whatOf([](auto& c) { c[1].role = LogRole::Unused; }),
              HasSubstr("no column is the position"));
  EXPECT_THAT(whatOf([](auto& c) { c[1].factor = 0; }), HasSubstr("factor"));
  EXPECT_THAT(whatOf([](auto& c) { c[1].factor = NAN; }), HasSubstr("factor"));
}

TEST(MeasuredLog, TextInUnusedColumnsDoesNotMatter) {
  const MeasuredLog log = read("t,mode,q\n0,run,1\n1,run,2\n2,\"a,b\",3\n3,,4\n4,x,5\n");
  EXPECT_THAT(log.position, ElementsAre(1, 2, 3, 4, 5));
}

TEST(MeasuredLog, LargeTimeStampsKeepTheirSteps) {
  std::string text = "timestamp [us],q [rad]\n";
  for (int i = 0; i < 10; ++i) text += fmt::format("{},1\n", 1700000000000000 + i * 250);
  const MeasuredLog log = read(text);
  EXPECT_NEAR(log.medianStep, 250e-6, 1e-6);
  EXPECT_DOUBLE_EQ(log.startTime, 1.7e9);
}

// Whatever the bytes: a log that holds together, or an error that says what, where and a remedy.
TEST(MeasuredLog, GarbageIsAnErrorAndNeverACrash) {
  std::mt19937 random(7);
  const std::string_view alphabet = "0123456789.,;\t\n\n\n\r eE+-nait[]()\"#|\xFF\xC3";
  std::uniform_int_distribution<std::size_t> letter(0, alphabet.size()), length(0, 160);
  int read = 0;
  for (int run = 0; run < 20000; ++run) {
    std::string text = run % 3 == 0   ? "t,q\n0,1\n1,2\n2,3\n3,4\n4,5\n"
                       : run % 3 == 1 ? "t;q\n"
                                      : "";
    for (std::size_t k = length(random); k > 0; --k) {
      const std::size_t at = letter(random);
      text += at < alphabet.size() ? alphabet[at] : '\0';
    }
    const auto log = tryRead(text);
    if (log) {
      ++read;
      ASSERT_GE(log->rows(), kFewestLogRows);
      ASSERT_EQ(log->rows(), log->position.size());
      for (std::size_t i = 1; i < log->rows(); ++i) ASSERT_GT(log->time[i], log->time[i - 1]);
    } else {
      ASSERT_FALSE(log.error().what.empty() || log.error().remedy.empty()) << text;
      ASSERT_THAT(log.error().where, HasSubstr("log.csv"));
    }
  }
  EXPECT_GT(read, 10);
}

TEST(MeasuredLog, EveryRowOfALongLogIsThere) {
  std::string text = "time [s];angle [deg]\n";
  for (int i = 0; i < 200'000; ++i) text += fmt::format("{:.3f};{:.12g}\n", i * 1e-3, i * 0.01);
  const MeasuredLog log = read(text);
  ASSERT_EQ(log.rows(), 200'000u);
  EXPECT_NEAR(log.position.back(), 1999.99 * kDegree, 1e-9);
}

TEST(MeasuredLog, TheReadingCanBeStopped) {
  std::string text = "t [s],q [rad]\n";
  for (int i = 0; i < 40'000; ++i) text += fmt::format("{},1\n", i);
  const LogSource source{text, "log.csv", 0};
  const LogColumns columns = guessColumns(source).value();
  double share = 0;
  const auto stopped = readLog(source, columns, {}, [&](double s) {
    share = s;
    return s < 0.7;
  });
  ASSERT_FALSE(stopped);
  EXPECT_THAT(stopped.error().what, HasSubstr("stopped"));
  EXPECT_NEAR(share, 32768.0 / 40'000, 0.02);  // told every 16384 lines
  EXPECT_TRUE(readLog(source, columns, {}, [](double) { return true; }));
}

TEST(MeasuredLog, NamesAndFirstRowCanBeChosen) {
  const std::string text = "bench 3\nt [s],q [deg]\nidle,idle\n9,9\n0,1\n1,2\n2,3\n3,4\n4,5\n";
  const LogSource source{text, "log.csv", 0};
  const LogLayout guessed = guessLayout(source).value();
  const auto layout = layoutFrom(source, guessed, 2, 5);
  ASSERT_TRUE(layout) << describe(layout.error());
  EXPECT_THAT(layout->titles, ElementsAre("t [s]", "q [deg]"));
  const auto log = readLog(source, guessColumns(source, *layout));
  ASSERT_TRUE(log) << describe(log.error());
  EXPECT_EQ(log->rows(), 5u);
  EXPECT_FALSE(layoutFrom(source, guessed, 5, 5));
  EXPECT_EQ(layoutFrom(source, guessed, 0, 70).error().where, "log.csv, line 70");
  EXPECT_FALSE(layoutFrom(source, guessed, 0, 1));
  EXPECT_EQ(layoutFrom(source, guessed, 0, 5)->titles[0], "");
}

}  // namespace
}  // namespace jw

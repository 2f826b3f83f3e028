// What columns of a log are taken for.
#include "core/files/log_columns.h"

#include <cmath>
#include <numbers>

#include <fmt/format.h>
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "core/files/log_titles.h"

namespace jw {
namespace {

using testing::ElementsAre;
using testing::HasSubstr;

LogSource sourceOf(std::string_view text) { return {text, "log.csv", 0}; }

LogColumns guess(std::string_view text) {
  auto columns = guessColumns(sourceOf(text));
  if (!columns) throw std::runtime_error(describe(columns.error()));
  return *std::move(columns);
}

InputError errorOf(std::string_view text) {
  const auto columns = guessColumns(sourceOf(text));
  return columns ? InputError{} : columns.error();
}

std::vector<LogRole> rolesOf(const LogColumns& columns) {
  std::vector<LogRole> roles;
  for (const LogColumn& c : columns.columns) roles.push_back(c.role);
  return roles;
}

std::vector<std::string> unitsOf(const LogColumns& columns) {
  std::vector<std::string> units;
  for (const LogColumn& c : columns.columns) units.push_back(c.unit);
  return units;
}

using enum LogRole;

struct Title {
  const char* text;
  LogRole role;
  const char* unit;
};

// Ways in which people write names and units: common practice, no source.
const Title kTitles[] = {{"q [deg]", Position, "deg"},
                         {"t_ms", Time, "ms"},
                         {"torque/Nm", Torque, "Nm"},
                         {"Angle in deg", Position, "deg"},
                         {"time, s", Time, "s"},
                         {"T [N*m]", Torque, "N*m"},
                         {"actualVelocity", Speed, ""},
                         {"vel_deg_s", Speed, "deg/s"},
                         {"dq (rad/s)", Speed, "rad/s"},
                         {"acc_rads2", Acceleration, "rad/s^2"},
                         {"i_q [A]", Current, "A"},
                         {"motor current", Current, ""},
                         {"current position", Position, ""},
                         {"Drehmoment [NM]", Torque, "N*m"},
                         {"n [U/min]", Speed, "rpm"},
                         {"Winkel (\u00b0)", Position, "\u00b0"},
                         {"v [\xB0/s]", Speed, "\u00b0/s"},
                         {"tau_meas1", Torque, ""},
                         {"q_ref", Position, ""},
                         {"pos_min", Position, ""},
                         {"vel_s", Speed, ""},
                         {"rpm", Speed, "rpm"},
                         {"temperature [degC]", Unused, ""},
                         {"torque current", Current, ""},
                         {"", Unused, ""},
                         {"[", Unused, ""},
                         {"status", Unused, ""}};

TEST(LogTitles, RoleAndUnitOfManyNames) {
  for (const Title& title : kTitles) {
    const TitleMeaning m = readTitle(title.text);
    EXPECT_EQ(m.role, title.role) << title.text;
    EXPECT_EQ(m.unit, title.unit) << title.text;
  }
  EXPECT_EQ(readTitle("q [counts]").strangeUnit, "counts");
  EXPECT_LT(readTitle("pos_des").rank, readTitle("pos").rank);
  EXPECT_GT(readTitle("pos_meas").rank, readTitle("pos").rank);
}

TEST(LogLayout, EveryDelimiterAndDecimalSign) {
  struct Case {
    const char* text;
    char delimiter, decimalSign;
  };
  for (const Case& c : {Case{"t,q\n0,1.5\n0.5,2\n", ',', '.'},
                        {"t;q\n0;1,5\n0,5;2\n", ';', ','},
                        {"t;q\n0;1.5\n0.5;2\n", ';', '.'},
                        {"t\tq\n0\t1,5\n0,5\t2\n", '\t', ','},
                        {"t|q\n0|1.5\n0.5|2\n", '|', '.'},
                        {"t q\n0 1.5\n 0.5   2\n", ' ', '.'},
                        {"t, q\n0, 1.5\n0.5, 2\n", ',', '.'},
                        {"\"t\",\"q\"\n\"0,5\",\"1,5\"\n\"1,5\",\"2,5\"\n", ',', ','},
                        {"0,001;1,5\n0,002;2,5\n", ';', ','}}) {
    const auto layout = guessLayout(sourceOf(c.text));
    ASSERT_TRUE(layout) << c.text;
    EXPECT_EQ(layout->delimiter, c.delimiter) << c.text;
    EXPECT_EQ(layout->decimalSign, c.decimalSign) << c.text;
    EXPECT_EQ(layout->columns(), 2u) << c.text;
  }
}

TEST(LogLayout, NamesUnitsAndLinesInFront) {
  const LogColumns c = guess(
      "Recorder 7\nstarted today\n\ntime;axis pos;axis vel\ns;deg;deg/s\n0;1;2\n1;3;2\n2;5;2\n");
  EXPECT_EQ(c.layout.titleLine, 4u);
  EXPECT_EQ(c.layout.unitLine, 5u);
  EXPECT_EQ(c.layout.firstRowLine, 6u);
  EXPECT_THAT(rolesOf(c), ElementsAre(Time, Position, Speed));
  EXPECT_THAT(unitsOf(c), ElementsAre("s", "deg", "deg/s"));
  EXPECT_THAT(c.layout.reasons, testing::Contains(HasSubstr("2 lines in front")));
  const LogColumns note = guess("# t [s] q [deg]\n0 0\n1 1\n2 2\n");
  EXPECT_EQ(note.layout.titleLine, 1u);
  EXPECT_THAT(unitsOf(note), ElementsAre("s", "deg"));
}

TEST(LogLayout, DelimiterAtTheEndOfEveryRowPartsNothing) {
  const LogColumns c = guess("t;q;\n0;1;\n1;2;\n2;3;\n");
  EXPECT_EQ(c.columns.size(), 2u);
  EXPECT_THAT(rolesOf(c), ElementsAre(Time, Position));
}

TEST(LogLayout, PreviewShowsTheCellsAsTheyStand) {
  const std::string text = "t;q\n0;1,50\n\n1;x\n2;3\n";
  const auto layout = guessLayout(sourceOf(text));
  ASSERT_TRUE(layout);
  EXPECT_THAT(previewRows(sourceOf(text), *layout, 2),
              ElementsAre(ElementsAre("0", "1,50"), ElementsAre("1", "x")));
}

TEST(LogLayout, BadTextsSayWhatAndWhere) {
  EXPECT_THAT(errorOf("").what, HasSubstr("no lines"));
  EXPECT_THAT(errorOf("\n \n").what, HasSubstr("no lines"));
  EXPECT_THAT(errorOf("time,angle\n").what, HasSubstr("no rows of numbers"));
  EXPECT_EQ(errorOf("time,angle\n").where, "log.csv, line 1");
  EXPECT_THAT(errorOf("q\n1\n2\n3\n").what, HasSubstr("one column only"));
  EXPECT_THAT(errorOf(std::string_view("t\0,\0q\0", 6)).what, HasSubstr("no plain text"));
  const LogSource cut{"t,q\n0,1\n1,2\n", "log.csv", 5'000'000'000};
  const auto error = guessColumns(cut);
  ASSERT_FALSE(error);
  EXPECT_THAT(error.error().what, HasSubstr("claims 5000 MB, but is cut short after 12 bytes"));
  EXPECT_EQ(error.error().where, "log.csv, line 4");
}

/// sin(2t) in degrees with its slope; each value printed by `row`.
template <class Row>
std::string sineLog(const char* head, Row row, int rows = 2000) {
  std::string text = head;
  for (int i = 0; i < rows; ++i) {
    const double t = i * 1e-3;
    text += row(t, std::sin(2 * t), 2 * std::cos(2 * t), -4 * std::sin(2 * t));
  }
  return text;
}

TEST(LogColumns, WithoutNamesTheNumbersTell) {
  const LogColumns c = guess(sineLog("", [](double t, double q, double v, double a) {
    return fmt::format("{:.6f},{:.6f},{:.3f},{:.6f}\n", v, a, t, q);
  }));
  EXPECT_THAT(rolesOf(c), ElementsAre(Speed, Acceleration, Time, Position));
  EXPECT_THAT(c.columns[2].reason, HasSubstr("never falls"));
  EXPECT_THAT(c.columns[3].reason, HasSubstr("slope"));
}

TEST(LogColumns, UnitsFollowFromTheSlope) {
  constexpr double kDeg = 180 / std::numbers::pi;
  const LogColumns c = guess(sineLog("t;pos;vel;acc\n", [](double t, double q, double v, double a) {
    return fmt::format("{:.6f};{:.6f};{:.6f};{:.6f}\n", t, kDeg * q, v * 30 / std::numbers::pi, a);
  }));
  EXPECT_THAT(unitsOf(c), ElementsAre("s", "deg", "rpm", "rad/s^2"));
  const LogColumns stated =
      guess(sineLog("t [s];pos;vel [rad/s]\n", [](double t, double q, double v, double) {
        return fmt::format("{:.6f};{:.6f};{:.6f}\n", t, kDeg * q, v);
      }));
  EXPECT_THAT(unitsOf(stated), ElementsAre("s", "deg", "rad/s"));
}

TEST(LogColumns, ASpeedThatRunsAgainstThePositionIsTurned) {
  const LogColumns c =
      guess(sineLog("t,q [rad],dq [rad/s]\n", [](double t, double q, double v, double) {
        return fmt::format("{:.6f},{:.6f},{:.6f}\n", t, q, -v);
      }));
  EXPECT_EQ(c.columns[2].sign, -1);
  EXPECT_THAT(c.columns[2].reason, HasSubstr("sign turned"));
}

TEST(LogColumns, UnitsThatClashAreDoubted) {
  const LogColumns c =
      guess(sineLog("t [s],q [rad],dq [deg/s]\n", [](double t, double q, double v, double) {
        return fmt::format("{:.6f},{:.6f},{:.6f}\n", t, q, v);
      }));
  EXPECT_TRUE(c.columns[2].doubtful);
  EXPECT_THAT(c.columns[2].reason, HasSubstr("57.3 times"));
}

TEST(LogColumns, WholeStepsOfTimeAreMilliseconds) {
  const LogColumns c = guess("time,q [deg]\n0,0\n2,1\n4,2\n6,3\n");
  EXPECT_EQ(c.columns[0].unit, "ms");
  EXPECT_TRUE(c.columns[0].doubtful);
  EXPECT_EQ(guess("time,q [deg]\n0,0\n0.002,1\n0.004,2\n").columns[0].unit, "s");
  EXPECT_THAT(guess("n,q [deg]\n1,0\n2,1\n3,2\n").columns[0].reason, HasSubstr("row number"));
}

TEST(LogColumns, OfSeveralTheMeasuredOneIsTaken) {
  const LogColumns c = guess(
      "time,pos_des,pos_meas,pos_filt,tau_cmd,tau_meas\n0,1,1,1,5,6\n1,2,2,2,5,6\n2,3,3,3,5,6\n");
  EXPECT_THAT(rolesOf(c), ElementsAre(Time, Unused, Position, Unused, Unused, Torque));
  EXPECT_THAT(c.columns[1].reason, HasSubstr("column 3 is taken"));
}

TEST(LogColumns, EveryGuessHasAReason) {
  for (const LogColumn& c : guess("time,date,q,x\n0,mon,1,2\n1,tue,2,2\n2,wed,3,2\n").columns)
    EXPECT_FALSE(c.reason.empty()) << c.title;
}

}  // namespace
}  // namespace jw

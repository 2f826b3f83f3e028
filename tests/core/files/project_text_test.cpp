// The document form of a project. JSON syntax after RFC 8259; what a message has to name (file,
// line, column or path, what was found, what is allowed) is the project's own rule.
#include "core/files/project_text.h"

#include <string>

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "core/files/migration.h"
#include "core/model/field_catalogue.h"

namespace jw {
namespace {

using testing::HasSubstr;
using testing::StartsWith;

/// A small project as a person would write it by hand.
constexpr const char* kByHand = R"({
  "format": "jointwright project",
  "version": 1,
  "title": "Hoist",
  "load": {"inertia": "1.5 kg*m^2", "payloadMass": 6.5},
  "cycle": {"segments": [{"name": "up", "law": "jerkLimited", "travel": "90 deg", "duration": 2}]},
  "variants": [
    {"name": "A", "motor": {"rotorInertia": "0.42 kg*cm^2"},
     "transmission": [{"name": "belt", "family": "belt", "ratio": 1.5, "reverses": true}]},
    {"name": "B", "supply": {"voltage": "48 V"}}
  ],
  "activeVariant": 1
})";

Project readGood(const std::string& text) {
  const auto read = readProject(text, "hoist.jointwright");
  EXPECT_TRUE(read.has_value()) << (read ? "" : describe(read.error()));
  return read ? read->project : Project{};
}

InputError readBad(const std::string& text) {
  const auto read = readProject(text, "hoist.jointwright");
  EXPECT_FALSE(read.has_value()) << "was accepted: " << text.substr(0, 200);
  return read ? InputError{} : read.error();
}

/// kByHand with its first `from` replaced by `to`.
std::string with(const std::string& from, const std::string& to) {
  std::string text = kByHand;
  const auto place = text.find(from);
  EXPECT_NE(place, std::string::npos) << from;
  return text.replace(place, from.size(), to);
}

TEST(ProjectText, ReadsWhatAPersonWrites) {
  const Project project = readGood(kByHand);
  EXPECT_EQ(project.title, "Hoist");
  EXPECT_DOUBLE_EQ(project.load.inertia, 1.5);
  EXPECT_DOUBLE_EQ(project.load.payloadMass, 6.5);
  ASSERT_EQ(project.cycle.segments.size(), 1U);
  EXPECT_EQ(project.cycle.segments[0].law, MotionLaw::JerkLimited);
  // A right angle is pi/2 rad (BIPM, SI Brochure, 9th edition, table 8).
  EXPECT_DOUBLE_EQ(project.cycle.segments[0].travel, 1.5707963267948966);
  ASSERT_EQ(project.variants.size(), 2U);
  EXPECT_EQ(project.activeVariant, 1);
  EXPECT_DOUBLE_EQ(project.variants[0].motor.rotorInertia, 0.42e-4);
  EXPECT_EQ(project.variants[0].transmission[0].family, StageFamily::Belt);
  EXPECT_TRUE(project.variants[0].transmission[0].reverses);
  EXPECT_DOUBLE_EQ(project.active().supply.voltage, 48);
}

TEST(ProjectText, BareNumberIsInTheFieldsDisplayUnit) {
  const Project project = readGood(with("\"1.5 kg*m^2\"", "2"));
  const auto field = findField(project, "load.inertia");
  ASSERT_TRUE(field.has_value());
  EXPECT_DOUBLE_EQ(project.load.inertia, toInternal(2, field->info->unit, field->info->quantity));
}

TEST(ProjectText, KeepsTextAsTyped) {
  const std::string written = writeProject(readGood(with("90 deg", "1,5 rad")));
  EXPECT_THAT(written, HasSubstr("\"travel\": \"1,5 rad\""));
  EXPECT_THAT(written, HasSubstr("\"ratio\": 1.5"));
}

TEST(ProjectText, WritesPlainFormWhenTypedTextNoLongerFits) {
  Project project = readGood(kByHand);
  project.load.inertia = 3;
  EXPECT_THAT(writeProject(project), HasSubstr("\"inertia\": \"3 kg*m^2\""));
}

TEST(ProjectText, BeginsWithFormatAndVersionAndEndsWithNewline) {
  const std::string written = writeProject(Project{});
  EXPECT_THAT(written,
              StartsWith("{\n  \"format\": \"jointwright project\",\n  \"version\": 1,\n"));
  EXPECT_EQ(written.back(), '\n');
}

TEST(ProjectText, LeavesUnsetNumbersOut) {
  EXPECT_EQ(writeProject(Project{}).find("rotorInertia"), std::string::npos);
}

TEST(ProjectText, ClearedDefaultStaysCleared) {
  Project project;
  project.load.gravity = kUnset;
  const std::string written = writeProject(project);
  EXPECT_THAT(written, HasSubstr("\"gravity\": null"));
  EXPECT_FALSE(isSet(readGood(written).load.gravity));
}

TEST(ProjectText, KeepsAndReportsUnknownKeys) {
  const std::string text =
      with("\"name\": \"belt\"", R"("name": "belt", "zeta": [1, {"b": 2.5}], "alpha": null)");
  const auto read = readProject(text, "hoist.jointwright");
  ASSERT_TRUE(read.has_value());
  ASSERT_EQ(read->notes.size(), 2U);
  EXPECT_EQ(read->notes[0].where, "variants[0].transmission[0].zeta");
  const std::string written = writeProject(read->project);
  const auto alpha = written.find("\"alpha\": null");
  const auto zeta = written.find("\"zeta\": [");
  ASSERT_NE(alpha, std::string::npos);
  ASSERT_NE(zeta, std::string::npos);
  EXPECT_LT(alpha, zeta);
  EXPECT_GT(alpha, written.find("\"reverses\""));
  EXPECT_EQ(writeProject(readGood(written)), written);
}

TEST(ProjectText, KeepsAMotionTable) {
  Project project = readGood(kByHand);
  project.cycle.segments[0].law = MotionLaw::Table;
  project.cycle.segments[0].table = {{0, 0.1, 0.30000000000000004}, {0, 0.5, 1}, {}, {0, 1, -1}};
  const std::string written = writeProject(project);
  EXPECT_THAT(written, HasSubstr("\"acceleration [rad/s^2]\""));
  EXPECT_EQ(readGood(written).cycle.segments[0].table, project.cycle.segments[0].table);
  EXPECT_EQ(writeProject(readGood(written)), written);
}

TEST(ProjectText, SyntaxErrorNamesLineAndColumn) {
  const InputError error = readBad("{\n  \"format\": \"jointwright project\",\n  \"version\" 1\n}");
  EXPECT_EQ(error.where, "hoist.jointwright, line 3, column 13");
  EXPECT_THAT(error.what, HasSubstr("expected ':'"));
}

TEST(ProjectText, ColumnCountsCharactersNotBytes) {
  const InputError error = readBad("{\"ü\": x}");
  EXPECT_EQ(error.where, "hoist.jointwright, line 1, column 7");
}

struct BadCase {
  const char* name;
  std::string text;
  std::string where;   // part of it
  std::string what;    // part of it
  std::string remedy;  // part of it
};

void PrintTo(const BadCase& bad, std::ostream* out) { *out << bad.name; }

std::string nameOf(const testing::TestParamInfo<BadCase>& bad) { return bad.param.name; }

class BadProject : public testing::TestWithParam<BadCase> {};

TEST_P(BadProject, IsRefusedSayingWhereWhatAndWhatIsRight) {
  const BadCase& bad = GetParam();
  const InputError error = readBad(bad.text);
  EXPECT_THAT(error.where, StartsWith("hoist.jointwright"));
  EXPECT_THAT(error.where, HasSubstr(bad.where));
  EXPECT_THAT(error.what, HasSubstr(bad.what));
  EXPECT_THAT(error.remedy, HasSubstr(bad.remedy));
  EXPECT_FALSE(error.remedy.empty());
}

std::string listOf(std::size_t count, const std::string& element) {
  std::string list = "[";
  for (std::size_t k = 0; k < count; ++k) list += (k == 0 ? "" : ",") + element;
  return list + "]";
}

const std::string kSegmentText =
    R"({"name": "up", "law": "jerkLimited", "travel": "90 deg", "duration": 2})";
const std::string kStageText =
    R"({"name": "belt", "family": "belt", "ratio": 1.5, "reverses": true})";

INSTANTIATE_TEST_SUITE_P(
    Files, BadProject,
    testing::Values(BadCase{"Empty", "", "", "empty", "choose"},
                    BadCase{"Blank", " \n\n", "", "empty", "choose"},
                    BadCase{"Binary",
                            std::string("\x7f"
                                        "ELF\0\x01",
                                        6),
                            "", "binary", ".jointwright"},
                    BadCase{"NotUtf8", with("Hoist", "H\xf6ist"), "line 4", "UTF-8", ""},
                    BadCase{"NotANumber", with("6.5", "NaN"), "line 5", "invalid literal", ""},
                    BadCase{"TooBig", with("6.5", "1e999"), "line 5", "1e999", ""},
                    BadCase{"Trailing", std::string(kByHand) + "x", "line", "end of input", ""},
                    BadCase{"CutShort", std::string(kByHand).substr(0, 300), "line", "", ""},
                    BadCase{"List", "[1, 2]", "", "no Jointwright project", "format"},
                    BadCase{"OtherFormat", with("jointwright project", "recipe"), ": format",
                            "the text \"recipe\"", "jointwright project"},
                    BadCase{"Newer", with("\"version\": 1", "\"version\": 7"), ": version",
                            "version 7", "reads version 7"},
                    BadCase{"VersionZero", with("\"version\": 1", "\"version\": 0"), ": version",
                            "number 0", "from 1"},
                    BadCase{"VersionText", with("\"version\": 1", "\"version\": \"1\""),
                            ": version", "text", "from 1"},
                    BadCase{"NoVersion", with("\"version\": 1,", ""), ": version", "missing",
                            "from 1"}),
    nameOf);

INSTANTIATE_TEST_SUITE_P(
    Values, BadProject,
    testing::Values(
        BadCase{"Duplicate", with("\"name\": \"belt\"", "\"name\": \"x\", \"name\": \"y\""),
                ": variants[0].transmission[0].name", "twice", "keep one"},
        BadCase{"WrongUnit", with("1.5 kg*m^2", "1.5 kg"), ": load.inertia", "", ""},
        BadCase{"NoNumber", with("90 deg", "ninety"), ": cycle.segments[0].travel", "", ""},
        BadCase{"OutOfRange", with("\"ratio\": 1.5", "\"ratio\": -1.5"),
                ": variants[0].transmission[0].ratio", "out of range", "allowed"},
        BadCase{"NumberAsFlag", with("true", "1"), ": variants[0].transmission[0].reverses",
                "the number 1", "true or false"},
        BadCase{"NumberAsText", with("\"Hoist\"", "5"), ": title", "the number 5", "text"},
        BadCase{"ObjectAsNumber", with("6.5", "{}"), ": load.payloadMass", "an object", "number"},
        BadCase{"WrongChoice", with("jerkLimited", "brisk"), ": cycle.segments[0].law", "brisk",
                "jerkLimited"},
        BadCase{"NullChoice", with("\"jerkLimited\"", "null"), ": cycle.segments[0].law", "null",
                "jerkLimited"},
        BadCase{"HalfSamples", with("{\"segments\"", "{\"samples\": 10.5, \"segments\""),
                ": cycle.samples", "whole number", ""},
        BadCase{"LoadIsList", with(R"({"inertia": "1.5 kg*m^2", "payloadMass": 6.5})", "[]"),
                ": load", "a list", "object"},
        BadCase{"NoVariants", R"({"format": "jointwright project", "version": 1})", ": variants",
                "no variant", "at least one"},
        BadCase{"EmptyVariants",
                R"({"format": "jointwright project", "version": 1, "variants": []})", ": variants",
                "no variant", "at least one"},
        BadCase{"ActiveBeyond", with("\"activeVariant\": 1", "\"activeVariant\": 2"),
                ": activeVariant", "number 2", "from 0 to 1"},
        BadCase{"ActiveNegative", with("\"activeVariant\": 1", "\"activeVariant\": -1"),
                ": activeVariant", "number -1", "from 0 to 1"},
        BadCase{"Deep", with("6.5", std::string(50, '[') + std::string(50, ']')),
                ": load.payloadMass", "nested deeper", ""},
        BadCase{"ManyStages", with(kStageText, listOf(101, "{}").substr(1, 101 * 3 - 1)),
                ": variants[0].transmission", "101 entries", "at most 100"},
        BadCase{"ManySegments", with(kSegmentText, listOf(10'001, "{}").substr(1, 10'001 * 3 - 1)),
                ": cycle.segments", "10001 entries", "at most 10000"},
        BadCase{"TableUneven",
                with("\"duration\": 2", R"("table": {"time [s]": [0, 1], "angle [rad]": [0]})"),
                ": cycle.segments[0].table.angle [rad]", "1 points, but 2 times", "each time"},
        BadCase{"TableFalls",
                with("\"duration\": 2",
                     R"("table": {"time [s]": [0, 1, 1], "angle [rad]": [0, 1, 2]})"),
                ": cycle.segments[0].table.time [s][2]", "1 s follows 1 s", "rise"},
        BadCase{
            "TableText",
            with("\"duration\": 2", R"("table": {"time [s]": [0, "1"], "angle [rad]": [0, 1]})"),
            ": cycle.segments[0].table.time [s][1]", "the text \"1\"", "bare number"},
        BadCase{"TableColumn",
                with("\"duration\": 2", R"("table": {"time": [0, 1], "angle [rad]": [0, 1]})"),
                ": cycle.segments[0].table.time", "not known", "time [s]"}),
    nameOf);

TEST(Migration, AppliesEachStepOnceInOrderAndNotesIt) {
  const auto append = [](const char* mark) {
    return [mark](Json& document) -> tl::expected<void, InputError> {
      document["steps"] = document.value("steps", std::string()) + mark;
      return {};
    };
  };
  const MigrationStep steps[] = {{1, "adds a", append("a")}, {2, "adds b", append("b")}};
  Json document{{"version", 1}};
  const auto notes = migrate(document, 1, 3, steps);
  ASSERT_TRUE(notes.has_value());
  EXPECT_EQ(document["steps"], "ab");
  EXPECT_EQ(document["version"], 3);
  ASSERT_EQ(notes->size(), 2U);
  EXPECT_THAT((*notes)[1].what, HasSubstr("from version 2 to 3: adds b"));
}

TEST(Migration, StopsAtTheFirstErrorAndRefusesGaps) {
  const MigrationStep failing[] = {{1, "fails", [](Json&) -> tl::expected<void, InputError> {
                                      return tl::unexpected(InputError{"no", "here", "do"});
                                    }}};
  Json document{{"version", 1}};
  EXPECT_EQ(migrate(document, 1, 2, failing).error().what, "no");
  EXPECT_THROW((void)migrate(document, 1, 2, {}), std::logic_error);
  EXPECT_TRUE(migrate(document, 1, 1, {})->empty());
}

TEST(Migration, EveryOlderVersionHasAStep) {
  EXPECT_EQ(projectMigrations().size(), static_cast<std::size_t>(kProjectVersion - 1));
}

}  // namespace
}  // namespace jw

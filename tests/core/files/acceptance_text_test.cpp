// Accepted verdicts in a project's file. What a message has to name (path, what was found, what is
// allowed) is the project's own rule.
#include <string>

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "core/checks/evaluation.h"
#include "core/files/project_text.h"
#include "core/model/acceptance.h"

namespace jw {
namespace {

using testing::HasSubstr;

/// A project that accepts what `list` says.
std::string accepting(const std::string& list) {
  return R"({"format": "jointwright project", "version": 1, "variants": [{"name": "A",
    "transmission": [{"ratio": 50}], "accepted": )" +
         list + "}]}";
}

Project readGood(const std::string& text) {
  const auto read = readProject(text, "hoist.jointwright");
  EXPECT_TRUE(read.has_value()) << (read ? "" : describe(read.error()));
  return read ? read->project : Project{};
}

constexpr const char* kOne = R"([{"check": "drive.life", "stage": 0, "note": "for the \"fair\"",
  "date": "2026-03-31", "demand": 2.52e7, "capacity": 0.1, "zeta": [1, 2]}])";

TEST(AcceptanceText, ComesBackAsItWas) {
  const Project project = readGood(accepting(kOne));
  ASSERT_EQ(project.active().accepted.size(), 1U);
  const Acceptance& one = project.active().accepted.front();
  EXPECT_EQ(one.check, "drive.life");
  EXPECT_EQ(one.stage, 0);
  EXPECT_EQ(one.note, "for the \"fair\"");
  EXPECT_EQ(one.date, "2026-03-31");
  EXPECT_DOUBLE_EQ(one.demand, 2.52e7);
  EXPECT_DOUBLE_EQ(one.capacity, 0.1);
  const std::string written = writeProject(project);
  EXPECT_THAT(written, HasSubstr("\"zeta\"")) << "an unknown key is kept";
  EXPECT_EQ(writeProject(readGood(written)), written);
  EXPECT_TRUE(readGood(written) == project);
}

TEST(AcceptanceText, BelongsToEquality) {
  const Project project = readGood(accepting(kOne));
  Project other = project;
  other.active().accepted.front().note = "no";
  EXPECT_FALSE(other == project);
  other = project;
  other.active().accepted.clear();
  EXPECT_FALSE(other == project);
}

TEST(AcceptanceText, IsLeftOutWhereThereIsNone) {
  EXPECT_EQ(writeProject(Project{}).find("\"accepted\""), std::string::npos);
}

TEST(AcceptanceText, ValuesWithoutTextComeBackExactly) {
  Project project;
  Acceptance one;
  one.demand = 1.0 / 3.0;
  one.capacity = 6.02214076e23;
  project.active().accepted = {one};
  const Project read = readGood(writeProject(project));
  EXPECT_EQ(read.active().accepted.at(0).demand, 1.0 / 3.0);
  EXPECT_EQ(read.active().accepted.at(0).capacity, 6.02214076e23);
}

struct Broken {
  const char* name;
  const char* list;
  const char* where;
  const char* message;
};

void PrintTo(const Broken& broken, std::ostream* out) { *out << broken.name; }

class BrokenAcceptance : public testing::TestWithParam<Broken> {};

TEST_P(BrokenAcceptance, GetsAClearMessage) {
  const auto read = readProject(accepting(GetParam().list), "hoist.jointwright");
  ASSERT_FALSE(read.has_value());
  EXPECT_THAT(read.error().where, HasSubstr(GetParam().where));
  EXPECT_THAT(describe(read.error()), HasSubstr(GetParam().message));
  EXPECT_FALSE(read.error().remedy.empty());
}

INSTANTIATE_TEST_SUITE_P(
    Entries, BrokenAcceptance,
    testing::Values(
        Broken{"NoList", R"({"check": "x"})", "variants[0].accepted", "list"},
        Broken{"NoObject", R"(["drive.life"])", "variants[0].accepted[0]", "object"},
        Broken{"CheckNoText", R"([{"check": 3}])", "variants[0].accepted[0].check", "text"},
        Broken{"NoteNoText", R"([{"note": ["x"]}])", "variants[0].accepted[0].note", "text"},
        Broken{"StageNoNumber", R"([{"stage": true}])", "variants[0].accepted[0].stage", "1 to 99"},
        Broken{"StageHalf", R"([{"stage": 0.5}])", "variants[0].accepted[0].stage", "whole"},
        Broken{"StageFar", R"([{"stage": 1e9}])", "variants[0].accepted[0].stage", "99"},
        Broken{"DemandInWords", R"([{}, {"demand": "much"}])", "variants[0].accepted[1].demand",
               "much"},
        Broken{"DemandNaN", R"([{"demand": NaN}])", "line 2", ""},
        Broken{"DemandNaNText", R"([{"demand": "nan"}])", "variants[0].accepted[0].demand", "nan"},
        Broken{"CapacityHuge", R"([{"capacity": "1e999"}])", "variants[0].accepted[0].capacity",
               "too large"}),
    [](const auto& one) { return std::string(one.param.name); });

TEST(AcceptanceText, UnknownCheckOrStageIsNotedByTheEvaluation) {
  const Project project = readGood(accepting(
      R"([{"check": "drive.charm"}, {"check": "drive.life", "stage": 9, "demand": null}])"));
  const Evaluation result = evaluate(project);
  int notes = 0;
  for (const Notice& notice : result.notices) {
    notes += notice.text.where.rfind("accepted[", 0) == 0 ? 1 : 0;
  }
  EXPECT_EQ(notes, 2);
  EXPECT_FALSE(isSet(project.active().accepted[1].demand));
}

}  // namespace
}  // namespace jw

// Where a figure came from: kept from the catalogue to the file, to the working, until someone
// types another. What a message has to name is the project's own rule.
#include <algorithm>
#include <string>

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "core/checks/evaluation.h"
#include "core/files/catalogue_table.h"
#include "core/files/project_text.h"
#include "core/model/family_rule.h"
#include "core/model/field_catalogue.h"
#include "tests/core/checks/example_project.h"

namespace jw {
namespace {

using testing::HasSubstr;

/// The example with its motor's row read from a catalogue.
Project withCatalogueMotor() {
  Project project = exampleProject();
  const MotorEntry entry{"bee 300 (invented)", project.active().motor};
  const auto read = readMotorCatalogue(writeMotorCatalogue({&entry, 1}, ""), "hive.csv");
  EXPECT_TRUE(read.has_value());
  project.active().motor = read->entries.front().motor;
  return project;
}

Project readGood(const std::string& text) {
  const auto read = readProject(text, "hoist.jointwright");
  EXPECT_TRUE(read.has_value()) << (read ? "" : describe(read.error()));
  return read ? read->project : Project{};
}

Working workingOf(const Project& project, std::string_view id, int stage = -1) {
  const Evaluation evaluation = evaluate(project);
  for (const Check& check : evaluation.checks) {
    if (check.id == id && check.stage == stage) return explain(project, evaluation, check);
  }
  ADD_FAILURE() << id;
  return {};
}

std::string originOf(const Working& working, const std::string& path) {
  for (const WorkingSymbol& symbol : working.symbols) {
    if (symbol.path == path) return symbol.origin;
  }
  ADD_FAILURE() << path << " is not shown";
  return {};
}

TEST(CataloguePart, IsNamedInTheWorkingUntilTheFigureIsTypedOver) {
  Project project = withCatalogueMotor();
  Working working = workingOf(project, "motor.speed");
  EXPECT_EQ(originOf(working, "motor.maxSpeed"), "catalogue");
  EXPECT_THAT(working.note, HasSubstr("Motor: \"bee 300 (invented)\" of the catalogue hive.csv."));
  ASSERT_TRUE(setField(project, "motor.maxSpeed", "5000 rpm").has_value());
  working = workingOf(project, "motor.speed");
  EXPECT_EQ(originOf(working, "motor.maxSpeed"), "typed");
  EXPECT_TRUE(project.active().motor.asWritten.from.gives("rotorInertia")) << "the others stay";
}

TEST(CataloguePart, ANumberSetWithoutTextIsNoLongerTheCatalogues) {
  Project project = withCatalogueMotor();
  assignNumber(*findField(project, "motor.maxSpeed"), 500);
  EXPECT_FALSE(project.active().motor.asWritten.from.gives("maxSpeed"));
  EXPECT_EQ(originOf(workingOf(project, "motor.speed"), "motor.maxSpeed"), "typed");
}

TEST(CataloguePart, ComesBackFromTheFile) {
  Project project = withCatalogueMotor();
  ASSERT_TRUE(setField(project, "motor.maxSpeed", "5000 rpm").has_value());
  const std::string written = writeProject(project);
  const Project again = readGood(written);
  EXPECT_TRUE(again == project);
  EXPECT_EQ(writeProject(again), written);
  EXPECT_EQ(originOf(workingOf(again, "motor.speed"), "motor.maxSpeed"), "typed");
  EXPECT_TRUE(again.active().motor.asWritten.from.gives("rotorInertia"));
}

TEST(CataloguePart, AUsualValueStaysOneThroughTheFile) {
  Project project = withCatalogueMotor();
  ASSERT_EQ(originOf(workingOf(project, "joint.stopping"), "motor.brakeDelay"), "catalogue");
  project.active().motor.brakeDelay = Motor{}.brakeDelay;
  project.active().motor.asWritten.typed.erase("brakeDelay");
  const Project again = readGood(writeProject(project));
  EXPECT_EQ(originOf(workingOf(again, "joint.stopping"), "motor.brakeDelay"), "usual value");
  EXPECT_EQ(again.active().motor.asWritten.from, project.active().motor.asWritten.from);
}

TEST(CataloguePart, NamesTheFileWithoutItsFolders) {
  const auto read = readMotorCatalogue("name,maxSpeed [rpm]\nbee,5000\n", "/home/keeper/hive.csv");
  ASSERT_TRUE(read.has_value());
  EXPECT_EQ(read->entries.front().motor.asWritten.from.catalogue, "hive.csv");
}

TEST(CataloguePart, AReducerOfARuleIsAnEstimate) {
  Project project = exampleProject();
  project.active().transmission.back() = reducerByRule(defaultFamilyRules().front(), 50, 200);
  const Working working = workingOf(project, "drive.torque_peak", 1);
  const std::string path = "transmission[1].peakTorque";
  EXPECT_EQ(originOf(working, path), "scaling rule");
  EXPECT_THAT(working.note, HasSubstr("sized by the scaling rule of its family (planetary)"));
  EXPECT_TRUE(readGood(writeProject(project)) == project);
}

TEST(CataloguePart, RefusesWhatItCannotMean) {
  const auto refused = [](const std::string& from) {
    const auto read = readProject(R"({"format": "jointwright project", "version": 1, "variants":
      [{"name": "A", "motor": {"fromCatalogue": )" +
                                      from + "}}]}",
                                  "hoist.jointwright");
    EXPECT_FALSE(read.has_value()) << from;
    return read ? std::string() : describe(read.error());
  };
  EXPECT_THAT(refused("3"), HasSubstr("variants[0].motor.fromCatalogue"));
  EXPECT_THAT(refused("{}"), HasSubstr("no part is named"));
  EXPECT_THAT(refused(R"({"part": 4})"), HasSubstr("variants[0].motor.fromCatalogue.part"));
  EXPECT_THAT(refused(R"({"part": "a", "changed": ["wings"]})"), HasSubstr("wings"));
  EXPECT_THAT(refused(R"({"part": "a", "changed": 1})"), HasSubstr("changed"));
}

}  // namespace
}  // namespace jw

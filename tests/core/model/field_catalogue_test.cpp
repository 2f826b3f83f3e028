// The field catalogue: every declaration sound, every field found by its path.
#include <cmath>
#include <set>
#include <string>

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "core/model/field_catalogue.h"
#include "tests/core/checks/example_project.h"

namespace jw {
namespace {

std::vector<const StructInfo*> everyStruct() {
  return {&structInfo<Supply>(), &structInfo<Controller>(),   &structInfo<Motor>(),
          &structInfo<Stage>(),  &structInfo<Load>(),         &structInfo<Segment>(),
          &structInfo<Cycle>(),  &structInfo<Requirements>(), &structInfo<Variant>(),
          &structInfo<Project>()};
}

TEST(FieldCatalogue, KeysAndLabelsAreUniqueWithinAStruct) {
  std::set<std::string_view> structs;
  for (const StructInfo* info : everyStruct()) {
    EXPECT_TRUE(structs.insert(info->key).second) << info->key;
    std::set<std::string_view> keys, labels;
    for (const FieldInfo& field : info->fields) {
      EXPECT_TRUE(keys.insert(field.key).second) << info->key << "." << field.key;
      EXPECT_TRUE(labels.insert(field.label).second) << info->key << ": " << field.label;
      EXPECT_EQ(info->find(field.key), &field);
    }
    EXPECT_EQ(info->find("noSuchKey"), nullptr);
  }
}

TEST(FieldCatalogue, EveryFieldIsDescribed) {
  for (const StructInfo* info : everyStruct()) {
    EXPECT_FALSE(info->title.empty());
    for (const FieldInfo& field : info->fields) {
      SCOPED_TRACE(std::string(info->key) + "." + std::string(field.key));
      EXPECT_FALSE(field.label.empty());
      EXPECT_TRUE(field.help.ends_with('.')) << field.help;
      const bool number = field.kind == FieldKind::Number || field.kind == FieldKind::Integer;
      EXPECT_EQ(number, !field.symbol.empty());
      EXPECT_EQ(field.kind == FieldKind::Choice, !field.choices.empty());
      EXPECT_EQ(field.kind == FieldKind::Text, field.text != nullptr);
      EXPECT_EQ(field.kind == FieldKind::Text, field.number == nullptr);
    }
  }
}

TEST(FieldCatalogue, DefaultsAndUnitsFit) {
  for (const StructInfo* info : everyStruct()) {
    for (const FieldInfo& field : info->fields) {
      SCOPED_TRACE(std::string(info->key) + "." + std::string(field.key));
      EXPECT_LT(field.range.low, field.range.high);
      if (field.kind == FieldKind::Text) continue;
      EXPECT_TRUE(!isSet(field.defaultValue) || field.range.contains(field.defaultValue));
      EXPECT_TRUE(field.kind != FieldKind::Number || isUnitOf(field.unit, field.quantity));
    }
  }
}

TEST(FieldCatalogue, ChoicesAreDistinct) {
  for (const StructInfo* info : everyStruct()) {
    for (const FieldInfo& field : info->fields) {
      std::set<std::string_view> keys, labels;
      for (const ChoiceItem& item : field.choices) {
        EXPECT_TRUE(keys.insert(item.key).second) << item.key;
        EXPECT_TRUE(labels.insert(item.label).second) << item.label;
      }
    }
  }
}

TEST(FieldCatalogue, EveryFieldIsFoundByItsPath) {
  Project project = exampleProject();
  project.otherCycles = {project.cycle};
  project.active().accepted.resize(2);
  std::set<std::string> paths;
  for (const FieldRef& field : allFields(project)) {
    EXPECT_TRUE(paths.insert(field.path).second) << field.path;
    const auto found = findField(project, field.path);
    ASSERT_TRUE(found.has_value()) << field.path;
    EXPECT_EQ(found->info, field.info);
    EXPECT_EQ(found->owner, field.owner);
  }
  for (const char* path :
       {"title", "variant.name", "supply.voltage", "controller.currentPeak", "motor.rotorInertia",
        "transmission[1].ratio", "load.inertia", "cycle.samples", "cycle.segments[3].duration",
        "otherCycles[0].samples", "otherCycles[0].segments[1].travel", "accepted[1].note",
        "requirements.life"}) {
    EXPECT_TRUE(paths.contains(path)) << path;
  }
}

TEST(FieldCatalogue, UnknownPathsGetTheNearest) {
  const Project project = exampleProject();
  const auto remedy = [&](std::string_view path) {
    const auto found = findField(project, path);
    EXPECT_FALSE(found.has_value());
    return found ? std::string() : found.error().remedy;
  };
  EXPECT_THAT(remedy("motor.rotorInertai"), testing::HasSubstr("motor.rotorInertia"));
  EXPECT_THAT(remedy("motr.resistance"), testing::HasSubstr("motor.resistance"));
  EXPECT_THAT(remedy("transmission[7].ratio"), testing::HasSubstr("].ratio"));
  EXPECT_FALSE(remedy("").empty());
  EXPECT_FALSE(remedy(std::string(10'000, 'x')).empty());
  EXPECT_FALSE(remedy("motor.").empty());
  EXPECT_FALSE(remedy("transmission[-1].ratio").empty());
}

TEST(FieldCatalogue, PathsBeyondAListTellItsLength) {
  Project project = exampleProject();
  project.load.masses.resize(1);
  project.otherCycles.resize(1);
  project.otherCycles[0].segments.clear();
  const auto told = [&](std::string_view path) {
    const auto found = findField(project, path);
    EXPECT_FALSE(found.has_value());
    return found ? std::string() : describe(found.error());
  };
  EXPECT_EQ(told("transmission[7].ratio"),
            "transmission[7].ratio: there are 2 stages, counted from 0; write "
            "transmission[0].ratio to transmission[1].ratio");
  EXPECT_THAT(told("cycle.segments[99].duration"), testing::HasSubstr("moves, counted from 0"));
  EXPECT_THAT(told("load.masses[1].mass"), testing::HasSubstr("there is one mass, counted from 0"));
  EXPECT_THAT(told("otherCycles[0].segments[0].duration"), testing::HasSubstr("there is no move"));
  EXPECT_THAT(told("accepted[0].note"), testing::HasSubstr("there is no accepted verdict"));
  EXPECT_THAT(told("transmission[1].rato"), testing::HasSubstr("nearest"));
  EXPECT_THAT(told("transmission[x].ratio"), testing::HasSubstr("nearest"));
  EXPECT_THAT(told("motor[1].mass"), testing::HasSubstr("nearest"));
}

TEST(FieldCatalogue, WhetherAFieldMatters) {
  Motor motor;
  const FieldInfo* measure = structInfo<Motor>().find("torqueConstantMeasure");
  ASSERT_NE(measure->applies, nullptr);
  EXPECT_TRUE(measure->applies(&motor));
  motor.kind = MotorKind::BrushedDc;
  EXPECT_FALSE(measure->applies(&motor));
}

}  // namespace
}  // namespace jw

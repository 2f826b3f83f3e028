// Typing into fields: what is accepted comes back, what is refused leaves the project untouched.
#include <cmath>
#include <random>
#include <string>

#include <fmt/format.h>
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "core/model/field_catalogue.h"
#include "tests/core/checks/example_project.h"

namespace jw {
namespace {

/// A number inside the field's range, in its internal unit.
double valueInside(const FieldInfo& info, std::mt19937& random) {
  const double low = std::max(info.range.low, -1e3);
  const double high = std::min(info.range.high, std::max(1e3, low * 2));
  const double value =
      low + (high - low) * std::uniform_real_distribution<double>(0.1, 0.9)(random);
  return info.kind == FieldKind::Integer ? std::round(value) : value;
}

TEST(FieldSetting, NumbersComeBackInEveryUnit) {
  Project project = exampleProject();
  std::mt19937 random(3);
  const Project example = exampleProject();  // its fields point into it
  for (const FieldRef& field : allFields(example)) {
    const FieldInfo& info = *field.info;
    if (info.kind != FieldKind::Number) continue;
    for (const std::string_view unit : quantityInfo(info.quantity).units) {
      const double value = valueInside(info, random);
      if (unit == "1") continue;  // not written; a bare number is in the field's own unit
      const std::string text =
          fmt::format("{:.17g} {}", fromInternal(value, unit, info.quantity), unit);
      SCOPED_TRACE(field.path + " = " + text);
      const auto done = setField(project, field.path, text);
      ASSERT_TRUE(done.has_value()) << describe(done.error());
      const FieldRef now = *findField(project, field.path);
      EXPECT_NEAR(now.number(), value, 1e-12 * std::max(1.0, std::abs(value)));
      EXPECT_EQ(fieldText(now), text);
    }
  }
}

TEST(FieldSetting, PlainFormReadsBackToTheLastBit) {
  const Project example = exampleProject();  // its fields point into it
  Project project = example;
  for (const FieldRef& field : allFields(example)) {
    const FieldInfo& info = *field.info;
    if (info.kind == FieldKind::Text) continue;
    const std::string text = fieldText(field);
    if (text.empty()) continue;
    ASSERT_TRUE(setField(project, field.path, text).has_value()) << field.path << " " << text;
    EXPECT_EQ(findField(project, field.path)->number(), field.number())
        << field.path << " " << text;
    EXPECT_EQ(fieldText(*findField(project, field.path)), text);
  }
}

TEST(FieldSetting, BareNumberIsInTheDisplayUnit) {
  Project project = exampleProject();
  ASSERT_TRUE(setField(project, "motor.rotorInertia", "0.42").has_value());  // kg·cm²
  EXPECT_DOUBLE_EQ(project.active().motor.rotorInertia, 0.42e-4);
  ASSERT_TRUE(setField(project, "requirements.targetMargin", "15").has_value());  // %
  EXPECT_DOUBLE_EQ(project.requirements.targetMargin, 0.15);
}

TEST(FieldSetting, IntegersFlagsChoicesAndText) {
  Project project = exampleProject();
  ASSERT_TRUE(setField(project, "motor.polePairs", "21").has_value());
  EXPECT_EQ(project.active().motor.polePairs, 21);
  EXPECT_EQ(fieldText(*findField(project, "motor.polePairs")), "21");
  for (const char* yes : {"yes", "true", " 1 "}) {
    project.active().transmission[0].reverses = false;
    ASSERT_TRUE(setField(project, "transmission[0].reverses", yes).has_value());
    EXPECT_TRUE(project.active().transmission[0].reverses);
  }
  ASSERT_TRUE(setField(project, "title", "  two  spaces ").has_value());
  EXPECT_EQ(project.title, "  two  spaces ");
  const Project example = exampleProject();  // its fields point into it
  for (const FieldRef& field : allFields(example)) {
    for (std::size_t k = 0; k < field.info->choices.size(); ++k) {
      for (const std::string_view text :
           {field.info->choices[k].key, field.info->choices[k].label}) {
        ASSERT_TRUE(setField(project, field.path, text).has_value()) << field.path << " " << text;
        EXPECT_EQ(findField(project, field.path)->number(), static_cast<double>(k));
        EXPECT_EQ(fieldText(*findField(project, field.path)), field.info->choices[k].key);
      }
    }
  }
}

void expectRefused(const std::string& path, std::string_view text) {
  SCOPED_TRACE(path + " = '" + std::string(text.substr(0, 60)) + "'");
  Project project = exampleProject();
  const auto done = setField(project, path, text);
  ASSERT_FALSE(done.has_value());
  EXPECT_EQ(done.error().where, path);
  EXPECT_FALSE(done.error().what.empty());
  EXPECT_FALSE(done.error().remedy.empty());
  EXPECT_TRUE(project == exampleProject());
}

TEST(FieldSetting, GarbageIsRefusedEverywhere) {
  const std::string endless(100'000, '9');
  const Project example = exampleProject();  // its fields point into it
  for (const FieldRef& field : allFields(example)) {
    if (field.info->kind == FieldKind::Text) continue;
    for (const std::string_view text :
         {std::string_view("garbage"), std::string_view("nan"), std::string_view("inf"),
          std::string_view("1e400"), std::string_view("--5"), std::string_view("5 parsecs"),
          std::string_view("\xff\xfe"), std::string_view(endless), std::string_view("1\0 2", 4)}) {
      expectRefused(field.path, text);
    }
    if (!(field.info->range.high >= 1e308)) expectRefused(field.path, "1e308");
  }
}

TEST(FieldSetting, OutOfRangeIsRefusedWithTheRange) {
  const Project example = exampleProject();  // its fields point into it
  for (const FieldRef& field : allFields(example)) {
    const FieldInfo& info = *field.info;
    if (info.kind != FieldKind::Number && info.kind != FieldKind::Integer) continue;
    const auto text = [&](double value) {
      if (info.kind == FieldKind::Integer) return fmt::format("{:.0f}", value);
      const std::string_view unit = quantityInfo(info.quantity).internalUnit;
      if (unit != "1") return fmt::format("{:.17g} {}", value, unit);
      return fmt::format("{:.17g}{}", info.unit == "%" ? 100 * value : value,
                         info.unit == "%" ? " %" : "");
    };
    const double span = std::max({1.0, std::abs(info.range.low), std::abs(info.range.high)});
    if (std::isfinite(info.range.low)) expectRefused(field.path, text(info.range.low - span));
    if (std::isfinite(info.range.high)) expectRefused(field.path, text(info.range.high + span));
    if (info.range.lowExcluded) expectRefused(field.path, text(info.range.low));
  }
}

TEST(FieldSetting, FractionsOfAnIntegerAreRefused) {
  expectRefused("motor.polePairs", "3.5");
  expectRefused("cycle.samples", "1000.5");
}

TEST(FieldSetting, UnitOfAnotherQuantityIsRefused) {
  expectRefused("motor.rotorInertia", "3 N*m");
  expectRefused("motor.brakeTorque", "3 J");
  expectRefused("motor.maxSpeed", "3 Hz");
}

TEST(FieldSetting, EmptyUnsetsOnlyWhatHasNoDefault) {
  const Project example = exampleProject();  // its fields point into it
  for (const FieldRef& field : allFields(example)) {
    const FieldInfo& info = *field.info;
    if (info.kind == FieldKind::Text) continue;
    const bool numeric = info.kind == FieldKind::Number || info.kind == FieldKind::Integer;
    if (!numeric || isSet(info.defaultValue)) {
      expectRefused(field.path, "");
      continue;
    }
    Project project = exampleProject();
    ASSERT_TRUE(setField(project, field.path, "  ").has_value()) << field.path;
    EXPECT_FALSE(isSet(findField(project, field.path)->number())) << field.path;
    EXPECT_EQ(fieldText(*findField(project, field.path)), "");
  }
}

TEST(FieldSetting, UnknownPathTouchesNothing) {
  Project project = exampleProject();
  EXPECT_FALSE(setField(project, "motor.colour", "red").has_value());
  EXPECT_TRUE(project == exampleProject());
}

TEST(FieldSetting, TypedTextIsForgottenWhenTheValueMovesOn) {
  Project project = exampleProject();
  ASSERT_TRUE(setField(project, "motor.brakeTorque", "12 lbf*in").has_value());
  EXPECT_EQ(fieldText(*findField(project, "motor.brakeTorque")), "12 lbf*in");
  project.active().motor.brakeTorque = 2;
  EXPECT_EQ(fieldText(*findField(project, "motor.brakeTorque")), "2 N*m");
}

}  // namespace
}  // namespace jw

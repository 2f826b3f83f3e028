// Saving and reopening changes nothing: the project's own identity, run over random projects.
#include <cmath>
#include <cstring>
#include <random>
#include <string>

#include <gtest/gtest.h>

#include "core/checks/evaluation.h"
#include "core/files/project_text.h"
#include "core/model/field_catalogue.h"

namespace jw {
namespace {

class RandomProject {
 public:
  explicit RandomProject(unsigned seed) : engine_(seed) {}

  Project make() {
    Project project;
    project.variants.resize(1 + pick(3));
    project.cycle.segments.resize(pick(4));
    for (Segment& segment : project.cycle.segments) fillTable(segment.table);
    project.load.masses.resize(pick(3));
    project.otherCycles.resize(pick(3));
    for (Cycle& cycle : project.otherCycles) cycle.segments.resize(pick(3));
    for (std::size_t k = 0; k < project.variants.size(); ++k) {
      project.activeVariant = static_cast<int>(k);
      project.active().transmission.resize(pick(4));
      project.active().accepted.resize(pick(3));
      fillFields(project);
    }
    project.activeVariant = static_cast<int>(pick(project.variants.size()));
    project.active().motor.asWritten.unknown["futureKey"] = R"({"a":[1,2.5,"x"],"b":null})";
    return project;
  }

 private:
  std::size_t pick(std::size_t count) {
    return std::uniform_int_distribution<std::size_t>(0, count - 1)(engine_);
  }
  double draw(double low, double high) {
    return std::uniform_real_distribution<double>(low, high)(engine_);
  }

  void fillTable(MotionTable& table) {
    if (pick(3) != 0) return;
    double time = 0;
    for (int k = 0; k < 20; ++k) {
      table.time.push_back(time);
      table.angle.push_back(draw(-1, 1));
      time += draw(1e-3, 1e-1);
    }
    if (pick(2) == 0) table.speed = table.angle;
    if (pick(2) == 0) table.torque = table.angle;
  }

  /// Any value of the range: over many magnitudes where it is wide, evenly where it is narrow.
  double valueIn(const Range& range) {
    const bool narrow = std::isfinite(range.low) && range.high - range.low < 10;
    if (narrow) return draw(range.low, range.high);
    const double magnitude = std::pow(10.0, draw(-4, 4));
    return pick(2) == 0 && range.low < 0 ? -magnitude : std::max(range.low, magnitude);
  }

  std::string textFor(const FieldInfo& info) {
    static const char* kTexts[] = {"", "Schwenkarm", "say \"hi\"\n\ttab", "Größe ≥ 5 µm", "null"};
    switch (info.kind) {
      case FieldKind::Text: return kTexts[pick(std::size(kTexts))];
      case FieldKind::Choice: return std::string(info.choices[pick(info.choices.size())].key);
      case FieldKind::Flag: return pick(2) == 0 ? "yes" : "no";
      case FieldKind::Integer: return std::to_string(5 + pick(60));
      case FieldKind::Number: break;
    }
    if (pick(6) == 0) return "";
    const auto& units = quantityInfo(info.quantity).units;
    return typedForm(valueIn(info.range), info.quantity, units[pick(units.size())]);
  }

  void fillFields(Project& project) {
    for (const FieldRef& field : allFields(project)) {
      (void)setField(project, field.path, textFor(*field.info));  // a misfit keeps the default
    }
  }

  std::mt19937 engine_;
};

bool sameBits(double a, double b) { return std::memcmp(&a, &b, sizeof a) == 0; }

void expectSameBits(const Project& a, const Project& b) {
  const auto fieldsA = allFields(a);
  const auto fieldsB = allFields(b);
  ASSERT_EQ(fieldsA.size(), fieldsB.size());
  for (std::size_t k = 0; k < fieldsA.size(); ++k) {
    if (fieldsA[k].info->kind == FieldKind::Text) continue;
    const double x = fieldsA[k].number();
    const double y = fieldsB[k].number();
    EXPECT_TRUE(sameBits(x, y) || (!isSet(x) && !isSet(y))) << fieldsA[k].path;
  }
}

void expectSameEvaluation(const Evaluation& a, const Evaluation& b) {
  ASSERT_EQ(a.checks.size(), b.checks.size());
  for (std::size_t k = 0; k < a.checks.size(); ++k) {
    EXPECT_TRUE(sameBits(a.checks[k].demand, b.checks[k].demand)) << a.checks[k].id;
    EXPECT_TRUE(sameBits(a.checks[k].margin, b.checks[k].margin)) << a.checks[k].id;
    EXPECT_EQ(a.checks[k].state, b.checks[k].state) << a.checks[k].id;
  }
  ASSERT_EQ(a.quantities.size(), b.quantities.size());
  for (std::size_t k = 0; k < a.quantities.size(); ++k) {
    EXPECT_TRUE(sameBits(a.quantities[k].value, b.quantities[k].value)) << a.quantities[k].id;
  }
}

TEST(ProjectRoundTrip, RandomProjectsComeBackAsTheyWere) {
  for (unsigned seed = 1; seed <= 200; ++seed) {
    SCOPED_TRACE(seed);
    const Project project = RandomProject(seed).make();
    const std::string text = writeProject(project);
    const auto read = readProject(text, "random");
    ASSERT_TRUE(read.has_value()) << describe(read.error());
    expectSameBits(read->project, project);
    EXPECT_EQ(writeProject(read->project), text);
    const auto again = readProject(writeProject(read->project), "random");
    ASSERT_TRUE(again.has_value()) << describe(again.error());
    EXPECT_TRUE(again->project == read->project);
  }
}

TEST(ProjectRoundTrip, EvaluationIsTheSameToTheLastBit) {
  for (unsigned seed = 1; seed <= 40; ++seed) {
    SCOPED_TRACE(seed);
    const Project project = RandomProject(seed).make();
    const auto read = readProject(writeProject(project), "random");
    ASSERT_TRUE(read.has_value()) << describe(read.error());
    expectSameEvaluation(evaluate(project), evaluate(read->project));
  }
}

TEST(ProjectRoundTrip, ValuesSetWithoutTextComeBackExactly) {
  Project project;
  project.load.inertia = 1.0 / 3.0;
  project.cycle.startAngle = 0.1;
  project.requirements.targetMargin = 0.07;
  project.active().motor.speedConstant = 12.345678901234567;
  const auto read = readProject(writeProject(project), "set");
  ASSERT_TRUE(read.has_value()) << describe(read.error());
  expectSameBits(read->project, project);
}

TEST(ProjectRoundTrip, AMillionRowsComeBack) {
  Project project;
  Segment measured;
  measured.law = MotionLaw::Table;
  for (std::size_t i = 0; i < kMostTablePoints; ++i) {
    const double t = 1e-3 * static_cast<double>(i);
    measured.table.time.push_back(t);
    measured.table.angle.push_back(0.3 * std::sin(2 * t));
  }
  project.cycle.segments = {std::move(measured)};
  const auto back = readProject(writeProject(project), "long.jointwright");
  ASSERT_TRUE(back) << describe(back.error());
  EXPECT_TRUE(back->project == project);
}

}  // namespace
}  // namespace jw

// Usual ranges of studies. Expectations are the functions' own contract: common practice, no
// source.
#include "core/studies/study_ranges.h"

#include <cmath>

#include <gtest/gtest.h>

namespace jw {
namespace {

Project withStages(std::initializer_list<std::pair<StageFamily, double>> stages) {
  Project project;
  for (const auto& [family, ratio] : stages) {
    Stage stage;
    stage.family = family;
    stage.ratio = ratio;
    stage.efficiency = 0.9;
    project.active().transmission.push_back(stage);
  }
  return project;
}

StudyRange usual(const Project& project, int stage) {
  return usualRatioRange(project, evaluate(project), stage).value_or(StudyRange{});
}

TEST(UsualRatioRange, IsAQuarterToFourTimesThePresentRatio) {
  const Project project = withStages({{StageFamily::GivenRatio, 80}});
  EXPECT_EQ(usual(project, -1), (StudyRange{20, 320}));
}

TEST(UsualRatioRange, StaysWithinWhatTheFamilyReaches) {
  const Project project = withStages({{StageFamily::Belt, 2}, {StageFamily::Planetary, 10}});
  // The invented rule of the planetary family reaches from 3 to 100 (family_rule.cpp).
  EXPECT_EQ(usual(project, 1), (StudyRange{3, 40}));
  EXPECT_EQ(usual(project, -1), (StudyRange{6, 80}));
}

TEST(UsualRatioRange, IsAlwaysAroundThePresentRatio) {
  for (const double ratio : {0.5, 1.0, 5.0, 1000.0}) {
    const StudyRange range = usual(withStages({{StageFamily::StrainWave, ratio}}), 0);
    EXPECT_LT(range.from, ratio);
    EXPECT_GT(range.to, ratio);
  }
}

TEST(UsualRatioRange, IsEmptyWithoutARatio) {
  Project project = withStages({{StageFamily::GivenRatio, 80}});
  project.active().transmission[0].ratio = kUnset;
  EXPECT_FALSE(usualRatioRange(project, evaluate(project), -1));
  EXPECT_FALSE(usualRatioRange(Project{}, evaluate(Project{}), -1));
}

TEST(RatiosBetween, RiseByOneFactor) {
  const std::vector<double> ratios = ratiosBetween({20, 320}, 5);
  ASSERT_EQ(ratios.size(), 5U);
  for (std::size_t k = 0; k < 5; ++k)  // 20 · 16^(k/4) = 20 · 2^k
    EXPECT_NEAR(ratios[k], 20 * std::pow(2, double(k)), 1e-9);
}

TEST(UsualFieldRange, IsWithinWhatTheFieldAllows) {
  Project project = withStages({{StageFamily::GivenRatio, 80}});
  for (const FieldRef& field : sweepFields(project)) {
    const StudyRange range = usualFieldRange(field);
    EXPECT_TRUE(field.info->range.contains(range.from)) << field.path;
    EXPECT_TRUE(field.info->range.contains(range.to)) << field.path;
    EXPECT_LE(range.from, field.number()) << field.path;
    EXPECT_GE(range.to, field.number()) << field.path;
  }
  // An efficiency of 0.9 cannot double.
  const auto efficiency = findField(project, "transmission[0].efficiency");
  EXPECT_EQ(usualFieldRange(*efficiency), (StudyRange{0.45, 1}));
}

TEST(AxisBetween, TakesWholeNumbersOnce) {
  Project project;
  const auto field = findField(project, "motor.polePairs");
  const SweepAxis axis = axisBetween(*field, {2, 5}, 40);
  EXPECT_EQ(axis.value, (std::vector<double>{2, 3, 4, 5}));
}

TEST(UsualAxis, IsThePayloadWhereThereIsOne) {
  Project project;
  project.load.payloadMass = 4;
  project.load.payloadDistance = 0.5;
  const auto axis = usualAxis(project, 3);
  ASSERT_TRUE(axis);
  EXPECT_EQ(axis->path, "load.payloadMass");
  EXPECT_EQ(axis->value, (std::vector<double>{2, 5, 8}));
  EXPECT_EQ(usualAxis(project, 3, axis->path)->path, "load.payloadDistance");
}

}  // namespace
}  // namespace jw

// What the comparison of families is read from. Shares by hand.
#include "core/studies/family_properties.h"

#include <cmath>
#include <set>

#include <gtest/gtest.h>

#include "core/studies/ratio_sweep.h"
#include "tests/core/checks/example_project.h"

namespace jw {
namespace {

TEST(FamilyProperties, HaveKeysOfTheirOwnAndTheirUnits) {
  std::set<std::string_view> keys;
  for (const FamilyProperty& property : familyProperties()) {
    EXPECT_TRUE(keys.insert(property.key).second) << property.key;
    EXPECT_TRUE(isUnitOf(property.unit, property.quantity)) << property.key;
    EXPECT_EQ(findFamilyProperty(property.key), &property);
  }
  EXPECT_EQ(findFamilyProperty("nothing"), nullptr);
}

TEST(FamilyProperties, SharesRunFromTheWorstToTheBest) {
  EXPECT_EQ(sharesOfBest({2, 4, 3}, 1), (std::vector<double>{0, 1, 0.5}));
  EXPECT_EQ(sharesOfBest({2, 4, 3}, -1), (std::vector<double>{1, 0, 0.5}));
  EXPECT_EQ(sharesOfBest({5, 5}, -1), (std::vector<double>{1, 1}));
  const auto some = sharesOfBest({kUnset, 1, 3, INFINITY}, 1);
  EXPECT_TRUE(std::isnan(some[0]) && std::isnan(some[3]));
  EXPECT_EQ(some[2], 1);
  for (const double share : sharesOfBest({1, 2}, 0)) EXPECT_TRUE(std::isnan(share));
}

// The stage as it stands: its own numbers, and the evaluation's.
TEST(PresentReducer, IsTheStageAsItStands) {
  const Project project = exampleProject(60);
  const auto present = presentReducer(project);
  ASSERT_TRUE(present);
  const Evaluation e = evaluate(project);
  const auto at = static_cast<std::size_t>(*leadingStage(project));
  EXPECT_EQ(present->stage.ratio, (*e.stages)[at].stage.ratio);
  EXPECT_EQ(present->point.worst, designPoint(e).worst);
  EXPECT_EQ(present->backlash, quantityValue(e, "chain.backlash"));
  EXPECT_FALSE(presentReducer(project, 7));
}

TEST(AdoptFamily, AddsAVariantThatJudgesTheSame) {
  const Project project = exampleProject(60);
  FamilyRequest request;
  request.rules = {*ruleOf(defaultFamilyRules(), StageFamily::StrainWave)};
  request.ratios = 6;
  const auto choices = reducerFamilies(project, request);
  ASSERT_TRUE(choices && choices->front().found);
  const auto adopted = adoptFamily(project, choices->front());
  ASSERT_TRUE(adopted);
  ASSERT_EQ(adopted->variants.size(), project.variants.size() + 1);
  EXPECT_EQ(designPoint(evaluate(*adopted)).worst, choices->front().point.worst);
  EXPECT_EQ(adopted->variants[0], project.variants[0]);
  Project direct = project;
  direct.active().transmission.clear();
  EXPECT_TRUE(adoptFamily(direct, choices->front()));
  EXPECT_FALSE(adoptFamily(project, choices->front(), 7)) << "there is no such stage";
}

}  // namespace
}  // namespace jw

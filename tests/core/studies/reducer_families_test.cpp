// Families compared on one joint: against evaluate by brute force (own).
#include <gtest/gtest.h>

#include "core/studies/invented_catalogue.h"
#include "core/studies/reducer_families.h"
#include "tests/core/checks/example_project.h"

namespace jw {
namespace {

FamilyRequest byRules() {
  FamilyRequest request;
  request.rules = defaultFamilyRules();
  request.ratios = 8;
  return request;
}

TEST(ReducerFamilies, SizeIsTheSmallestThatCarriesTheLoad) {
  const Project project = exampleProject(100);
  const auto choices = reducerFamilies(project, byRules());
  ASSERT_TRUE(choices) << describe(choices.error());
  ASSERT_EQ(choices->size(), defaultFamilyRules().size());
  int found = 0;
  for (std::size_t f = 0; f < choices->size(); ++f) {
    const FamilyChoice& choice = (*choices)[f];
    EXPECT_EQ(choice.family, defaultFamilyRules()[f].family);
    if (!choice.found) continue;
    ++found;
    const auto tightest = [&](double factor) {
      Project sized = project;
      sized.active().transmission[1] = reducerByRule(defaultFamilyRules()[f], choice.stage.ratio,
                                                     factor * choice.stage.ratedTorque);
      double least = 1e9;
      for (const Check& c : evaluate(sized).checks) {
        const bool ofSize = c.id == "drive.torque_peak" || c.id == "drive.torque_average" ||
                            c.id == "drive.torque_momentary" || c.id == "drive.life";
        if (c.stage == 1 && ofSize && isSet(c.margin)) least = std::min(least, c.margin);
      }
      return least;
    };
    EXPECT_GE(tightest(1), 0.0999) << familyKey(choice.family);
    EXPECT_LT(tightest(0.98), 0.1) << familyKey(choice.family);
    EXPECT_GT(choice.efficiency, 0.2);
    EXPECT_LT(choice.efficiency, 1);
    EXPECT_GT(choice.torquePerMass, 0);
  }
  EXPECT_GE(found, 4);
}

TEST(ReducerFamilies, OfACatalogueTheLargestSmallestMargin) {
  const Project project = exampleProject(60);
  FamilyRequest request = byRules();
  request.catalogue = inventedReducers();
  const auto choices = reducerFamilies(project, request);
  ASSERT_TRUE(choices);
  for (const FamilyChoice& choice : *choices) {
    double best = -2;
    for (const Stage& stage : request.catalogue) {
      if (stage.family != choice.family) continue;
      Project changed = project;
      changed.active().transmission[1] = stage;
      best = std::max(best, designPoint(evaluate(changed)).worst);
    }
    EXPECT_EQ(choice.point.worst, best) << familyKey(choice.family);
  }
}

TEST(ReducerFamilies, ADirectDriveGetsAReducerAsItsOnlyStage) {
  Project direct = exampleProject(60);
  direct.active().transmission.clear();
  const auto choices = reducerFamilies(direct, byRules());
  ASSERT_TRUE(choices) << describe(choices.error());
  EXPECT_FALSE(presentReducer(direct));
  for (const FamilyChoice& choice : *choices) {
    if (!choice.found) continue;
    const auto adopted = adoptFamily(direct, choice);
    ASSERT_TRUE(adopted);
    ASSERT_EQ(adopted->active().transmission.size(), 1U);
    EXPECT_EQ(designPoint(evaluate(*adopted)).worst, choice.point.worst);
    EXPECT_TRUE(adopted->variants.front().transmission.empty());
  }
}

TEST(ReducerFamilies, WhereNothingHelpsTheOneThatLacksLeast) {
  Project project = exampleProject(60);
  project.load.payloadMass = 300;
  FamilyRequest request = byRules();
  request.catalogue = inventedReducers();
  const auto lackOf = [&](const Stage& stage) {
    Project changed = project;
    changed.active().transmission[1] = stage;
    const Evaluation evaluation = evaluate(changed);
    double lack = 0;
    for (const Check& check : evaluation.checks) {
      if (check.margin < 0) lack += std::min(1.0, -check.margin);
    }
    return designPoint(evaluation).worst <= -1 ? lack : -1;
  };
  int hopeless = 0;
  const auto choices = reducerFamilies(project, request);
  ASSERT_TRUE(choices);
  for (const FamilyChoice& choice : *choices) {
    if (!(choice.point.worst <= -1)) continue;
    ++hopeless;
    for (const Stage& stage : request.catalogue) {
      if (stage.family == choice.family) {
        EXPECT_GE(lackOf(stage), lackOf(choice.stage) - 1e-9) << stage.name;
      }
    }
  }
  EXPECT_GE(hopeless, 2);
}

TEST(FamilyRules, ScaleAsStated) {
  for (const FamilyRule& rule : defaultFamilyRules()) {
    const Stage one = reducerByRule(rule, rule.ratioLow, 20);
    const Stage eight = reducerByRule(rule, rule.ratioLow, 160);
    EXPECT_NEAR(eight.mass / one.mass, 8, 1e-9);
    EXPECT_NEAR(eight.diameter / one.diameter, 2, 1e-9);
    EXPECT_NEAR(eight.length / one.length, 2, 1e-9);
    EXPECT_NEAR(eight.inertia / one.inertia, 32, 1e-9);
    EXPECT_NEAR(eight.stiffness.first / one.stiffness.first, 8, 1e-9);
    EXPECT_NEAR(eight.peakSpeed / one.peakSpeed, 0.5, 1e-9);
    EXPECT_NEAR(one.efficiency, rule.efficiencyLow, 1e-12);
    EXPECT_NEAR(reducerByRule(rule, rule.ratioHigh, 20).efficiency, rule.efficiencyHigh, 1e-12);
  }
}

TEST(ReducerFamilies, RefusesAStageThatIsNotThere) {
  FamilyRequest request = byRules();
  request.stage = 5;
  EXPECT_FALSE(reducerFamilies(exampleProject(60), request));
}

}  // namespace
}  // namespace jw

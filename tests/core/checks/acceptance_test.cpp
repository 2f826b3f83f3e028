// Accepting verdicts: what may be accepted, what reopens it, and staying with its stage. The rules
// are the project's own.
#include "core/checks/acceptance_check.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "core/model/acceptance.h"
#include "tests/core/checks/example_project.h"

namespace jw {
namespace {

using testing::HasSubstr;

/// The example, with more life wanted than its drive has.
Project shortOfLife() {
  Project project = exampleProject();
  project.requirements.life *= 1000;
  return project;
}

const Check& checkOf(const Evaluation& result, std::string_view id, int stage) {
  for (const Check& check : result.checks) {
    if (check.id == id && check.stage == stage) return check;
  }
  throw std::logic_error("no such check");
}

const Check& lifeOf(const Evaluation& result) { return checkOf(result, "drive.life", 1); }

Project withLifeAccepted() {
  Project project = shortOfLife();
  const Check check = lifeOf(evaluate(project));
  EXPECT_EQ(check.state, CheckState::Short);
  putAcceptance(project.active(), acceptanceOf(check, "prototype only", "2026-03-31"));
  return project;
}

TEST(Acceptance, IsShownWithNoteAndDateAndChangesNoVerdict) {
  const Check before = lifeOf(evaluate(shortOfLife()));
  const Check check = lifeOf(evaluate(withLifeAccepted()));
  ASSERT_TRUE(check.accepted.has_value());
  EXPECT_TRUE(standsAccepted(check));
  EXPECT_EQ(acceptedText(check), "accepted 2026-03-31: prototype only");
  EXPECT_EQ(check.state, CheckState::Short);
  EXPECT_EQ(check.margin, before.margin);
  EXPECT_FALSE(checkOf(evaluate(withLifeAccepted()), "motor.speed", -1).accepted.has_value());
}

TEST(Acceptance, StandsWithinTheBandAndReopensBeyondIt) {
  Project project = withLifeAccepted();
  project.requirements.acceptedBand = 0.02;
  const double life = project.requirements.life;
  for (const double share : {0.981, 1.0, 1.019}) {
    project.requirements.life = share * life;
    EXPECT_TRUE(standsAccepted(lifeOf(evaluate(project)))) << share;
  }
  for (const double share : {0.979, 1.021}) {
    project.requirements.life = share * life;
    EXPECT_FALSE(standsAccepted(lifeOf(evaluate(project)))) << share;
  }
  EXPECT_EQ(acceptedText(lifeOf(evaluate(project))),
            "reopened, was accepted 2026-03-31: prototype only");
  project.requirements.acceptedBand = 0.03;
  EXPECT_TRUE(standsAccepted(lifeOf(evaluate(project)))) << "a wider band";
}

TEST(Acceptance, ACapacityThatMovesReopensToo) {
  Project project = withLifeAccepted();
  project.active().transmission[1].ratedLife *= 0.9;
  const Check check = lifeOf(evaluate(project));
  ASSERT_TRUE(check.accepted.has_value());
  EXPECT_FALSE(check.accepted->stands);
}

TEST(Acceptance, AnOpenVerdictReopensIt) {
  Project project = withLifeAccepted();
  project.active().transmission[1].ratedLife = kUnset;
  const Check check = lifeOf(evaluate(project));
  EXPECT_EQ(check.state, CheckState::Open);
  EXPECT_FALSE(standsAccepted(check));
}

TEST(Acceptance, BandCountsFromWhatItWas) {
  EXPECT_TRUE(withinBand(-1.02, -1, 0.02 + 1e-12));
  EXPECT_FALSE(withinBand(1, -1, 0.5));
  EXPECT_TRUE(withinBand(0, 0, 0.02)) << "nothing was demanded and nothing is";
  EXPECT_FALSE(withinBand(1e-9, 0, 0.02)) << "from nothing to something";
  EXPECT_FALSE(withinBand(kUnset, 1, 10));
  EXPECT_FALSE(withinBand(1, kUnset, 10));
  const double infinity = std::numeric_limits<double>::infinity();
  EXPECT_FALSE(withinBand(infinity, infinity, 10));
}

TEST(Acceptance, OnlyShortAndCloseCanBeAccepted) {
  Check check = lifeOf(evaluate(shortOfLife()));
  EXPECT_TRUE(mayAccept(check).has_value());
  check.state = CheckState::Close;
  EXPECT_TRUE(mayAccept(check).has_value());
  check.state = CheckState::Holds;
  EXPECT_THAT(mayAccept(check).error().what, HasSubstr("holds"));
  check.state = CheckState::Open;
  EXPECT_THAT(mayAccept(check).error().what, HasSubstr("open"));
  check.state = CheckState::Short;
  check.demand = std::numeric_limits<double>::infinity();
  EXPECT_THAT(mayAccept(check).error().what, HasSubstr("without limit"));
}

TEST(Acceptance, AgainReplacesAndWithdrawnIsGone) {
  Project project = withLifeAccepted();
  const Check check = lifeOf(evaluate(project));
  putAcceptance(project.active(), acceptanceOf(check, "again", "2026-04-01"));
  ASSERT_EQ(project.active().accepted.size(), 1U);
  EXPECT_EQ(lifeOf(evaluate(project)).accepted->note, "again");
  withdrawAcceptance(project.active(), check.id, 0);
  EXPECT_EQ(project.active().accepted.size(), 1U) << "that of another stage";
  withdrawAcceptance(project.active(), check.id, check.stage);
  EXPECT_TRUE(project.active().accepted.empty());
}

std::vector<std::string> noticesAt(const Evaluation& result, std::string_view where) {
  std::vector<std::string> found;
  for (const Notice& notice : result.notices) {
    if (notice.text.where == where) found.push_back(notice.text.what);
  }
  return found;
}

TEST(Acceptance, OfNoCheckIsKeptAndNoted) {
  Project project = withLifeAccepted();
  Acceptance lost = project.active().accepted.front();
  lost.check = "drive.charm";
  project.active().accepted.push_back(lost);
  lost.check = "drive.life", lost.stage = 7;
  project.active().accepted.push_back(lost);
  lost.check = "motor.magnet", lost.stage = -1;
  project.active().motor.demagnetizingCurrent = kUnset;
  project.active().accepted.push_back(lost);
  const Evaluation result = evaluate(project);
  EXPECT_TRUE(noticesAt(result, "accepted[0].check").empty());
  EXPECT_THAT(noticesAt(result, "accepted[1].check"),
              testing::ElementsAre(HasSubstr("no check has the id 'drive.charm'")));
  EXPECT_THAT(noticesAt(result, "accepted[2].check"),
              testing::ElementsAre(HasSubstr("stage 8, but there are 2")));
  EXPECT_THAT(noticesAt(result, "accepted[3].check"),
              testing::ElementsAre(HasSubstr("not judged here")));
}

/// Acceptances of stages 0, 1 and 2, named after them, and one of no stage.
Variant stagesAccepted() {
  Variant variant;
  variant.transmission.resize(3);
  for (int k = -1; k < 3; ++k) {
    Acceptance one;
    one.check = k < 0 ? "motor.speed" : "drive.life";
    one.stage = k;
    one.note = std::to_string(k);
    variant.accepted.push_back(one);
  }
  return variant;
}

/// "note>stage" of each.
std::vector<std::string> placesOf(const Variant& variant) {
  std::vector<std::string> places;
  for (const Acceptance& a : variant.accepted)
    places.push_back(a.note + ">" + std::to_string(a.stage));
  return places;
}

TEST(Acceptance, StaysWithItsStage) {
  using testing::ElementsAre;
  Variant removed = stagesAccepted();
  followRemovedStage(removed, 1);
  EXPECT_THAT(placesOf(removed), ElementsAre("-1>-1", "0>0", "2>1"));
  Variant inserted = stagesAccepted();
  followInsertedStage(inserted, 1);
  EXPECT_THAT(placesOf(inserted), ElementsAre("-1>-1", "0>0", "1>2", "2>3"));
  Variant swapped = stagesAccepted();
  followSwappedStages(swapped, 1, 2);
  EXPECT_THAT(placesOf(swapped), ElementsAre("-1>-1", "0>0", "1>2", "2>1"));
  Variant untouched = stagesAccepted();
  followSwappedStages(untouched, 0, -1);
  EXPECT_EQ(placesOf(untouched), placesOf(stagesAccepted())) << "no such place";
}

TEST(Acceptance, FieldsAreFoundByTheirPath) {
  Project project = withLifeAccepted();
  ASSERT_TRUE(setField(project, "accepted[0].note", "for the fair").has_value());
  EXPECT_EQ(project.active().accepted[0].note, "for the fair");
  EXPECT_EQ(fieldText(*findField(project, "accepted[0].stage")), "1");
  EXPECT_FALSE(setField(project, "accepted[0].stage", "-2").has_value());
  EXPECT_FALSE(setField(project, "accepted[0].demand", "nan").has_value());
  EXPECT_FALSE(findField(project, "accepted[1].note").has_value());
}

}  // namespace
}  // namespace jw

// Remedies and sensitivities in the window: they come by themselves, can be applied by keys as one
// step, and go with the next edit. Own; numbers against the core's, which has tests of its own.
#include <QSignalSpy>
#include <QTextBrowser>

#include "core/studies/sensitivity.h"
#include "tests/gui/support.h"
#include "widgets/panels/remedy_section.h"

namespace jw::test {
namespace {

constexpr int kPatienceMs = 20'000;

class RemediesTest : public WindowTest {
 protected:
  RemedySection& section() { return *window->findChild<RemedySection*>(); }
  QTextBrowser& text() { return *window->findChild<QTextBrowser*>("working.text"); }
  VerdictList& verdicts() { return *window->findChild<VerdictList*>("verdicts"); }
  QString shown() { return text().toPlainText(); }

  bool waitForRemedies() {
    return QTest::qWaitFor([&] { return section().found() != nullptr; }, kPatienceMs);
  }
  bool waitForSlopes() {
    return QTest::qWaitFor([&] { return document().snapshot().sensitivities != nullptr; },
                           kPatienceMs);
  }
  void follow(const char* link) { emit text().anchorClicked(QUrl(link)); }
};

TEST_F(RemediesTest, AppearForTheVerdictThatIsClose) {
  openSampleCopy();  // its worst verdict, a life that is close, is chosen
  ASSERT_EQ(check("drive.life", 1).state, CheckState::Close);
  EXPECT_TRUE(shown().contains("Searching")) << shown().toStdString();
  ASSERT_TRUE(waitForRemedies());
  EXPECT_TRUE(shown().contains("What would make it hold"));
  EXPECT_TRUE(shown().contains("rated torque"));
  EXPECT_TRUE(shown().contains("Asking for less"));
  EXPECT_FALSE(shown().contains("Searching"));
}

TEST_F(RemediesTest, OffersTheNearestMotorOfTheCatalogueInUse) {
  openSampleCopy();
  type("load.payloadMass", "9 kg");
  QTest::keyClick(qApp->focusWidget(), Qt::Key_Return);
  settle();
  verdicts().select("motor.torque", -1);
  ASSERT_TRUE(waitForRemedies());
  const auto& found = section().found()->remedies;
  const auto motor = std::find_if(found.begin(), found.end(),
                                  [](const Remedy& r) { return r.kind == RemedyKind::Motor; });
  ASSERT_NE(motor, found.end());
  EXPECT_GE(motor->margin, document().project()->requirements.targetMargin);
  EXPECT_EQ(motor->motor->motor.asWritten.from.catalogue, "motors.csv");
}

TEST_F(RemediesTest, NoneForAVerdictThatHolds) {
  openSampleCopy();
  verdicts().select("joint.holding", -1);
  EXPECT_FALSE(shown().contains("Searching"));
  QTest::qWait(500);
  EXPECT_EQ(section().found(), nullptr);
  EXPECT_FALSE(shown().contains("make it hold"));
}

TEST_F(RemediesTest, KeysApplyOneAsOneStepAndUndoRestores) {
  openSampleCopy();
  const Project before = *document().project();
  const double margin = check("drive.life", 1).margin;
  ASSERT_TRUE(waitForRemedies());
  const Remedy first = section().found()->remedies.at(0);
  text().setFocus();
  for (int k = 0; k < 80 && text().textCursor().selectedText() != "apply"; ++k) {
    QTest::keyClick(&text(), Qt::Key_Tab);
  }
  ASSERT_EQ(text().textCursor().selectedText(), "apply");
  QTest::keyClick(&text(), Qt::Key_Return);
  settle();
  EXPECT_DOUBLE_EQ(number(first.path.c_str()), first.to);
  EXPECT_NEAR(check("drive.life", 1).margin, 0.1, 1e-6);
  EXPECT_GE(check("drive.life", 1).margin, 0.1);
  const QString undo = window->findChild<QAction*>("action.undo")->text();
  EXPECT_TRUE(undo.contains("Apply remedy")) << undo.toStdString();
  trigger("action.undo");
  settle();
  EXPECT_TRUE(*document().project() == before);
  EXPECT_EQ(check("drive.life", 1).margin, margin);
  EXPECT_FALSE(document().history().canUndo());
}

TEST_F(RemediesTest, AnEditGivesUpTheSearchAndStartsAnother) {
  openSampleCopy();
  ASSERT_TRUE(section().isSearching());
  enter("requirements.life", "17000 h");
  EXPECT_EQ(section().found(), nullptr);
  ASSERT_TRUE(waitForRemedies());
  EXPECT_EQ(section().found()->margin, check("drive.life", 1).margin);
  enter("requirements.life", "16500 h");  // and what was found goes with the next
  EXPECT_EQ(section().found(), nullptr);
  EXPECT_FALSE(shown().contains("apply"));
}

TEST_F(RemediesTest, AnotherVerdictGivesUpTheSearch) {
  openSampleCopy();
  ASSERT_TRUE(section().isSearching());
  verdicts().select("joint.holding", -1);
  EXPECT_FALSE(section().isSearching());
  verdicts().select("drive.life", 1);
  EXPECT_TRUE(section().isSearching());
  EXPECT_TRUE(waitForRemedies());
}

TEST_F(RemediesTest, CanBeCancelledAndAskedForAgain) {
  openSampleCopy();
  follow(kCancelLink);
  EXPECT_FALSE(section().isSearching());
  EXPECT_TRUE(shown().contains("given up"));
  QTest::qWait(700);
  EXPECT_EQ(section().found(), nullptr);
  follow(kSearchLink);
  EXPECT_TRUE(shown().contains("Searching"));
  EXPECT_TRUE(waitForRemedies());
}

TEST_F(RemediesTest, WhatIsFoldedUnfolds) {
  openSampleCopy();
  ASSERT_TRUE(waitForRemedies());
  const NoRemedy& none = section().found()->cannot.at(0);
  EXPECT_FALSE(shown().contains("at best"));
  follow(kCannotLink);
  EXPECT_TRUE(shown().contains("at best"));
  EXPECT_TRUE(shown().contains(QString::fromStdString(none.label)));
  const Remedy& last = section().found()->remedies.back();
  EXPECT_FALSE(shown().contains(QString::fromStdString(last.label)));
  follow(kAllLink);
  EXPECT_TRUE(shown().contains(QString::fromStdString(last.label)));
}

TEST_F(RemediesTest, WrongEntryLeavesNothingToApply) {
  openSampleCopy();
  ASSERT_TRUE(waitForRemedies());
  type("load.payloadMass", "3.4 J");
  EXPECT_FALSE(shown().contains("apply"));
  const auto before = document().project();
  follow("remedy:apply:0");
  EXPECT_EQ(document().project(), before);
}

TEST_F(RemediesTest, DependsMostOnStandsBesideTheVerdicts) {
  openSampleCopy();
  ASSERT_TRUE(waitForSlopes());
  const Sensitivities own = sensitivities(*document().project());
  const InputSlope& strongest = own.of("drive.life", 1)->inputs.at(0);
  const std::string label = inputLabel(*document().project(), own.inputs[strongest.input]);
  const std::string brief = "+1 % reliability → ";
  ASSERT_EQ(own.inputs[strongest.input].path, "requirements.reliability");
  const VerdictModel& model = verdicts().model();
  const int row = model.find("drive.life", 1);
  EXPECT_TRUE(model.row(row).depends.startsWith(QString::fromStdString(brief)));
  EXPECT_EQ(model.row(row).depends.count(u'·'), 2);
  const QString tip = model.data(model.index(row), Qt::ToolTipRole).toString();
  EXPECT_TRUE(tip.contains("depends most on")) << tip.toStdString();
  EXPECT_TRUE(shown().contains("Depends most on " + QString::fromStdString(label)));
  EXPECT_TRUE(text().toHtml().contains("field:" +
                                       QString::fromStdString(own.inputs[strongest.input].path)));
}

TEST_F(RemediesTest, SensitivitiesFollowTheLastEdit) {
  openSampleCopy();
  ASSERT_TRUE(waitForSlopes());
  QSignalSpy spy(&document(), &Document::sensitivitiesChanged);
  enter("load.payloadMass", "3 kg");
  enter("load.payloadMass", "2.5 kg");
  EXPECT_EQ(document().snapshot().sensitivities, nullptr);
  ASSERT_TRUE(waitForSlopes());
  QTest::qWait(300);
  EXPECT_LE(spy.size(), 2);  // an edit stops the one before
  const Sensitivities own = sensitivities(*document().project());
  EXPECT_EQ(document().snapshot().sensitivities->of("drive.life", 1)->inputs.at(0).slope,
            own.of("drive.life", 1)->inputs.at(0).slope);
}

TEST_F(RemediesTest, TheChosenRowIsTaller) {
  openSampleCopy();
  auto* view = verdicts().findChild<QListView*>("verdicts.list");
  const auto height = [&](const char* id, int stage) {
    return view->visualRect(verdicts().model().index(verdicts().model().find(id, stage))).height();
  };
  QTest::qWait(50);
  EXPECT_EQ(height("drive.life", 1), 81);
  EXPECT_EQ(height("joint.holding", -1), 38);
  verdicts().select("joint.holding", -1);
  QTest::qWait(50);
  EXPECT_EQ(height("drive.life", 1), 38);
  EXPECT_EQ(height("joint.holding", -1), 81);
}

TEST(RemedyText, SaysWhatChangesAndWhatFollows) {
  Remedy remedy;
  remedy.quantity = Quantity::Inertia;
  remedy.unit = "kg*cm^2";
  remedy.from = 0.5e-4;
  remedy.to = 0.75e-4;
  remedy.change = 0.5;
  EXPECT_EQ(changeText(remedy), QStringLiteral("0.5 → 0.75 kg·cm², +50\u202f%"));
  EXPECT_TRUE(consequencesText(remedy).isEmpty());
  remedy.others = {{"a", -1, "Collision", 0.3, -0.1, CheckState::Holds, CheckState::Short},
                   {"b", -1, "Mass", 0.3, 0.2, CheckState::Holds, CheckState::Holds},
                   {"c", -1, "Holding", -0.1, 0.2, CheckState::Short, CheckState::Holds}};
  EXPECT_EQ(consequencesText(remedy), "Collision gets short; Holding holds too");
}

}  // namespace
}  // namespace jw::test

// Accepting a verdict in the window: by mouse and by keyboard, undone and withdrawn. The behaviour
// is the project's own.
#include <QDate>
#include <QLineEdit>
#include <QListView>
#include <QPushButton>
#include <QSignalSpy>
#include <QTest>
#include <QToolButton>

#include <gtest/gtest.h>

#include "core/checks/acceptance_check.h"
#include "tests/gui/figures_support.h"
#include "widgets/inputs/list_plan.h"
#include "widgets/panels/acceptance_bar.h"
#include "widgets/panels/verdict_list.h"
#include "widgets/panels/working_panel.h"

namespace jw {
namespace {

/// A working panel over a project of its own, edits applied at once.
struct Desk {
  Project project = test::shoulder();
  WorkingPanel panel;
  QString lastEdit;

  Desk() {
    project.requirements.life = 1e12;
    panel.resize(300, 400);
    panel.show();
    QObject::connect(&panel, &WorkingPanel::editRequested, [this](const Edit& edit) {
      ASSERT_TRUE(edit.apply(project).has_value());
      lastEdit = edit.description;
      panel.showSnapshot(test::snapshotOf(project));
    });
    choose("drive.life", 1);
  }

  void choose(const char* id, int stage) { panel.showCheck(test::snapshotOf(project), id, stage); }
  template <class T>
  T* part(const char* name) {
    return panel.findChild<T*>(name);
  }
  void acceptWith(const QString& note) {
    part<QToolButton>("acceptance.open")->click();
    part<QLineEdit>("acceptance.note")->setText(note);
    QTest::keyClick(part<QLineEdit>("acceptance.note"), Qt::Key_Return);
  }
};

TEST(AcceptanceBar, AcceptsWithNoteAndTodaysDate) {
  Desk desk;
  ASSERT_TRUE(desk.part<QToolButton>("acceptance.open")->isVisible());
  desk.acceptWith("prototype only");
  ASSERT_EQ(desk.project.active().accepted.size(), 1U);
  const Acceptance& one = desk.project.active().accepted.front();
  EXPECT_EQ(one.check, "drive.life");
  EXPECT_EQ(one.stage, 1);
  EXPECT_EQ(one.note, "prototype only");
  EXPECT_EQ(one.date, QDate::currentDate().toString(Qt::ISODate).toStdString());
  EXPECT_EQ(one.demand, 1e12);
  EXPECT_TRUE(desk.part<QLabel>("acceptance.text")->text().contains("prototype only"));
  EXPECT_FALSE(desk.part<QToolButton>("acceptance.open")->isVisible());
  EXPECT_TRUE(desk.lastEdit.startsWith("Accept ")) << desk.lastEdit.toStdString();
}

TEST(AcceptanceBar, IsWithdrawn) {
  Desk desk;
  desk.acceptWith("x");
  desk.part<QToolButton>("acceptance.withdraw")->click();
  EXPECT_TRUE(desk.project.active().accepted.empty());
  EXPECT_TRUE(desk.part<QToolButton>("acceptance.open")->isVisible());
}

TEST(AcceptanceBar, SaysWhenItIsReopenedAndAcceptsAgain) {
  Desk desk;
  desk.acceptWith("x");
  desk.project.requirements.life *= 2;
  desk.choose("drive.life", 1);
  EXPECT_TRUE(desk.part<QLabel>("acceptance.text")->text().startsWith("Reopened"));
  desk.part<QToolButton>("acceptance.open")->click();
  EXPECT_EQ(desk.part<QLineEdit>("acceptance.note")->text(), "x") << "the note of before";
  desk.part<QPushButton>("acceptance.accept")->click();
  ASSERT_EQ(desk.project.active().accepted.size(), 1U);
  EXPECT_EQ(desk.project.active().accepted.front().demand, 2e12);
}

TEST(AcceptanceBar, RefusesWhatIsNoDate) {
  Desk desk;
  desk.part<QToolButton>("acceptance.open")->click();
  auto* date = desk.part<QLineEdit>("acceptance.date");
  date->setText("31.3.");
  desk.part<QPushButton>("acceptance.accept")->click();
  EXPECT_TRUE(desk.project.active().accepted.empty());
  EXPECT_EQ(date->property("state").toString(), "wrong");
  EXPECT_TRUE(date->toolTip().contains("year-month-day"));
}

TEST(AcceptanceBar, EscapeLeavesEverythingAsItWas) {
  Desk desk;
  desk.part<QToolButton>("acceptance.open")->click();
  QTest::keyClick(desk.part<QLineEdit>("acceptance.note"), Qt::Key_Escape);
  EXPECT_FALSE(desk.part<QLineEdit>("acceptance.note")->isVisible());
  EXPECT_TRUE(desk.project.active().accepted.empty());
}

TEST(AcceptanceBar, IsNotThereWhereThereIsNothingToAccept) {
  Desk desk;
  const Evaluation result = evaluate(desk.project);
  for (const Check& check : result.checks) {
    desk.choose(std::string(check.id).c_str(), check.stage);
    EXPECT_EQ(desk.part<AcceptanceBar>("acceptance")->isVisible(), mayAccept(check).has_value())
        << check.id;
  }
}

TEST(AcceptanceBar, AcceptsNothingOfAnEvaluationThatIsBehind) {
  Desk desk;
  Snapshot stale = test::snapshotOf(desk.project);
  stale.stale = true;
  desk.panel.showCheck(stale, "drive.life", 1);
  EXPECT_FALSE(desk.part<QToolButton>("acceptance.open")->isEnabled());
}

TEST(VerdictRows, SayWhatIsAcceptedAndKeepItsState) {
  Desk desk;
  desk.acceptWith("prototype only");
  const auto rowOf = [&] {
    for (const VerdictRow& row : verdictRows(test::snapshotOf(desk.project)))
      if (row.id == "drive.life" && row.stage == 1) return row;
    return VerdictRow{};
  };
  EXPECT_EQ(rowOf().state, CheckState::Short);
  EXPECT_EQ(rowOf().acceptance, "accepted");
  EXPECT_TRUE(rowOf().sentence.contains("prototype only"));
  desk.project.requirements.life *= 2;
  EXPECT_EQ(rowOf().acceptance, "reopened");
  EXPECT_FALSE(rowOf().accepted);
  EXPECT_TRUE(desk.panel.plainText().contains("accepted"));
}

TEST(StagePlan, AcceptancesGoWithTheirStage) {
  Desk desk;
  desk.acceptWith("x");
  const ListPlan plan = stagePlan();
  ASSERT_TRUE(plan.move(1, 0).apply(desk.project).has_value());
  EXPECT_EQ(desk.project.active().accepted.front().stage, 0);
  ASSERT_TRUE(plan.duplicate(0).apply(desk.project).has_value());
  EXPECT_EQ(desk.project.active().accepted.front().stage, 0) << "the copy stands behind";
  EXPECT_FALSE(plan.remove(9).apply(desk.project).has_value());
  EXPECT_EQ(desk.project.active().accepted.size(), 1U);
  ASSERT_TRUE(plan.remove(0).apply(desk.project).has_value());
  EXPECT_TRUE(desk.project.active().accepted.empty());
}

}  // namespace
}  // namespace jw

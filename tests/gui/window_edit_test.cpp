// Typing, undoing and what follows from it, as a person does it: by keys.
#include <cmath>

#include "tests/gui/support.h"

namespace jw::test {
namespace {

using WindowEdit = WindowTest;

TEST_F(WindowEdit, TypingChangesTheProjectAndTheVerdict) {
  openSampleCopy();
  const double before = check("joint.holding").margin;
  enter("load.payloadMass", "6,8 kg");
  EXPECT_DOUBLE_EQ(number("load.payloadMass"), 6.8);
  EXPECT_LT(check("joint.holding").margin, before);
  EXPECT_TRUE(document().isModified());
}

TEST_F(WindowEdit, UndoAndRedoBringBackProjectAndVerdict) {
  openSampleCopy();
  const double before = check("joint.holding").margin;
  enter("load.payloadMass", "6.8 kg");
  const double after = check("joint.holding").margin;
  trigger("action.undo");
  settle();
  EXPECT_DOUBLE_EQ(check("joint.holding").margin, before);
  EXPECT_FALSE(document().isModified());
  trigger("action.redo");
  settle();
  EXPECT_DOUBLE_EQ(check("joint.holding").margin, after);
}

TEST_F(WindowEdit, TypingOneNumberIsOneStep) {
  openSampleCopy();
  enter("load.payloadMass", "12.25 kg");
  trigger("action.undo");
  EXPECT_FALSE(document().history().canUndo());
  EXPECT_FALSE(document().isModified());
}

TEST_F(WindowEdit, UndoKeyWorksWhileTheFieldHasTheFocus) {
  openSampleCopy();
  type("load.payloadMass", "7 kg");
  QTest::keyClick(window->findChild<QLineEdit*>("load.payloadMass"), Qt::Key_Z,
                  Qt::ControlModifier);
  settle();
  EXPECT_DOUBLE_EQ(number("load.payloadMass"), 3.4);
}

TEST_F(WindowEdit, CtrlAndANumberShowTheFigureOfThatTab) {
  openSampleCopy();
  const auto& tabs = *window->figures().activePane()->findChild<QTabBar*>();
  ASSERT_EQ(tabs.count(), 9);
  for (int k = 8; k >= 0; --k) {
    QTest::keyClick(window.get(), Qt::Key(Qt::Key_1 + k), Qt::ControlModifier);
    EXPECT_EQ(tabs.currentIndex(), k);
  }
}

TEST_F(WindowEdit, TypingTheSameAgainLeavesNoStep) {
  openSampleCopy();
  enter("load.payloadMass", "3.4 kg");
  EXPECT_FALSE(document().history().canUndo());
}

TEST_F(WindowEdit, WrongEntryKeepsTheLastGoodEvaluationAndMarksItStale) {
  openSampleCopy();
  const auto evaluation = document().snapshot().evaluation;
  type("load.payloadMass", "3.4 J");
  EXPECT_TRUE(window->inputs().hasWrongEntry());
  EXPECT_EQ(document().snapshot().evaluation->checks.size(), evaluation->checks.size());
  EXPECT_TRUE(document().snapshot().stale);
  EXPECT_EQ(window->findChild<QLabel*>("status.time")->text(), "not up to date");
}

TEST_F(WindowEdit, UndoNamesWhatItUndoes) {
  openSampleCopy();
  enter("motor.rotorInertia", "0.5 kg*cm^2");
  const QString text = window->findChild<QAction*>("action.undo")->text();
  EXPECT_TRUE(text.contains("rotor inertia", Qt::CaseInsensitive)) << text.toStdString();
}

TEST_F(WindowEdit, VariantsAreChosenDuplicatedRenamedAndRemoved) {
  openSampleCopy();
  auto* menu = window->findChild<QMenu*>("menu.variant");
  const auto run = [&](const QString& start) {
    emit menu->aboutToShow();
    for (QAction* action : menu->actions()) {
      if (action->text().remove('&').startsWith(start)) return action->trigger();
    }
    FAIL() << start.toStdString();
  };
  const auto count = document().project()->variants.size();
  run("Duplicate");
  ASSERT_EQ(document().project()->variants.size(), count + 1);
  answers.file = "light";
  run("Rename");
  EXPECT_EQ(document().project()->active().name, "light");
  run("Remove");
  EXPECT_EQ(document().project()->variants.size(), count);
  run(QString::fromStdString(document().project()->variants[0].name));
  EXPECT_EQ(document().project()->activeVariant, 0);
  trigger("action.undo");
  trigger("action.undo");
  trigger("action.undo");
  trigger("action.undo");
  EXPECT_FALSE(document().isModified());
}

TEST_F(WindowEdit, ImportedTableBecomesTheMove) {
  openSampleCopy();
  answers.file = folder.filePath("log.csv");
  putContent(answers.file, "time [s],angle [deg]\n0,0\n0.5,10\n1,30\n");
  emit window->inputs().tableRequested(0);
  const Segment& segment = document().project()->cycle.segments[0];
  EXPECT_EQ(segment.law, MotionLaw::Table);
  EXPECT_EQ(segment.table.time.size(), 3U);
  trigger("action.undo");
  EXPECT_FALSE(document().isModified());
}

TEST_F(WindowEdit, BadTableIsRefusedNamingThePlace) {
  openSampleCopy();
  answers.file = folder.filePath("log.csv");
  putContent(answers.file, "time [s],angle [deg]\n0,0\n0.5,x\n");
  emit window->inputs().tableRequested(0);
  EXPECT_FALSE(document().isModified());
  const QString message = window->messages().text();
  EXPECT_TRUE(message.contains("log.csv")) << message.toStdString();
  EXPECT_TRUE(message.contains("line 3")) << message.toStdString();
}

TEST_F(WindowEdit, CursorIsSharedByFiguresAndStatusBar) {
  openSampleCopy();
  FigurePane* pane = window->figures().pane(0);
  QTest::keyClick(pane->current(), Qt::Key_End);
  const double period = document().snapshot().evaluation->cycle->period;
  EXPECT_DOUBLE_EQ(pane->current()->cursorTime(), period);
  pane->setCurrent("cycle");
  EXPECT_DOUBLE_EQ(pane->current()->cursorTime(), period);
  EXPECT_TRUE(window->findChild<QLabel*>("status.cursor")->text().startsWith("cursor "));
}

TEST_F(WindowEdit, StreamOfEditsEndsWithTheLastOneEvaluated) {
  openSampleCopy();
  for (int k = 1; k <= 200; ++k) {
    window->applyEdit({"Change payload", "slider", [k](Project& project) {
                         return setField(project, "load.payloadMass", std::to_string(k) + " g");
                       }});
    if (k % 10 == 0) QCoreApplication::processEvents();
  }
  settle();
  EXPECT_DOUBLE_EQ(document().snapshot().evaluatedProject->load.payloadMass, 0.2);
  trigger("action.undo");
  EXPECT_FALSE(document().isModified());
}

}  // namespace
}  // namespace jw::test

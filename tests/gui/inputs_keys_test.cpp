// Arrow keys, wheel and undo in a number field: the contract of widgets/inputs/number_field.h.
#include <QAction>
#include <QMainWindow>

#include "tests/gui/inputs_support.h"
#include "widgets/inputs/field_text.h"

namespace jw::test {
namespace {

TEST(InputsKeys, ArrowsMoveByARoundStepAndAreOneUndoStep) {
  Desk desk;
  desk.type("motor.torqueConstant", "0.092 N*m/A");
  desk.enter("load.inertia");
  auto& field = desk.enter("motor.torqueConstant");
  const std::size_t before = desk.steps.size();
  QTest::keyClick(&field, Qt::Key_Up);
  QTest::keyClick(&field, Qt::Key_Up);
  EXPECT_EQ(desk.text("motor.torqueConstant"), "0.094 N*m/A");  // 0.092/50 = 0.0018: step 0.001
  QTest::keyClick(&field, Qt::Key_Down);
  EXPECT_EQ(desk.text("motor.torqueConstant"), "0.093 N*m/A");
  EXPECT_EQ(desk.steps.size(), before + 1);
  desk.undo();
  EXPECT_EQ(desk.text("motor.torqueConstant"), "0.092 N*m/A");
  EXPECT_EQ(field.text(), "0.092 N*m/A");
}

TEST(InputsKeys, ShiftIsTenTimesAndCtrlATenth) {
  Desk desk;
  desk.type("supply.voltage", "100");
  desk.enter("load.inertia");
  auto& field = desk.enter("supply.voltage");
  QTest::keyClick(&field, Qt::Key_Up);
  EXPECT_EQ(desk.text("supply.voltage"), "102");
  QTest::keyClick(&field, Qt::Key_Up, Qt::ShiftModifier);
  EXPECT_EQ(desk.text("supply.voltage"), "122");
  QTest::keyClick(&field, Qt::Key_Down, Qt::ControlModifier);
  EXPECT_EQ(desk.text("supply.voltage"), "121.8");
}

TEST(InputsKeys, NudgeKeepsUnitAndDecimalSign) {
  Desk desk;
  desk.type("load.payloadDistance", "14,5 in");
  desk.enter("load.inertia");
  QTest::keyClick(&desk.enter("load.payloadDistance"), Qt::Key_Up);
  EXPECT_EQ(desk.text("load.payloadDistance"), "14,7 in");
}

TEST(InputsKeys, NudgeStopsAtTheRange) {
  Desk desk;
  desk.type("transmission[1].efficiency", "0.99");
  desk.enter("load.inertia");
  auto& field = desk.enter("transmission[1].efficiency");
  for (int k = 0; k < 5; ++k) QTest::keyClick(&field, Qt::Key_Up);
  EXPECT_EQ(desk.text("transmission[1].efficiency"), "1.00");
  EXPECT_FALSE(desk.panel.hasWrongEntry());
}

TEST(InputsKeys, WholeNumbersStayWhole) {
  Desk desk;
  auto& field = desk.enter("motor.polePairs");
  QTest::keyClick(&field, Qt::Key_Up);
  EXPECT_EQ(desk.text("motor.polePairs"), "2");
  QTest::keyClick(&field, Qt::Key_Up, Qt::ControlModifier);
  EXPECT_EQ(desk.number("motor.polePairs"), 3);
}

TEST(InputsKeys, EmptyFieldStartsFromZero) {
  Desk desk;
  QTest::keyClick(&desk.enter("motor.windingTemperature"), Qt::Key_Up);
  EXPECT_EQ(desk.number("motor.windingTemperature"), 1);
}

TEST(InputsKeys, WheelTurnsOnlyWithTheFocus) {
  Desk desk;
  desk.type("supply.voltage", "100");
  desk.enter("load.inertia");
  auto& field = desk.field("supply.voltage");
  turnWheel(field, 3);
  EXPECT_EQ(desk.text("supply.voltage"), "100");
  desk.enter("supply.voltage");
  const std::size_t before = desk.steps.size();
  turnWheel(field, 1);
  turnWheel(field, 2);
  EXPECT_EQ(desk.text("supply.voltage"), "106");
  EXPECT_EQ(desk.steps.size(), before + 1);
}

TEST(InputsKeys, WheelOverAChoiceNeedsTheFocusToo) {
  Desk desk;
  auto& kind = desk.field<QComboBox>("motor.kind");
  turnWheel(kind, -1);
  EXPECT_EQ(desk.number("motor.kind"), 0);
  desk.enter<QComboBox>("motor.kind");
  turnWheel(kind, -1);
  EXPECT_EQ(desk.number("motor.kind"), 1);
}

TEST(InputsKeys, StepsAreOneTwoFive) {
  const FieldInfo& info = *structInfo<Load>().find("payloadMass");
  EXPECT_DOUBLE_EQ(nudgeStep(info, "6.5"), 0.1);
  EXPECT_DOUBLE_EQ(nudgeStep(info, "48"), 0.5);
  EXPECT_DOUBLE_EQ(nudgeStep(info, "100"), 2);
  EXPECT_DOUBLE_EQ(nudgeStep(info, "7000"), 100);
  EXPECT_DOUBLE_EQ(nudgeStep(info, "250 g"), 5);
}

class UndoKeys : public ::testing::Test {
 protected:
  UndoKeys() {
    undo_.setShortcut(QKeySequence::Undo);
    window_.addAction(&undo_);
    QObject::connect(&undo_, &QAction::triggered, &undo_, [this] { ++undone_; });
    panel_ = new InputsPanel;
    window_.setCentralWidget(panel_);
    panel_->showProject(orchardArm());
    window_.show();
    window_.activateWindow();
    (void)QTest::qWaitForWindowActive(&window_);
  }

  /// The same way as from the keyboard: shortcuts first, and only where the field leaves them.
  void pressUndo() { QTest::keyClick(window_.windowHandle(), Qt::Key_Z, Qt::ControlModifier); }

  QMainWindow window_;
  InputsPanel* panel_;
  QAction undo_;
  int undone_ = 0;
};

TEST_F(UndoKeys, WindowGetsUndoFromANumberField) {
  panel_->reveal("supply.voltage");
  auto* field = panel_->findChild<NumberField*>("supply.voltage");
  QTest::keyClicks(field, "48");
  pressUndo();
  EXPECT_EQ(undone_, 1);
  EXPECT_EQ(field->text(), "48");  // the field's own history stays out of it
}

TEST_F(UndoKeys, WrongEntryIsTakenBackFirst) {
  panel_->reveal("supply.voltage");
  auto* field = panel_->findChild<NumberField*>("supply.voltage");
  QTest::keyClicks(field, "volt");
  pressUndo();
  EXPECT_EQ(undone_, 0);
  EXPECT_EQ(field->text(), "");
  EXPECT_FALSE(panel_->hasWrongEntry());
  pressUndo();
  EXPECT_EQ(undone_, 1);
}

TEST_F(UndoKeys, WindowGetsUndoFromTextFields) {
  for (const char* path : {"title", "note"}) {
    panel_->reveal(path);
    QTest::keyClicks(panel_->findChild<QWidget*>(path), "abc");
    undone_ = 0;
    pressUndo();
    EXPECT_EQ(undone_, 1) << path;
  }
}

}  // namespace
}  // namespace jw::test

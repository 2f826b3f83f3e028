// The moves as a curve and a table, worked by mouse and keys. What each gesture has to do is this
// program's own; no outside source.
#include <numbers>

#include <QLabel>
#include <QLineEdit>

#include "tests/gui/moves_support.h"

namespace jw {
namespace {

using test::CycleDesk;
using Column = MoveTableModel::Column;
constexpr double kDegree = std::numbers::pi / 180;

class MovesTest : public testing::Test {
 protected:
  CycleDesk desk{CycleFigure::Picture::Moves};
  QLabel* remark() { return desk.figure.findChild<QLabel*>("moves.remark"); }
};

TEST_F(MovesTest, DraggingAnEndUpChangesTheTravelInOneStep) {
  const Segment before = desk.move(0);
  desk.drag(desk.handle(0), QPoint(2, -40));
  EXPECT_GT(desk.move(0).travel, before.travel + 0.1);
  EXPECT_EQ(desk.move(0).duration, before.duration);
  EXPECT_EQ(desk.steps.size(), 1u);
  // As a person would write it: whole steps of the unit, no tail of digits.
  const std::string text = fieldText(*findField(desk.project, "cycle.segments[0].travel"));
  EXPECT_TRUE(text.ends_with(" deg")) << text;
  EXPECT_LE(text.size(), 9u) << text;
  desk.undo();
  EXPECT_EQ(desk.move(0).travel, before.travel);
}

TEST_F(MovesTest, TheEndFollowsTheMouse) {
  const QPoint from = desk.handle(0);
  desk.drag(from, QPoint(0, -30));
  desk.curve().showView(movesView(test::snapshotOf(desk.project)));
  // The axes fit the new curve; the end is where the mouse was in angle.
  const double moved = (desk.move(0).travel - 1.4) / kDegree;
  EXPECT_GT(moved, 5);
  EXPECT_EQ(desk.curve().marks().handles().size(), 4u);
}

TEST_F(MovesTest, DraggingSidewaysChangesTheDuration) {
  const Segment before = desk.move(0);
  desk.drag(desk.handle(0), QPoint(45, 3));
  EXPECT_GT(desk.move(0).duration, before.duration + 0.05);
  EXPECT_EQ(desk.move(0).travel, before.travel);
  EXPECT_EQ(desk.move(1).duration, 0.3);
  EXPECT_EQ(desk.steps.size(), 1u);
}

TEST_F(MovesTest, ADwellHasNoAngleToDrag) {
  desk.drag(desk.handle(1), QPoint(0, -60));
  EXPECT_EQ(desk.move(1).travel, 0);
  desk.drag(desk.handle(1), QPoint(30, 0));
  EXPECT_GT(desk.move(1).duration, 0.3);
}

TEST_F(MovesTest, NoDurationIsDraggedToNothing) {
  desk.drag(desk.handle(1), QPoint(-400, 0));
  EXPECT_GT(desk.move(1).duration, 0);
  EXPECT_TRUE(desk.refused.isEmpty()) << desk.refused.toStdString();
}

TEST_F(MovesTest, WithShiftTheNextMoveMakesUpForIt) {
  desk.take({"", "", [](Project& p) -> tl::expected<void, InputError> {
               p.cycle.segments.erase(p.cycle.segments.begin() + 1);
               return {};
             }});
  desk.drag(desk.handle(0), QPoint(0, -40), Qt::ShiftModifier);
  EXPECT_GT(desk.move(0).travel, 1.5);
  EXPECT_NEAR(desk.move(0).travel + desk.move(1).travel, 0, 1e-9);
  EXPECT_TRUE(test::snapshotOf(desk.project).evaluation->cycle->warnings.empty());
}

TEST_F(MovesTest, ATargetIsDraggedInTheUnitItWasTypedIn) {
  ASSERT_TRUE(setField(desk.project, "cycle.segments[0].aim", "to"));
  ASSERT_TRUE(setField(desk.project, "cycle.segments[0].target", "0.8 rad"));
  desk.figure.showSnapshot(test::snapshotOf(desk.project));
  desk.drag(desk.handle(0), QPoint(0, 20));
  EXPECT_LT(desk.move(0).target, 0.8);
  const std::string text = fieldText(*findField(desk.project, "cycle.segments[0].target"));
  EXPECT_TRUE(text.ends_with(" rad")) << text;
}

TEST_F(MovesTest, AMoveByLimitsKeepsItsTime) {
  ASSERT_TRUE(setField(desk.project, "cycle.segments[2].timing", "limits"));
  ASSERT_TRUE(setField(desk.project, "cycle.accelerationLimit", "8 rad/s^2"));
  desk.figure.showSnapshot(test::snapshotOf(desk.project));
  EXPECT_EQ(desk.text(2, Column::Timing), "limits");
  EXPECT_TRUE(desk.text(2, Column::Time).contains("0.83"))
      << desk.text(2, Column::Time).toStdString();
  const QPoint from = desk.handle(2);
  desk.drag(from, QPoint(30, 2));
  EXPECT_EQ(desk.move(2).duration, 1.1);  // typed before, not touched
  desk.drag(desk.handle(2), QPoint(0, 30));
  EXPECT_LT(desk.move(2).travel, -1.41);
}

TEST_F(MovesTest, ACellTakesANumberWithItsUnit) {
  desk.typeInto(desk.table(), 0, Column::Angle, "0.25 rev");
  EXPECT_NEAR(desk.move(0).travel, 90 * kDegree, 1e-12);
  EXPECT_EQ(desk.steps.size(), 1u);
  EXPECT_EQ(desk.text(0, Column::Angle), QString::fromUtf8("0.25\u00a0rev"));
  desk.typeInto(desk.table(), 2, Column::Time, "800 ms");
  EXPECT_DOUBLE_EQ(desk.move(2).duration, 0.8);
  desk.typeInto(desk.table(), 2, Column::Name, "home");
  EXPECT_EQ(desk.move(2).name, "home");
  desk.typeInto(desk.table(), 2, Column::Repeats, "2");
  EXPECT_EQ(desk.move(2).repeats, 2);
}

TEST_F(MovesTest, AnEntryThatCannotBeReadIsNamedAndChangesNothing) {
  desk.typeInto(desk.table(), 0, Column::Time, "3 kg");  // stays open: nothing is lost
  EXPECT_EQ(QApplication::focusWidget()->objectName(), "cell.cycle.segments[0].duration");
  EXPECT_TRUE(remark()->text().contains("unit of mass")) << remark()->text().toStdString();
  QTest::mouseClick(&desk.curve(), Qt::LeftButton, {}, QPoint(5, 5));
  desk.table().setFocus();
  EXPECT_EQ(desk.move(0).duration, 1.6);
  EXPECT_TRUE(remark()->isVisibleTo(&desk.figure));
  EXPECT_TRUE(remark()->text().contains("unit of mass")) << remark()->text().toStdString();
}

TEST_F(MovesTest, EscapeGoesBackToWhatWasThere) {
  RowTable& table = desk.table();
  table.setFocus();
  table.setCurrentIndex(table.model()->index(0, Column::Time));
  QTest::keyClick(&table, Qt::Key_F2);
  QWidget* editor = QApplication::focusWidget();
  QTest::keyClick(editor, Qt::Key_A, Qt::ControlModifier);
  QTest::keyClicks(editor, "4");
  EXPECT_EQ(desk.move(0).duration, 4);  // the curve follows the typing
  QTest::keyClick(editor, Qt::Key_Escape);
  EXPECT_EQ(desk.move(0).duration, 1.6);
}

TEST_F(MovesTest, ACellThatDoesNotApplyCannotBeEdited) {
  const QModelIndex angle = desk.table().model()->index(1, Column::Angle);
  EXPECT_FALSE(desk.table().model()->flags(angle).testFlag(Qt::ItemIsEditable));
  EXPECT_EQ(angle.data().toString(), QString::fromUtf8("–"));
}

TEST_F(MovesTest, ToAnAngleIsTheSameMove) {
  RowTable& table = desk.table();
  table.setFocus();
  table.setCurrentIndex(table.model()->index(0, Column::Aim));
  QTest::keyClick(&table, Qt::Key_F2);
  EXPECT_EQ(desk.move(0).aim, MoveAim::To);
  EXPECT_NEAR(desk.move(0).target, -0.6 + 1.4, 1e-9);
  EXPECT_EQ(desk.steps.size(), 1u);
  QTest::keyClick(&table, Qt::Key_F2);
  EXPECT_EQ(desk.move(0).aim, MoveAim::By);
  EXPECT_NEAR(desk.move(0).travel, 1.4, 1e-9);
}

TEST_F(MovesTest, LimitsThatAreMissingAreNamedAndCanBeTypedThere) {
  RowTable& table = desk.table();
  table.setFocus();
  table.setCurrentIndex(table.model()->index(2, Column::Timing));
  QTest::keyClick(&table, Qt::Key_F2);
  EXPECT_EQ(desk.move(2).timing, MoveTiming::Limits);
  EXPECT_TRUE(remark()->text().contains("needs an acceleration limit"))
      << remark()->text().toStdString();
  auto* limit = desk.figure.findChild<QLineEdit*>("strip.cycle.accelerationLimit");
  ASSERT_NE(limit, nullptr);
  QTest::mouseClick(limit, Qt::LeftButton);
  QTest::keyClicks(limit, "9 rad/s^2");
  EXPECT_EQ(desk.project.cycle.accelerationLimit, 9);
  EXPECT_FALSE(remark()->isVisibleTo(&desk.figure));
  EXPECT_TRUE(desk.figure.findChild<QLineEdit*>("strip.cycle.segments[2].speedLimit")
                  ->isVisibleTo(&desk.figure));
}

TEST_F(MovesTest, RowsAndCurveShareTheChoice) {
  QTest::mouseClick(&desk.curve(), Qt::LeftButton, {}, desk.handle(2) - QPoint(20, 60));
  EXPECT_EQ(desk.table().chosenRows(), std::vector<int>{2});
  desk.table().chooseRows(0, 0);
  EXPECT_EQ(desk.table().currentIndex().row(), 0);
}

TEST_F(MovesTest, KeysWorkOnWholeRows) {
  RowTable& table = desk.table();
  table.setFocus();
  table.chooseRows(0, 0);
  QTest::keyClick(&table, Qt::Key_Space);
  EXPECT_TRUE(desk.move(0).disabled);
  QTest::keyClick(&table, Qt::Key_Space);
  EXPECT_FALSE(desk.move(0).disabled);
  QTest::keyClick(&table, Qt::Key_D, Qt::ControlModifier);
  ASSERT_EQ(desk.project.cycle.segments.size(), 5u);
  EXPECT_EQ(desk.move(1).name, "out");
  EXPECT_EQ(table.chosenRows(), std::vector<int>{1});
  QTest::keyClick(&table, Qt::Key_Down, Qt::AltModifier);
  EXPECT_EQ(desk.move(2).name, "out");
  EXPECT_EQ(table.chosenRows(), std::vector<int>{2});
  QTest::keyClick(&table, Qt::Key_Delete);
  ASSERT_EQ(desk.project.cycle.segments.size(), 4u);
  EXPECT_EQ(desk.move(1).name, "release");
  QTest::keyClick(&table, Qt::Key_Insert);
  EXPECT_EQ(desk.project.cycle.segments.size(), 5u);
  EXPECT_EQ(desk.text(3, Column::Time), "needed");
}

TEST_F(MovesTest, ClickingTheBoxSwitchesAMoveOff) {
  RowTable& table = desk.table();
  const QRect cell = table.visualRect(table.model()->index(1, Column::On));
  QTest::mouseClick(table.viewport(), Qt::LeftButton, {}, cell.center());
  QTest::mouseClick(table.viewport(), Qt::LeftButton, {}, cell.topLeft() + QPoint(10, 13));
  EXPECT_TRUE(desk.move(1).disabled || desk.steps.size() == 2u);
}

TEST_F(MovesTest, SeveralRowsAreOneStep) {
  desk.table().chooseRows(0, 2);
  desk.click("moves.block");
  EXPECT_EQ(desk.move(0).block, "A");
  EXPECT_EQ(desk.move(2).block, "A");
  EXPECT_EQ(desk.move(3).block, "");
  EXPECT_EQ(desk.steps.size(), 1u);
  desk.table().chooseRows(0, 2);
  desk.click("moves.block");
  EXPECT_EQ(desk.move(0).block, "");
  desk.table().chooseRows(1, 2);
  desk.click("moves.down");
  EXPECT_EQ(desk.move(1).name, "grip");
  EXPECT_EQ(desk.table().chosenRows(), (std::vector<int>{2, 3}));
}

TEST_F(MovesTest, ABrokenJoinIsMarkedAndNamed) {
  EXPECT_TRUE(desk.curve().marks().broken().empty());
  ASSERT_TRUE(setField(desk.project, "cycle.segments[0].law", "sinusoid"));
  desk.figure.showSnapshot(test::snapshotOf(desk.project));
  EXPECT_GE(desk.curve().marks().broken().size(), 2u);
  EXPECT_TRUE(remark()->text().contains("speed jumps")) << remark()->text().toStdString();
}

TEST_F(MovesTest, NoColumnIsClippedInTheSmallestWindow) {
  int width = 0;
  for (int k = 0; k < Column::Count; ++k) width += desk.table().columnWidth(k);
  EXPECT_LE(width, desk.table().viewport()->width());
  const QFontMetrics metrics(desk.table().font());
  for (const int column : {Column::Angle, Column::Time, Column::Payload, Column::Timing})
    for (int row = 0; row < 4; ++row)
      EXPECT_LE(metrics.horizontalAdvance(desk.text(row, column)) + 6,
                desk.table().columnWidth(column))
          << desk.text(row, column).toStdString();
}

TEST_F(MovesTest, AnEmptyCycleCanBeFilledFromHere) {
  desk.project.cycle.segments.clear();
  desk.figure.showSnapshot(test::snapshotOf(desk.project));
  EXPECT_TRUE(remark()->text().contains("no segments")) << remark()->text().toStdString();
  desk.table().setFocus();
  QTest::keyClick(&desk.table(), Qt::Key_Insert);
  EXPECT_EQ(desk.project.cycle.segments.size(), 1u);
}

// Rounding of a drag: steps of 1, 2 or 5 times a power of ten of the typed unit.
TEST(MoveEdits, DraggedTextIsRoundedToWhatCanBeSeen) {
  Project project = test::shoulder();
  const auto text = [&](const char* typed, double value, double step) {
    EXPECT_TRUE(setField(project, "cycle.segments[0].travel", typed));
    return moves::draggedText(*findField(project, "cycle.segments[0].travel"), value, step);
  };
  EXPECT_EQ(text("80", 1.4, 0.6 * kDegree), "80 deg");
  EXPECT_EQ(text("80", 1.4, 0.06 * kDegree), "80.2 deg");
  EXPECT_EQ(text("1.4 rad", 1.2345, 0.001), "1.235 rad");
  EXPECT_EQ(text("80", -1e-9, 0.6 * kDegree), "0 deg");
}

}  // namespace
}  // namespace jw

// The daily mix by mouse and keys; what it shows comes from the evaluation.
#include <QComboBox>
#include <QLabel>

#include "tests/gui/moves_support.h"

namespace jw {
namespace {

using test::CycleDesk;
using Column = MixTableModel::Column;

class MixPanelTest : public testing::Test {
 protected:
  MixPanelTest() { desk.project.cycle.name = "pick"; }

  RowTable& table() { return desk.figure.mix().table(); }
  QString text(int row, int column) {
    return table().model()->index(row, column).data().toString();
  }
  QString label(const char* name) { return desk.figure.findChild<QLabel*>(name)->text(); }

  /// Chooses from the list of a cell with the keyboard.
  void chooseUse(int row, int downs) {
    table().setFocus();
    table().setCurrentIndex(table().model()->index(row, Column::Use));
    QTest::keyClick(&table(), Qt::Key_F2);
    auto* box = qobject_cast<QComboBox*>(QApplication::focusWidget());
    ASSERT_NE(box, nullptr);
    QCoreApplication::processEvents();
    QWidget* list = box->view();
    for (int k = 0; k < downs; ++k) QTest::keyClick(list, Qt::Key_Down);
    QTest::keyClick(list, Qt::Key_Return);
    QTest::qWait(20);
  }

  CycleDesk desk{CycleFigure::Picture::Mix};
};

TEST_F(MixPanelTest, ACopyOfTheShownCycleIsAdded) {
  desk.click("mix.add");
  ASSERT_EQ(desk.project.otherCycles.size(), 1u);
  EXPECT_EQ(desk.project.otherCycles[0].segments.size(), 4u);
  EXPECT_EQ(table().currentIndex().row(), 1);
  EXPECT_TRUE(label("mix.day").contains("runs all day"));
}

TEST_F(MixPanelTest, SharesAndIdleTimeAreShown) {
  desk.click("mix.add");
  chooseUse(0, 2);  // share of the day
  EXPECT_EQ(desk.project.cycle.use, MixUse::Share);
  desk.typeInto(table(), 0, Column::Often, "40 %");
  chooseUse(1, 1);                                  // runs per hour
  desk.typeInto(table(), 1, Column::Often, "225");  // x 3.2 s = 20 % of the hour
  EXPECT_DOUBLE_EQ(desk.project.otherCycles[0].perHour, 225);
  EXPECT_TRUE(text(0, Column::Share).startsWith("40"))
      << text(0, Column::Share).toStdString();
  EXPECT_TRUE(text(1, Column::Share).startsWith("20"));
  EXPECT_TRUE(label("mix.day").contains("idle 40")) << label("mix.day").toStdString();
}

TEST_F(MixPanelTest, MoreThanTheDayIsNamed) {
  desk.click("mix.add");
  desk.project.cycle.use = desk.project.otherCycles[0].use = MixUse::Share;
  desk.project.cycle.dayShare = 0.9;
  desk.project.otherCycles[0].dayShare = 0.4;
  desk.figure.showSnapshot(test::snapshotOf(desk.project));
  EXPECT_TRUE(label("mix.error").contains("130")) << label("mix.error").toStdString();
}

TEST_F(MixPanelTest, ShowThisOneSwapsAndUndoes) {
  desk.click("mix.add");
  desk.typeInto(table(), 1, Column::Name, "clean");
  table().chooseRows(1, 1);
  desk.click("mix.show");
  EXPECT_EQ(desk.project.cycle.name, "clean");
  EXPECT_EQ(desk.project.otherCycles[0].name, "pick");
  desk.undo();
  EXPECT_EQ(desk.project.cycle.name, "pick");
}

TEST_F(MixPanelTest, ACycleIsDeletedButNotTheLast) {
  EXPECT_FALSE(desk.figure.findChild<QWidget*>("mix.delete")->isEnabled());
  desk.click("mix.add");
  table().chooseRows(1, 1);
  QTest::keyClick(&table(), Qt::Key_Delete);
  EXPECT_TRUE(desk.project.otherCycles.empty());
}

}  // namespace
}  // namespace jw

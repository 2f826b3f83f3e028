// Workings of headline figures in the window, and the cautions beside checks. The behaviour is the
// project's own.
#include <QMenu>
#include <QTest>
#include <QToolButton>

#include <gtest/gtest.h>

#include "core/checks/cautions.h"
#include "tests/gui/figures_support.h"
#include "widgets/panels/figure_menu.h"
#include "widgets/panels/working_panel.h"
#include "widgets/panels/working_text.h"

namespace jw {
namespace {

TEST(FigureMenu, ListsEveryFigureWithItsValue) {
  const Snapshot snapshot = test::snapshotOf(test::shoulder());
  FigureMenu menu;
  menu.showFigures(snapshot.evaluation.get());
  menu.showFigures(snapshot.evaluation.get());  // anew, not twice
  std::size_t count = 0;
  for (QMenu* family : menu.findChildren<QMenu*>()) count += std::size_t(family->actions().size());
  EXPECT_EQ(count, snapshot.evaluation->quantities.size());
  const auto* torque = menu.findChild<QAction*>("joint.torque_peak");
  ASSERT_NE(torque, nullptr);
  EXPECT_TRUE(torque->text().contains(QStringLiteral("N·m"))) << torque->text().toStdString();
}

TEST(WorkingPanel, ShowsTheWorkingOfAChosenFigureUntilAVerdictIsChosen) {
  const Snapshot snapshot = test::snapshotOf(test::shoulder());
  WorkingPanel panel;
  panel.showCheck(snapshot, "motor.speed", -1);
  auto* menu = panel.findChild<FigureMenu*>("working.figures.menu");
  ASSERT_NE(menu, nullptr);
  menu->showFigures(snapshot.evaluation.get());
  auto* figure = menu->findChild<QAction*>("chain.ratio");
  ASSERT_NE(figure, nullptr);
  figure->trigger();
  EXPECT_TRUE(panel.plainText().contains("Result = ")) << panel.plainText().toStdString();
  EXPECT_TRUE(panel.markdown().startsWith("### Ratio from motor to joint"));
  panel.showSnapshot(snapshot);
  EXPECT_TRUE(panel.plainText().contains("Result = ")) << "an edit keeps it";
  panel.showCheck(snapshot, "motor.speed", -1);
  EXPECT_TRUE(panel.plainText().contains("Demand = "));
}

TEST(WorkingPanel, CautionsStandBesideTheChecksThatTheyConcern) {
  const Snapshot snapshot = test::snapshotOf(test::shoulder());
  int cautions = 0;
  for (const Check& check : snapshot.evaluation->checks) {
    const Working working = explain(*snapshot.project, *snapshot.evaluation, check);
    EXPECT_EQ(working.caution, cautionOf(check.id));
    const QString caution = QString::fromStdString(working.caution);
    if (caution.isEmpty()) continue;
    ++cautions;
    EXPECT_EQ(workingPlain(check, working).count(caution), 1) << check.id;
    EXPECT_EQ(workingMarkdown(check, working).count(caution), 1) << check.id;
    EXPECT_TRUE(workingHtml(check, working, lightPalette()).contains(QStringLiteral("\u26a0")));
  }
  EXPECT_GE(cautions, 2);
}

TEST(Cautions, OfEachKindNameTheirStandard) {
  EXPECT_NE(cautionOf("joint.holding").find("Holding"), std::string_view::npos);
  EXPECT_NE(cautionOf("joint.stopping_angle").find("IEC 60204-1"), std::string_view::npos);
  EXPECT_NE(cautionOf("joint.collision").find("ISO/TS 15066"), std::string_view::npos);
  EXPECT_NE(cautionOf("motor.touch_temperature").find("ISO 13732-1"), std::string_view::npos);
  EXPECT_NE(cautionOf("supply.brake_resistor").find("resistor"), std::string_view::npos);
  EXPECT_NE(cautionOf("supply.voltage_rise").find("energy"), std::string_view::npos);
  EXPECT_TRUE(cautionOf("motor.speed").empty());
}

}  // namespace
}  // namespace jw

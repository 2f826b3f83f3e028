#include <cmath>

#include <gtest/gtest.h>

#include <QFontMetricsF>
#include <QSignalSpy>
#include <QTest>

#include "tests/gui/figures_support.h"
#include "widgets/panels/power_path.h"
#include "widgets/panels/verdict_delegate.h"
#include "widgets/panels/verdict_list.h"
#include "widgets/panels/working_panel.h"
#include "widgets/panels/working_text.h"
#include "widgets/theme/theme.h"

namespace jw {
namespace {

Check checkOf(const char* id, CheckState state, double demand, double capacity) {
  Check check;
  check.id = id;
  check.title = id;
  check.state = state;
  check.demand = demand;
  check.capacity = capacity;
  check.margin = capacity / demand - 1;
  check.quantity = Quantity::Torque;
  check.unit = "N*m";
  return check;
}

Snapshot withChecks(std::vector<Check> checks) {
  Snapshot snapshot = test::snapshotOf(test::shoulder());
  auto evaluation = std::make_shared<Evaluation>(*snapshot.evaluation);
  evaluation->checks = std::move(checks);
  snapshot.evaluation = evaluation;
  return snapshot;
}

Check openCheck() {
  Check check = checkOf("open", CheckState::Open, NAN, NAN);
  check.missing = {"motor.brakeTorque"};
  return check;
}

Snapshot mixed() {
  return withChecks(
      {checkOf("ample", CheckState::Holds, 1, 3), checkOf("short", CheckState::Short, 2, 1),
       openCheck(), checkOf("scant", CheckState::Holds, 1, 1.2),
       checkOf("close", CheckState::Close, 1, 1.05), checkOf("shorter", CheckState::Short, 4, 1)});
}

TEST(VerdictRows, StandWorstFirst) {
  QStringList ids;
  for (const VerdictRow& row : verdictRows(mixed())) ids << row.id;
  EXPECT_EQ(ids.join(' '), "shorter short close open scant ample");
}

TEST(VerdictRows, SayDemandAndCapacityInWords) {
  Check life = checkOf("life", CheckState::Short, 7000 * 3600.0, 4830 * 3600.0);
  life.quantity = Quantity::Time;
  life.unit = "h";
  life.capacityIsResult = true;
  const auto rows =
      verdictRows(withChecks({life, checkOf("torque", CheckState::Holds, 0.88, 1.6)}));
  EXPECT_EQ(rows[0].amounts, QStringLiteral("4\u2009830, wanted 7\u2009000 h"));
  EXPECT_EQ(rows[0].marginText, QStringLiteral("−31 %")) << "4830 / 7000 - 1";
  EXPECT_EQ(rows[1].amounts, QStringLiteral("0.88 of 1.6 N·m"));
  EXPECT_EQ(rows[1].sentence, QStringLiteral("torque, holds: 0.88 of 1.6 N·m, margin +82 %"));
}

TEST(VerdictRows, CountTheStates) {
  EXPECT_EQ(verdictCounts(verdictRows(mixed())),
            QStringLiteral("2 short · 1 close · 1 open · 2 hold"));
  EXPECT_EQ(verdictCounts({}), "");
}

TEST(VerdictList, AnOpenVerdictLeadsToItsField) {
  VerdictList list;
  list.resize(280, 400);
  list.showSnapshot(mixed());
  QSignalSpy asked(&list, &VerdictList::fieldRequested);
  auto* view = list.findChild<QListView*>("verdicts.list");
  const QModelIndex open = list.model().index(3);
  EXPECT_TRUE(list.model().row(3).amounts.startsWith("needs "));
  QTest::mouseClick(view->viewport(), Qt::LeftButton, {}, view->visualRect(open).center());
  EXPECT_EQ(asked.value(0).value(0).toString(), "motor.brakeTorque");
}

TEST(VerdictList, TheChosenCheckStaysChosenWhereverItMoves) {
  VerdictList list;
  list.showSnapshot(mixed());
  list.select("close", -1);
  QSignalSpy chosen(&list, &VerdictList::checkSelected);
  list.showSnapshot(withChecks(
      {checkOf("close", CheckState::Holds, 1, 9), checkOf("short", CheckState::Short, 2, 1)}));
  auto* view = list.findChild<QListView*>("verdicts.list");
  EXPECT_EQ(list.model().row(view->currentIndex().row()).id, "close");
  EXPECT_EQ(chosen.count(), 0) << "nobody chose anything";
  QTest::keyClick(view, Qt::Key_Up);
  EXPECT_EQ(chosen.value(0).value(0).toString(), "short");
}

TEST(VerdictList, ScreenReadersGetASentence) {
  VerdictList list;
  list.showSnapshot(mixed());
  EXPECT_TRUE(list.model().index(0).data(Qt::AccessibleTextRole).toString().contains("short"));
}

TEST(VerdictGeometry, PartsOfARowDoNotOverlap) {
  const VerdictGeometry g = verdictGeometry(QRectF(0, 0, 280, 38));
  EXPECT_FALSE(g.title.intersects(g.margin));
  EXPECT_FALSE(g.bar.intersects(g.amounts));
  EXPECT_FALSE(g.bar.intersects(g.title));
  EXPECT_FALSE(g.depends.intersects(g.amounts));
  EXPECT_FALSE(g.depends.intersects(g.bar));
  EXPECT_LT(marginPosition(g, -0.2), g.zero);
  EXPECT_GT(marginPosition(g, 0.2), g.zero);
  EXPECT_DOUBLE_EQ(marginPosition(g, INFINITY), g.bar.right());
}

std::vector<QRectF> textRects(const PowerPathCanvas& canvas) {
  std::vector<QRectF> rects;
  const auto& layout = canvas.pathLayout();
  for (std::size_t i = 0; i < layout.cards.size(); ++i)
    for (const CardLine& line : cardLines(canvas.stations()[i], layout.cards[i])) {
      const QFontMetricsF metrics(line.strong ? titleFont() : textFont(11));
      EXPECT_LE(metrics.horizontalAdvance(line.text), line.rect.width() + 0.01)
          << line.text.toStdString();
      EXPECT_FALSE(line.text.contains(u'…')) << line.text.toStdString();
      rects.push_back(
          QRectF(line.rect.topLeft(), QSizeF(metrics.horizontalAdvance(line.text), 14)));
    }
  for (const CardLine& label : flowLabels(canvas.stations(), layout, 1000)) {
    const double width = QFontMetricsF(textFont(11)).horizontalAdvance(label.text);
    rects.push_back(QRectF(label.rect.center().x() - width / 2, label.rect.top(), width, 14));
  }
  return rects;
}

class PowerPathAt1280 : public ::testing::TestWithParam<int> {};

TEST_P(PowerPathAt1280, TextsNeitherOverlapNorAreCut) {
  PowerPath path;
  path.resize(1264, 132);
  path.showSnapshot(test::snapshotOf(test::shoulder(GetParam())));
  EXPECT_LE(path.canvas().neededWidth(), 1264);
  const auto rects = textRects(path.canvas());
  EXPECT_GT(rects.size(), 12U);
  for (std::size_t i = 0; i < rects.size(); ++i) {
    EXPECT_TRUE(QRectF(0, 0, 1264, kPowerRowHeight).contains(rects[i]));
    for (std::size_t k = 0; k < i; ++k)
      EXPECT_FALSE(rects[i].intersects(rects[k])) << i << " on " << k;
  }
}

INSTANTIATE_TEST_SUITE_P(Stages, PowerPathAt1280, ::testing::Values(0, 1, 2, 3));

TEST(PowerPath, ManyStagesScroll) {
  PowerPath path;
  path.resize(1000, 132);
  path.showSnapshot(test::snapshotOf(test::shoulder(6)));
  EXPECT_GT(path.canvas().neededWidth(), 1000);
  EXPECT_GE(path.canvas().width(), path.canvas().neededWidth());
}

TEST(PowerPath, StationsAreButtonsForMouseAndKeyboard) {
  PowerPath path;
  path.resize(1264, 132);
  path.showSnapshot(test::snapshotOf(test::shoulder()));
  path.show();
  QSignalSpy clicked(&path, &PowerPath::stationClicked);
  auto* motor = path.findChild<StationCard*>("station.motor");
  auto* drive = path.findChild<StationCard*>("station.transmission[1]");
  ASSERT_TRUE(motor && drive);
  EXPECT_EQ(drive->accessibleName(), QStringLiteral("Strain wave 100 : 1"));
  QTest::mouseClick(motor, Qt::LeftButton);
  QTest::keyClick(drive, Qt::Key_Return);
  EXPECT_EQ(clicked.value(0).value(0).toString(), "motor");
  EXPECT_EQ(clicked.value(1).value(0).toString(), "transmission[1]");
}

TEST(PowerPath, FollowsTheCursorOnlyWhenAsked) {
  PowerPath path;
  path.resize(1264, 132);
  path.showSnapshot(test::snapshotOf(test::shoulder()));
  const QString mean = path.canvas().stations()[2].first;
  path.setCursorTime(0.8);
  EXPECT_EQ(path.canvas().stations()[2].first, mean);
  path.setAtCursor(true);
  EXPECT_NE(path.canvas().stations()[2].first, mean);
}

TEST(PowerPath, NamesTheStationsOfAnUnfinishedProject) {
  PowerPath path;
  Project project;
  project.active().transmission.emplace_back();
  path.showSnapshot(test::snapshotOf(project));
  ASSERT_EQ(path.canvas().stations().size(), 5U);
  EXPECT_FALSE(path.canvas().stations()[2].powerKnown);
  path.grab();
}

Working lifeWorking() {
  Working working;
  working.formula = "L = L_r · (T_r / T_av)^3";
  working.symbols = {
      {"L_r", "Rated life", 7000 * 3600.0, Quantity::Time, "h", "typed",
       "transmission[1].ratedLife"},
      {"T_av", "Average torque", 61.2, Quantity::Torque, "N*m", "from the cycle", ""}};
  working.result = "L = 4 830 h: short of 7 000 h by 31 %";
  working.source = "ISO 281";
  return working;
}

TEST(WorkingText, SetsFormulaValuesAndLinks) {
  const QString html =
      workingHtml(checkOf("life", CheckState::Short, 2, 1), lifeWorking(), lightPalette());
  EXPECT_TRUE(html.contains("L<sub>r</sub> · (T<sub>r</sub> / T<sub>av</sub>)<sup>3</sup>"));
  EXPECT_TRUE(html.contains("field:transmission[1].ratedLife"));
  EXPECT_TRUE(html.contains(QStringLiteral("7\u2009000")));
  EXPECT_TRUE(html.contains(QStringLiteral("■"))) << "the state has its shape";
}

TEST(WorkingText, CopiesAsMarkdownAndPlainText) {
  const Check check = checkOf("Drive life", CheckState::Short, 2, 1);
  EXPECT_TRUE(workingMarkdown(check, lifeWorking())
                  .contains(QStringLiteral("| L_r | Rated life | 7\u2009000 h | typed |")));
  EXPECT_TRUE(workingPlain(check, lifeWorking()).contains(QStringLiteral("T_av = 61.2 N·m")));
}

TEST(WorkingPanel, ShowsEveryCheckOfAProject) {
  const Snapshot snapshot = test::snapshotOf(test::shoulder());
  WorkingPanel panel;
  ASSERT_FALSE(snapshot.evaluation->checks.empty());
  for (const Check& check : snapshot.evaluation->checks) {
    panel.showCheck(snapshot, QString::fromUtf8(check.id.data(), qsizetype(check.id.size())),
                    check.stage);
    EXPECT_FALSE(panel.plainText().isEmpty()) << check.id;
    EXPECT_TRUE(panel.markdown().startsWith("### ")) << check.id;
  }
  panel.showCheck(snapshot, "none", -1);
  EXPECT_TRUE(panel.plainText().isEmpty());
}

}  // namespace
}  // namespace jw

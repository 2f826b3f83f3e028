// The Families figure against core's own comparison; weights by hand.
#include "widgets/figures/families_figure.h"

#include <algorithm>
#include <cmath>

#include <gtest/gtest.h>

#include <QElapsedTimer>
#include <QFile>
#include <QSignalSpy>
#include <QTemporaryDir>

#include "tests/gui/search_support.h"
#include "widgets/figures/figure_export.h"
#include "widgets/theme/number_text.h"

namespace jw {
namespace {

class FamiliesFigureTest : public ::testing::Test {
 protected:
  FamiliesFigureTest() {
    figure.resize(660, 560);
    figure.show();
  }
  void showAndWait(const Snapshot& shown) {
    figure.showSnapshot(shown);
    ASSERT_TRUE(
        QTest::qWaitFor([&] { return figure.isUpToDate() && !figure.isWorking(); }, 60'000));
  }
  QTableView& table() { return *figure.findChild<QTableView*>("families.table"); }
  QString state() { return figure.findChild<QLabel*>("families.state")->text(); }
  int rowOf(const std::string& key) {
    const auto& rows = figure.table().table().rows;
    for (std::size_t k = 0; k < rows.size(); ++k)
      if (rows[k].key == key) return int(k);
    ADD_FAILURE() << "no row " << key;
    return -1;
  }
  void weigh(const std::string& key, const char* weight) {
    auto& model = *table().model();
    model.setData(model.index(rowOf(key), FamilyTableModel::kWeight), weight, Qt::EditRole);
  }
  Snapshot snapshot = test::studied(test::searchedJoint());
  FamiliesFigure figure;
};

TEST_F(FamiliesFigureTest, ShowsWhatTheStudyFinds) {
  showAndWait(snapshot);
  const FamilyStudy plain = compareFamilies(bundledFamilies(snapshot.project), {});
  const FamilyTable& shown = figure.table().table();
  ASSERT_EQ(shown.columns.size(), qsizetype(plain.choices.size()) + 1);
  const FamilyRow& mass = shown.rows[std::size_t(rowOf("mass"))];
  for (std::size_t k = 0; k < plain.choices.size(); ++k) {
    const FamilyChoice& choice = plain.choices[k];
    const QString expected = choice.found ? numberText(choice.stage.mass) : QStringLiteral("–");
    EXPECT_EQ(mass.cells[k + 1].text, expected) << k;
  }
  for (const FamilyRow& row : shown.rows) {
    if (row.kind == FamilyRow::Kind::Group) continue;
    EXPECT_EQ(qsizetype(row.cells.size()), shown.columns.size());
    for (const FamilyCell& cell : row.cells) {
      EXPECT_TRUE(std::isnan(cell.bar) || (cell.bar >= 0 && cell.bar <= 1));
    }
  }
  EXPECT_TRUE(state().contains("invented"));
}

TEST_F(FamiliesFigureTest, MarksTheBestOfEachRow) {
  showAndWait(snapshot);
  for (const FamilyProperty& property : familyProperties()) {
    const FamilyRow& row =
        figure.table().table().rows[std::size_t(rowOf(std::string(property.key)))];
    double best = kUnset;
    for (const FamilyChoice& one : figure.study()->choices) {
      const double value = canDoIt(one) ? property.value(one) : kUnset;
      if (!std::isfinite(value) || property.better == 0) continue;
      if (std::isnan(best) || property.better * value > property.better * best) best = value;
    }
    for (std::size_t k = 0; k < figure.study()->choices.size(); ++k) {
      const FamilyChoice& one = figure.study()->choices[k];
      const bool isBest = canDoIt(one) && property.value(one) == best;
      EXPECT_EQ(row.cells[k + 1].best, isBest) << property.key << " " << k;
    }
  }
}

// Two weights: each term is weight x share, the sum is over all weights.
TEST_F(FamiliesFigureTest, TheWeightedOrderShowsItsTerms) {
  showAndWait(snapshot);
  auto& terms = *figure.findChild<QLabel*>("families.terms");
  EXPECT_FALSE(terms.isVisible());
  QTest::mouseClick(figure.findChild<QToolButton*>("families.weights"), Qt::LeftButton);
  weigh("mass", "3");
  weigh("efficiency", "1");
  ASSERT_TRUE(terms.isVisible());
  EXPECT_TRUE(terms.text().contains("3 × ")) << terms.text().toStdString();
  const FamilyStudy& study = *figure.study();
  std::vector<double> mass, efficiency;
  std::vector<std::size_t> found;
  for (std::size_t k = 0; k < study.choices.size(); ++k) {
    if (!study.choices[k].found) continue;
    found.push_back(k);
    mass.push_back(study.choices[k].stage.mass);
    efficiency.push_back(study.choices[k].efficiency);
  }
  const auto light = sharesOfBest(mass, -1);
  const auto good = sharesOfBest(efficiency, 1);
  for (const WeightedFamily& one : weightedOrder(study)) {
    const auto at = std::size_t(std::find(found.begin(), found.end(), one.choice) - found.begin());
    EXPECT_NEAR(one.sum, (3 * light[at] + good[at]) / 4, 1e-12);
    EXPECT_EQ(one.terms.size(), 2);
  }
  weigh("mass", "-1");
  EXPECT_TRUE(state().contains("below 0")) << state().toStdString();
  weigh("mass", "heavy");
  EXPECT_TRUE(state().startsWith("Weight: "));
}

TEST_F(FamiliesFigureTest, WorksOnlyInFrontAndCanBeCancelled) {
  figure.hide();
  figure.showSnapshot(snapshot);
  QTest::qWait(50);
  EXPECT_FALSE(figure.isWorking());
  EXPECT_EQ(figure.study(), nullptr);
  figure.show();
  EXPECT_TRUE(figure.isWorking());
  QTest::mouseClick(figure.findChild<QPushButton*>("families.cancel"), Qt::LeftButton);
  EXPECT_FALSE(figure.isWorking());
  EXPECT_TRUE(state().contains("cancelled"));
  Project heavier = *snapshot.project;
  heavier.load.payloadMass *= 1.1;
  showAndWait(test::snapshotOf(heavier));  // the next edit starts it again
  EXPECT_EQ(figure.study()->question.project->load.payloadMass, heavier.load.payloadMass);
}

TEST_F(FamiliesFigureTest, KeepsTheOldWhileTheNextIsWorkedOut) {
  showAndWait(snapshot);
  Project heavier = *snapshot.project;
  heavier.load.payloadMass *= 1.1;
  const Snapshot after = test::snapshotOf(heavier);
  figure.showSnapshot(after);
  EXPECT_TRUE(figure.isWorking());
  EXPECT_FALSE(figure.table().table().rows.empty());
  EXPECT_TRUE(state().contains("before the last edit"));
  Snapshot exported = after;
  figure.addStudies(exported);
  EXPECT_EQ(exported.families, nullptr);
  showAndWait(after);
  figure.addStudies(exported);
  EXPECT_NE(exported.families, nullptr);
}

TEST_F(FamiliesFigureTest, AdoptsTheChosenFamilyAsOneStep) {
  showAndWait(snapshot);
  QSignalSpy edits(&figure, &Figure::editRequested);
  auto& adopt = *figure.findChild<QPushButton*>("families.adopt");
  EXPECT_FALSE(adopt.isEnabled());
  std::size_t chosen = 0;
  while (!figure.study()->choices[chosen].found) ++chosen;
  table().setCurrentIndex(
      table().model()->index(1, FamilyTableModel::kFirstChoice + 1 + int(chosen)));
  ASSERT_TRUE(adopt.isEnabled());
  QTest::mouseClick(&adopt, Qt::LeftButton);
  ASSERT_EQ(edits.size(), 1);
  Project project = *snapshot.project;
  ASSERT_TRUE(edits[0][0].value<Edit>().apply(project));
  EXPECT_EQ(project.variants.size(), 2U);
  EXPECT_EQ(designPoint(evaluate(project)).worst, figure.study()->choices[chosen].point.worst);
}

TEST_F(FamiliesFigureTest, TakesRulesAndColumnsOfOnesOwn) {
  QTemporaryDir folder;
  QFile file(folder.filePath("rules.csv"));
  ASSERT_TRUE(file.open(QIODevice::WriteOnly));
  file.write("family,torquePerMass [N*m],own:price [EUR]\ncycloidal,70,900\n");
  file.close();
  showAndWait(snapshot);
  const double before = figure.study()->choices[1].stage.mass;
  ASSERT_TRUE(figure.rules().open(file.fileName()));
  ASSERT_TRUE(QTest::qWaitFor([&] { return figure.isUpToDate(); }, 60'000));
  const FamilyChoice& cycloidal = figure.study()->choices[1];
  ASSERT_EQ(cycloidal.family, StageFamily::Cycloidal);
  EXPECT_NEAR(cycloidal.stage.ratedTorque / cycloidal.stage.mass, 70, 1e-9);
  EXPECT_LT(cycloidal.stage.mass, before);
  EXPECT_FALSE(state().contains("invented"));
  const FamilyRow& last = figure.table().table().rows.back();
  EXPECT_EQ(last.title, "price [EUR]");
  EXPECT_EQ(last.cells[2].text, "900");
}

TEST_F(FamiliesFigureTest, ComparesTheReducersOfACatalogue) {
  figure.findChild<QComboBox*>("families.source")->setCurrentIndex(1);
  showAndWait(snapshot);
  const auto& parts = bundledCatalogue(CatalogueKind::Reducers)->reducers;
  for (const FamilyChoice& choice : figure.study()->choices) {
    if (!choice.found) continue;
    EXPECT_TRUE(std::any_of(parts.begin(), parts.end(),
                            [&](const Stage& part) { return part.name == choice.stage.name; }));
  }
}

TEST_F(FamiliesFigureTest, TheMapHasAPointForEachFamilyOnItsOwnAxes) {
  showAndWait(snapshot);
  QTest::mouseClick(figure.findChild<QToolButton*>("families.map"), Qt::LeftButton);
  EXPECT_EQ(figure.exportName(), "familymap");
  const LineChart& chart = figure.map().plot().chart();
  std::size_t found = 1;  // the present design
  for (const FamilyChoice& one : figure.study()->choices) found += one.found ? 1 : 0;
  EXPECT_EQ(chart.points.size(), found);
  for (const ChartPoint& point : chart.points) {
    EXPECT_TRUE(point.at.x() >= chart.x.low && point.at.x() <= chart.x.high);
    EXPECT_TRUE(point.at.y() >= chart.y.low && point.at.y() <= chart.y.high);
  }
  EXPECT_TRUE(chart.x.title.contains("kg"));
}

TEST_F(FamiliesFigureTest, ADirectDriveIsComparedWithAReducerOfEachFamily) {
  Project direct = *snapshot.project;
  direct.active().transmission.clear();
  showAndWait(test::studied(direct));
  EXPECT_FALSE(figure.study()->present) << "no reducer is there";
  EXPECT_EQ(figure.study()->choices.size(), defaultFamilyRules().size());
  const FamilyRow& verdicts = figure.table().table().rows[1];
  EXPECT_EQ(verdicts.cells.front().text, "–");
}

// In the smallest window the figures' column is some 560 pixels wide.
TEST_F(FamiliesFigureTest, FitsANarrowColumn) {
  showAndWait(snapshot);
  EXPECT_LE(figure.minimumSizeHint().width(), 560);
}

TEST(FamiliesExport, ComputesWhatIsNotThereAndPrintsTheSameAgain) {
  const Snapshot snapshot = test::studied(test::searchedJoint());
  Snapshot given = snapshot;
  QElapsedTimer clock;
  clock.start();
  given.families = std::make_shared<const FamilyStudy>(
      compareFamilies(bundledFamilies(snapshot.evaluatedProject), {}));
  ::testing::Test::RecordProperty("compareMs", std::to_string(clock.elapsed()));
  ExportOptions options;
  options.dpi = 96;
  for (const char* name : {"families", "familymap"}) {
    EXPECT_EQ(figureImage(snapshot, name, options), figureImage(given, name, options)) << name;
  }
}

TEST_F(FamiliesFigureTest, StandsInForTheStageThatIsChosen) {
  const Snapshot shown = snapshot;  // a belt and a reducer
  ASSERT_EQ(shown.project->active().transmission.front().family, StageFamily::Belt);
  showAndWait(shown);
  auto& stages = *figure.findChild<QComboBox*>("families.stage");
  EXPECT_TRUE(stages.isVisible());
  ASSERT_EQ(stages.count(), 2);
  EXPECT_EQ(stages.currentIndex(), 1) << "the larger ratio";
  stages.setCurrentIndex(0);
  emit stages.activated(0);
  showAndWait(shown);
  FamilyQuestion asked = bundledFamilies(shown.project);
  asked.request.stage = 0;
  const FamilyStudy plain = compareFamilies(asked, {});
  ASSERT_TRUE(plain.present);
  EXPECT_EQ(plain.present->family, StageFamily::Belt);
  for (std::size_t k = 0; k < plain.choices.size(); ++k) {
    ASSERT_EQ(figure.study()->choices[k].found, plain.choices[k].found) << k;
    EXPECT_EQ(figure.study()->choices[k].stage.ratio, plain.choices[k].stage.ratio) << k;
  }
  Project one = *snapshot.project;
  one.active().transmission.erase(one.active().transmission.begin());
  stages.setCurrentIndex(1);
  emit stages.activated(1);
  showAndWait(test::studied(one));  // nothing to choose, and what was chosen is gone
  EXPECT_FALSE(stages.isVisible());
  EXPECT_EQ(figure.study()->question.request.stage, -1);
}

}  // namespace
}  // namespace jw

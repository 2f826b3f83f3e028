// The Tolerance figure: draws as they come, what is chosen, and that it lets go at once. The
// numbers are those of tolerance(), which has tests of its own.
#include "widgets/figures/tolerance_figure.h"

#include <gtest/gtest.h>
#include <QElapsedTimer>
#include <QtTest>

#include "core/model/band.h"
#include "tests/core/checks/example_project.h"
#include "tests/gui/figures_support.h"

namespace jw::test {
namespace {

constexpr int kPatience = 20'000;  // [ms]

Snapshot bandedSnapshot() {
  Project project = exampleProject(600);
  EXPECT_TRUE(setBand(project, "load.payloadMass", "± 10 %"));
  EXPECT_TRUE(setBand(project, "motor.rotorInertia", "± 20 % normal"));
  Snapshot snapshot;
  snapshot.evaluatedProject = snapshot.project = std::make_shared<const Project>(project);
  snapshot.evaluation = std::make_shared<const Evaluation>(evaluate(project));
  return snapshot;
}

class ToleranceFigureTest : public testing::Test {
 protected:
  ToleranceFigureTest() {
    figure.resize(700, 560);
    figure.show();
    part<QComboBox>("tolerance.draws").setCurrentIndex(0);
  }

  template <class T>
  T& part(const char* name) {
    T* found = figure.findChild<T*>(name);
    if (found == nullptr) throw std::runtime_error(std::string("no part ") + name);
    return *found;
  }

  void show(const Snapshot& snapshot) { figure.showSnapshot(snapshot); }
  bool settle() {
    return QTest::qWaitFor([this] { return !figure.isBusy(); }, kPatience);
  }

  ToleranceFigure figure;
};

TEST_F(ToleranceFigureTest, WithoutABandItTellsHowToGiveOne) {
  Snapshot snapshot = bandedSnapshot();
  const Project plain = exampleProject(600);
  snapshot.evaluatedProject = snapshot.project = std::make_shared<const Project>(plain);
  show(snapshot);
  EXPECT_FALSE(figure.isBusy());
  EXPECT_TRUE(part<QLabel>("figure.notice").text().contains("± 5 %"));
  EXPECT_FALSE(figure.result());
}

TEST_F(ToleranceFigureTest, DrawsByItselfAndShowsWhatToleranceFinds) {
  const Snapshot snapshot = bandedSnapshot();
  show(snapshot);
  ASSERT_TRUE(figure.isBusy());
  ASSERT_TRUE(settle());
  ASSERT_TRUE(figure.result());
  ToleranceRequest request;
  request.draws = 1000;
  const Tolerance own = tolerance(*snapshot.evaluatedProject, request).value();
  EXPECT_EQ(figure.result()->draws, 1000u);
  EXPECT_EQ(figure.result()->worst.margin, own.worst.margin);
  const auto& rows = figure.chances().view().rows;
  ASSERT_EQ(rows.size(), own.checks.size() + 1);
  EXPECT_EQ(rows[0].holds.share, own.worst.holds.share);
  EXPECT_FALSE(figure.envelope().plot().view().reach.empty());
  Snapshot paper = snapshot;
  figure.addStudies(paper);
  EXPECT_EQ(paper.tolerance, figure.result());
}

TEST_F(ToleranceFigureTest, LeastCertainFirst) {
  show(bandedSnapshot());
  ASSERT_TRUE(settle());
  const auto& rows = figure.chances().view().rows;
  for (std::size_t k = 2; k < rows.size(); ++k) {
    if (std::isnan(rows[k].holds.share)) continue;
    EXPECT_GE(rows[k].holds.share, rows[k - 1].holds.share) << rows[k].title.toStdString();
  }
}

TEST_F(ToleranceFigureTest, AChosenVerdictIsShownInFull) {
  show(bandedSnapshot());
  ASSERT_TRUE(settle());
  auto& table = part<ChanceTable>("tolerance.chances");
  table.setFocus();
  QTest::keyClick(&table, Qt::Key_Down);
  QTest::keyClick(&table, Qt::Key_Down);
  const QString title = table.view().rows[2].title;
  QTest::keyClick(&table, Qt::Key_Return);
  EXPECT_EQ(figure.exportName(), "distribution");
  EXPECT_EQ(figure.distribution().plot().chart().title, title);
  EXPECT_EQ(figure.tornado().view().title, title);
  EXPECT_EQ(part<QComboBox>("tolerance.verdict").currentText(), title);
}

TEST_F(ToleranceFigureTest, SharesOfTheHistogramAreAllDraws) {
  show(bandedSnapshot());
  ASSERT_TRUE(settle());
  const LineChart& chart = figure.distribution().plot().chart();
  ASSERT_FALSE(chart.lines.empty());
  double sum = 0;  // each bin stands between two points of one height
  for (qsizetype k = 1; k + 2 < chart.lines[0].x.size(); k += 2) sum += chart.lines[0].y[k];
  EXPECT_NEAR(sum, 100, 1e-9);
  for (const ChartLine& line : chart.lines)
    for (const double y : line.y) EXPECT_TRUE(std::isfinite(y));
}

TEST_F(ToleranceFigureTest, CancelLetsGoWithin50Milliseconds) {
  auto& draws = part<QComboBox>("tolerance.draws");
  draws.setCurrentIndex(draws.count() - 1);  // 100,000: half a minute
  show(bandedSnapshot());
  ASSERT_TRUE(QTest::qWaitFor([this] { return figure.result() != nullptr; }, kPatience));
  QElapsedTimer timer;
  timer.start();
  QTest::mouseClick(&part<QToolButton>("tolerance.run"), Qt::LeftButton);
  EXPECT_FALSE(figure.isBusy());
  EXPECT_LT(timer.elapsed(), 50);
  const std::size_t shown = figure.result()->draws;
  QTest::qWait(100);
  EXPECT_EQ(figure.result()->draws, shown);
  EXPECT_TRUE(part<QLabel>("tolerance.status").text().startsWith("given up"));
  QElapsedTimer ending;  // the threads themselves end with the draw at work
  ending.start();
  draws.setCurrentIndex(0);
  QTest::mouseClick(&part<QToolButton>("tolerance.run"), Qt::LeftButton);
  ASSERT_TRUE(QTest::qWaitFor([&] { return figure.result()->draws <= 1000; }, kPatience));
}

TEST_F(ToleranceFigureTest, AnotherProjectIsDrawnAnewAndTheOldOneDimmed) {
  show(bandedSnapshot());
  ASSERT_TRUE(settle());
  const auto before = figure.result();
  show(bandedSnapshot());
  EXPECT_TRUE(figure.isBusy());
  EXPECT_EQ(figure.result(), before);  // stays on the screen
  Snapshot paper = bandedSnapshot();
  figure.addStudies(paper);
  EXPECT_FALSE(paper.tolerance);  // but is not taken for that of another project
  ASSERT_TRUE(settle());
  EXPECT_NE(figure.result(), before);
}

}  // namespace
}  // namespace jw::test

// The Ratio figure. Where no source stands beside a check, the expectation is the figure's own
// contract or follows from the core's study, which has tests of its own.
#include "widgets/figures/ratio_figure.h"

#include <cmath>

#include <QElapsedTimer>

#include "tests/gui/heat_support.h"
#include "tests/gui/support.h"
#include "widgets/figures/figure_export.h"

namespace jw {
namespace {

constexpr int kPatience = 20'000;  // [ms]

void expectFinite(const LineChart& chart) {
  for (const ChartLine& line : chart.lines) {
    EXPECT_EQ(line.x.size(), line.y.size());
    for (const double x : line.x) EXPECT_TRUE(std::isfinite(x));
    for (const double y : line.y) EXPECT_FALSE(std::isinf(y));  // NaN is a gap
  }
  EXPECT_LT(chart.x.low, chart.x.high);
  EXPECT_LT(chart.y.low, chart.y.high);
}

RatioView viewOf(const Snapshot& snapshot) {
  const auto request = usualRatioSweep(*snapshot.project, *snapshot.evaluation);
  return ratioView(std::make_shared<const RatioSweep>(*ratioSweep(*snapshot.project, *request)),
                   *snapshot.project);
}

TEST(MarginChart, CutsCurvesOnTheEdge) {
  QVector<double> x{0, 1, 2}, y{100, 300, -500};
  cutCurve(x, y, -100, 200);
  // On straight lines: 200 is met half way up, and at 1 + 100/800 and 1 + 400/800 on the way down.
  ASSERT_EQ(x.size(), 4);
  EXPECT_DOUBLE_EQ(x[1], 0.5);
  EXPECT_DOUBLE_EQ(y[1], 200);
  EXPECT_TRUE(std::isnan(y[2]));
  EXPECT_TRUE(std::isnan(y[3]));
}

TEST(MarginChart, TakesGapsForWhatIsNotFinite) {
  QVector<double> x{0, 1, 2, 3}, y{10, std::nan(""), INFINITY, 20};
  cutCurve(x, y, -100, 200);
  EXPECT_EQ(x.size(), 4);
  EXPECT_TRUE(std::isnan(y[1]) && std::isnan(y[2]));
}

TEST(RatioView, NamesTheLimitsAndMarksOfTheSweep) {
  const Snapshot snapshot = test::studied(test::warmShoulder());
  const RatioView view = viewOf(snapshot);
  expectFinite(view.chart);
  EXPECT_TRUE(view.chart.x.logarithmic);
  ASSERT_EQ(view.ends.size(), 2 * view.sweep->bands.size());
  for (std::size_t k = 0; k < view.sweep->bands.size(); ++k) {
    EXPECT_DOUBLE_EQ(view.ends[2 * k].ratio, view.sweep->bands[k].low.ratio);
    EXPECT_DOUBLE_EQ(view.ends[2 * k + 1].ratio, view.sweep->bands[k].high.ratio);
  }
  for (const RatioMark& mark : view.marks) EXPECT_FALSE(mark.name.isEmpty());
  EXPECT_DOUBLE_EQ(view.present, 150);  // 1.5 · 100, the two stages of the invented joint
}

TEST(RatioView, SaysWhereItCannotBeEvaluated) {
  Project project = test::warmShoulder();
  Stage& stage = project.active().transmission[1];
  // All that the catalogue's efficiency loses at rated torque, at a ratio of 130.
  stage.dragTorque = stage.ratedTorque * (1 / stage.efficiency - 1) / 130;
  const RatioView view = viewOf(test::studied(project));
  expectFinite(view.chart);
  const QString said = view.chart.remark + view.chart.warning;
  EXPECT_TRUE(said.contains("cannot be evaluated from")) << said.toStdString();
  for (const RatioEnd& end : view.ends) EXPECT_LT(end.ratio, 1.5 * 130.001);
  EXPECT_TRUE(ratioReading(view, 1.5 * 140, 0).contains("cannot be evaluated"));
}

TEST(RatioView, NamesOnlyWhatLimits) {
  const RatioView view = viewOf(test::studied(test::warmShoulder()));
  std::size_t named = 0;
  for (const ChartLine& line : view.chart.lines) named += line.name.isEmpty() ? 0 : 1;
  const MarginCurves curves{view.sweep->ratio, view.sweep->points, view.sweep->checks};
  EXPECT_EQ(named, limitingChecks(curves).size());
  EXPECT_GT(view.chart.lines.size(), named);
}

TEST(RatioOverlay, PlacesTextsBesideTheirLinesWithoutOverlap) {
  const QRectF area(0, 0, 200, 100);
  const QSizeF size(60, 15);
  std::vector<QRectF> taken;
  for (const double x : {50.0, 60.0, 150.0, 190.0}) {
    const QRectF place = placeBeside(x, size, true, {0, 15, 30}, area, taken);
    ASSERT_FALSE(place.isNull()) << x;
    EXPECT_TRUE(area.contains(place));
    for (const QRectF& other : taken) EXPECT_FALSE(place.intersects(other));
    taken.push_back(place);
  }
  EXPECT_TRUE(placeBeside(50, {300, 15}, true, {0}, area, {}).isNull());
}

class RatioFigureTest : public testing::Test {
 protected:
  RatioFigureTest() { figure.resize(900, 560); }

  void showAndSettle(const Snapshot& snapshot) {
    figure.show();
    figure.showSnapshot(snapshot);
    settle();
  }
  void settle() {
    ASSERT_TRUE(QTest::qWaitFor([&] { return !figure.thread().isBusy(); }, kPatience));
  }

  RatioFigure figure;
};

TEST_F(RatioFigureTest, ShowsARoughSweepFirstAndTheWholeAfter) {
  figure.show();
  figure.showSnapshot(test::studied(test::warmShoulder()));
  ASSERT_TRUE(QTest::qWaitFor([&] { return figure.ratio().sweep() != nullptr; }, kPatience));
  EXPECT_TRUE(figure.ratio().isPreview());
  settle();
  EXPECT_FALSE(figure.ratio().isPreview());
  EXPECT_EQ(figure.ratio().sweep()->ratio.size(), kRatioPoints);
}

TEST_F(RatioFigureTest, KeepsTheSweepWhileOnlyTheRatioChanges) {
  Project project = test::warmShoulder();
  showAndSettle(test::studied(project));
  const auto sweep = figure.ratio().sweep();
  figure.showSnapshot(test::studied(withStageRatio(project, 1, 120)));
  EXPECT_FALSE(figure.thread().isBusy());
  EXPECT_EQ(figure.ratio().sweep(), sweep);
  EXPECT_NEAR(figure.ratio().canvas().plot().view().present, 180, 1e-9);
  project.load.payloadMass = 7;
  figure.showSnapshot(test::studied(project));
  EXPECT_TRUE(figure.thread().isBusy());
  settle();
  EXPECT_NE(figure.ratio().sweep(), sweep);
}

TEST_F(RatioFigureTest, GivesItsSweepToPaperAndNoOther) {
  const Snapshot snapshot = test::studied(test::warmShoulder());
  showAndSettle(snapshot);
  Snapshot paper = snapshot;
  figure.addStudies(paper);
  ASSERT_TRUE(paper.ratios);
  // Paper that has no figure works the same sweep out by itself.
  EXPECT_EQ(figureImage(paper, "ratio"), figureImage(snapshot, "ratio"));
  Project other = test::warmShoulder();
  other.load.payloadMass = 7;
  Snapshot foreign = test::studied(other);
  figure.addStudies(foreign);
  EXPECT_FALSE(foreign.ratios);
}

// Best of five, for a machine that has other work too; a single evaluation of 10,000 samples is as
// long as a step of a study may be.
TEST_F(RatioFigureTest, StopsWithinFiftyMilliseconds) {
  Project project = test::shoulder(2, 10'000);
  figure.show();
  qint64 best = kPatience;
  for (int round = 0; round < 5 && best >= 50; ++round) {
    project.load.payloadMass += 0.1;
    const auto before = figure.ratio().sweep();
    figure.showSnapshot(test::studied(project));
    ASSERT_TRUE(QTest::qWaitFor([&] { return figure.ratio().sweep() != before; }, kPatience));
    ASSERT_TRUE(figure.thread().isBusy());
    QElapsedTimer timer;
    std::atomic<qint64> taken = -1;
    timer.start();
    figure.thread().request([&](const StudyContext&) { taken = timer.elapsed(); });
    ASSERT_TRUE(QTest::qWaitFor([&] { return taken >= 0; }, kPatience));
    best = std::min(best, qint64(taken));
  }
  RecordProperty("stopped_ms", int(best));
  EXPECT_LT(best, 50);
}

TEST_F(RatioFigureTest, VariesOneInput) {
  showAndSettle(test::studied(test::warmShoulder()));
  figure.setPicture(RatioFigure::Picture::OneInput);
  settle();
  EXPECT_EQ(figure.exportName(), "sweep");
  ASSERT_TRUE(figure.oneInput().sweep());
  EXPECT_EQ(figure.oneInput().sweep()->axis.path, "load.payloadMass");
  expectFinite(figure.oneInput().margins().plot().chart());
  expectFinite(figure.oneInput().quantity().plot().chart());
  figure.oneInput().findChild<AxisChoice*>()->setPath("motor.resistance");
  settle();
  EXPECT_EQ(figure.oneInput().sweep()->axis.path, "motor.resistance");
}

TEST_F(RatioFigureTest, VariesTwoInputs) {
  const Snapshot snapshot = test::studied(test::warmShoulder());
  showAndSettle(snapshot);
  figure.setPicture(RatioFigure::Picture::TwoInputs);
  settle();
  EXPECT_EQ(figure.exportName(), "map");
  ASSERT_TRUE(figure.twoInputs().map());
  const MapView& view = figure.twoInputs().canvas().plot().view();
  ASSERT_TRUE(view.present);
  EXPECT_TRUE(view.presentText.contains(QString::fromUtf8("%")));
  QCPColorMapData& data = *figure.twoInputs().canvas().plot().colours().data();
  for (int c = 0; c < data.keySize(); ++c)
    for (int r = 0; r < data.valueSize(); ++r) EXPECT_FALSE(std::isinf(data.cell(c, r)));
  Snapshot paper = snapshot;
  figure.addStudies(paper);
  EXPECT_EQ(figureImage(paper, "map"), figureImage(snapshot, "map"));
}

TEST_F(RatioFigureTest, SaysWhyADirectDriveHasNone) {
  figure.show();
  figure.showSnapshot(test::studied(test::shoulder(0)));
  EXPECT_TRUE(figure.findChild<QLabel*>("figure.notice")->text().contains("direct drive"));
  figure.setPicture(RatioFigure::Picture::OneInput);
  settle();
  EXPECT_TRUE(figure.oneInput().sweep());
}

TEST_F(RatioFigureTest, RefusesARangeThatDoesNotRise) {
  showAndSettle(test::studied(test::warmShoulder()));
  auto* from = figure.findChild<QLineEdit*>("ratio.from");
  from->setFocus();
  from->selectAll();
  QTest::keyClicks(from, "9000");
  QTest::keyClick(from, Qt::Key_Return);
  EXPECT_EQ(from->property("state").toString(), "wrong");
  EXPECT_TRUE(from->toolTip().contains("rise"));
  from->selectAll();
  QTest::keyClicks(from, "60");
  QTest::keyClick(from, Qt::Key_Return);
  settle();
  EXPECT_DOUBLE_EQ(figure.ratio().sweep()->ratio.front(), 60);
}

/// The figure in the window.
class RatioWindowTest : public test::WindowTest {
 protected:
  void open() {
    openSampleCopy();
    window->resize(1280, 800);
    window->figures().activePane()->setCurrent("ratio");
    figure = static_cast<RatioFigure*>(window->figures().activePane()->current());
    rest();
  }
  void rest() {
    settle();
    ASSERT_TRUE(QTest::qWaitFor(
        [&] { return figure->ratio().sweep() && !figure->thread().isBusy(); }, kPatience));
    QTest::qWait(20);  // queued replots
  }
  RatioCanvas& canvas() { return *figure->findChild<RatioCanvas*>(); }
  double ratio() { return std::abs(document().snapshot().evaluation->chain->ratio); }

  /// Presses on the handle and moves it by `pixels` in steps.
  void pull(int pixels, Qt::KeyboardModifiers modifiers = {}) {
    const QPoint at(int(canvas().plot().pixelOf(ratio())), canvas().height() / 2);
    QTest::mousePress(&canvas(), Qt::LeftButton, modifiers, at);
    for (int step = 1; step <= 5; ++step) {
      const QPoint to = at + QPoint(pixels * step / 5, 0);
      QMouseEvent move(QEvent::MouseMove, to, canvas().mapToGlobal(to), Qt::NoButton,
                       Qt::LeftButton, modifiers);
      QApplication::sendEvent(&canvas(), &move);
    }
    last = at + QPoint(pixels, 0);
  }
  void release() { QTest::mouseRelease(&canvas(), Qt::LeftButton, {}, last); }

  RatioFigure* figure = nullptr;
  QPoint last;
};

TEST_F(RatioWindowTest, DraggingIsOneUndoStepAndTheWindowFollows) {
  open();
  const auto before = document().project();
  const double was = ratio();
  pull(60);
  settle();
  EXPECT_GT(ratio(), 1.05 * was);  // while the handle is held
  release();
  rest();
  EXPECT_TRUE(document().history().canUndo());
  document().undo();
  EXPECT_EQ(*document().project(), *before);
  rest();
  EXPECT_FALSE(document().history().canUndo());
  EXPECT_NEAR(canvas().plot().view().present, was, 1e-9 * was);
}

TEST_F(RatioWindowTest, ControlSnapsToRatiosThatCanBeBuilt) {
  open();
  pull(40, Qt::ControlModifier);
  release();
  rest();
  const std::vector<double>& ticks = figure->ratio().sweep()->realizable;
  ASSERT_FALSE(ticks.empty());
  double nearest = INFINITY;
  for (const double tick : ticks) nearest = std::min(nearest, std::abs(tick / ratio() - 1));
  EXPECT_LT(nearest, 1e-9);
}

TEST_F(RatioWindowTest, EscapeGivesTheRatioBack) {
  open();
  const auto before = document().project();
  pull(60);
  settle();
  figure->setFocus();
  QTest::keyClick(figure, Qt::Key_Escape);
  EXPECT_EQ(*document().project(), *before);
  release();
  rest();
  EXPECT_FALSE(document().history().canUndo());
}

TEST_F(RatioWindowTest, ArrowKeysMoveItAsOneStep) {
  open();
  const auto before = document().project();
  const double was = ratio();
  figure->setFocus();
  for (int k = 0; k < 5; ++k) QTest::keyClick(figure, Qt::Key_Right);
  rest();
  EXPECT_NEAR(ratio() / was, std::pow(1.01, 5), 2e-3);  // 1 % each, rounded to 0.1 %
  document().undo();
  EXPECT_EQ(*document().project(), *before);
}

TEST_F(RatioWindowTest, UndoMovesTheHandleBack) {
  open();
  const double was = ratio();
  figure->setFocus();
  QTest::keyClick(figure, Qt::Key_Left);
  rest();
  document().undo();
  rest();
  EXPECT_NEAR(canvas().plot().view().present, was, 1e-9 * was);
}

}  // namespace
}  // namespace jw

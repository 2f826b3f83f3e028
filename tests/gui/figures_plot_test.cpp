#include <cmath>

#include <gtest/gtest.h>

#include <QSignalSpy>
#include <QTest>

#include "tests/gui/figures_support.h"
#include "widgets/figures/curve_thinning.h"
#include "widgets/figures/cycle_figure.h"
#include "widgets/figures/envelope_figure.h"
#include "widgets/figures/label_placement.h"
#include "widgets/theme/theme.h"

namespace jw {
namespace {

bool anyInfinite(const QVector<double>& values) {
  return std::any_of(values.begin(), values.end(), [](double v) { return std::isinf(v); });
}

TEST(LabelPlacement, KeepsLabelsApartAndInside) {
  LabelSurroundings around{QRectF(0, 0, 300, 200), {}, {}};
  std::vector<LabelRequest> requests(6, LabelRequest{{60, 14}, {QPointF(150, 100)}, 4});
  const auto places = placeLabels(requests, around);
  for (std::size_t i = 0; i < places.size(); ++i) {
    ASSERT_FALSE(places[i].rect.isNull());
    EXPECT_TRUE(around.area.contains(places[i].rect));
    for (std::size_t k = 0; k < i; ++k) EXPECT_FALSE(places[i].rect.intersects(places[k].rect));
  }
}

TEST(LabelPlacement, PrefersAPlaceBesideTheLine) {
  // A line that runs up and to the right through the anchor: the quarter above right is taken.
  LabelSurroundings around{QRectF(0, 0, 300, 200), {QPolygonF{{0, 200}, {300, 0}}}, {}};
  const auto places = placeLabels({{{50, 14}, {QPointF(150, 100)}, 4}}, around);
  const QLineF line(0, 200, 300, 0);
  const QRectF rect = places.front().rect;
  for (const QLineF& side :
       {QLineF(rect.topLeft(), rect.topRight()), QLineF(rect.bottomLeft(), rect.bottomRight())})
    EXPECT_NE(side.intersects(line, nullptr), QLineF::BoundedIntersection);
}

TEST(LabelPlacement, GivesUpRatherThanOverlap) {
  const auto places = placeLabels({{{60, 14}, {QPointF(5, 5)}, 4}}, {QRectF(0, 0, 40, 10), {}, {}});
  EXPECT_TRUE(places.front().rect.isNull());
}

TEST(CurveThinning, KeepsTheShapeWithFewerPoints) {
  // A circle: the sagitta of a chord bounds the error (elementary geometry).
  QVector<double> x;
  QVector<double> y;
  for (int i = 0; i <= 2000; ++i) {
    x << std::cos(2 * M_PI * i / 2000);
    y << std::sin(2 * M_PI * i / 2000);
  }
  const Polyline thin = thinned(x, y, 1e-4);
  // The fewest chords of a circle with that sagitta are pi / acos(1 - 2e-4) = 157.
  EXPECT_LT(thin.x.size(), 2 * 157);
  for (qsizetype i = 1; i < thin.x.size(); ++i) {
    const double chord = std::hypot(thin.x[i] - thin.x[i - 1], thin.y[i] - thin.y[i - 1]);
    EXPECT_LE(1 - std::sqrt(1 - chord * chord / 4), 2.2e-4) << "sagitta at " << i;
  }
}

TEST(CurveThinning, KeepsGapsAndJumps) {
  const QVector<double> x{0, 1, 2, 3, 3, 4};
  const QVector<double> y{0, 0, NAN, 1, 5, 5};
  const Polyline thin = thinned(x, y);
  EXPECT_EQ(thin.x.size(), 6);
  EXPECT_TRUE(std::isnan(thin.y[2]));
}

TEST(EnvelopeView, AtTheJointSpeedsAndTorquesAreReferredByTheRatio) {
  // omega_joint = omega_motor / N and tau_joint = N tau_motor without losses (any text on gears).
  const Snapshot snapshot = test::snapshotOf(test::shoulder());
  const EnvelopeView motor = envelopeView(snapshot, AxesAt::Motor);
  const EnvelopeView joint = envelopeView(snapshot, AxesAt::Joint);
  ASSERT_EQ(motor.peak.speed.size(), joint.peak.speed.size());
  for (qsizetype i = 0; i < motor.peak.speed.size(); ++i) {
    EXPECT_NEAR(joint.peak.speed[i] * 150, motor.peak.speed[i], 1e-6);
    EXPECT_NEAR(joint.peak.torque[i], motor.peak.torque[i] * 150, 1e-6);
  }
  EXPECT_TRUE(joint.speedTitle.contains("without losses"));
}

TEST(EnvelopeView, TellsTheTightestPointAndTheSegments) {
  const EnvelopeView view = envelopeView(test::snapshotOf(test::shoulder()), AxesAt::Motor);
  ASSERT_TRUE(view.tightest);
  EXPECT_TRUE(view.tightest->text.startsWith("tightest: "));
  EXPECT_TRUE(view.tightest->text.contains("N·m at ") && view.tightest->text.contains("margin "));
  ASSERT_EQ(view.path.size(), 4U);
  EXPECT_FALSE(view.path[0].dwell);
  EXPECT_TRUE(view.path[1].dwell);
  EXPECT_EQ(view.path[2].name, "back");
}

TEST(EnvelopeView, InfinityBecomesAGap) {
  Snapshot snapshot = test::snapshotOf(test::shoulder());
  auto evaluation = std::make_shared<Evaluation>(*snapshot.evaluation);
  evaluation->envelope->peak.torque[3] = INFINITY;
  evaluation->demand->torque[5] = -INFINITY;
  evaluation->load->total[7] = INFINITY;
  snapshot.evaluation = evaluation;
  const EnvelopeView view = envelopeView(snapshot, AxesAt::Motor);
  EXPECT_FALSE(anyInfinite(view.peak.torque) || anyInfinite(view.track.torque));
  EXPECT_TRUE(std::isnan(view.peak.torque[3]));
  for (const CycleRow& row : cycleView(snapshot).rows)
    for (const CycleSeries& series : row.series) EXPECT_FALSE(anyInfinite(series.values));
}

TEST(EnvelopeFigure, LabelsDoNotOverlapOnTheScreen) {
  EnvelopeFigure figure;
  figure.resize(690, 570);
  figure.showSnapshot(test::snapshotOf(test::shoulder()));
  figure.grab();
  figure.canvas().replot(QCustomPlot::rpImmediateRefresh);
  const auto& places = figure.canvas().plot().labels().places();
  ASSERT_GE(places.size(), 8U) << "tightest, rms, two curves, four segments";
  for (std::size_t i = 0; i < places.size(); ++i) {
    EXPECT_FALSE(places[i].rect.isNull()) << "label " << i << " found no place";
    for (std::size_t k = 0; k < i; ++k) EXPECT_FALSE(places[i].rect.intersects(places[k].rect));
  }
}

TEST(EnvelopeFigure, KeepsTheZoomOnEditsAndResetsItOnDoubleClick) {
  EnvelopeFigure figure;
  figure.resize(690, 570);
  figure.showSnapshot(test::snapshotOf(test::shoulder()));
  figure.grab();
  const QCPRange all = figure.canvas().xAxis->range();
  figure.canvas().zoomBy(0.5, QRectF(figure.canvas().axisRect()->rect()).center());
  const QCPRange zoomed = figure.canvas().xAxis->range();
  EXPECT_NEAR(zoomed.size(), all.size() / 2, 1e-9 * all.size());
  Project changed = test::shoulder();
  changed.active().motor.maxSpeed = 200;
  figure.showSnapshot(test::snapshotOf(changed));
  EXPECT_EQ(figure.canvas().xAxis->range(), zoomed);
  QTest::mouseDClick(&figure.canvas(), Qt::LeftButton, {}, QPoint(300, 150));
  EXPECT_FALSE(figure.canvas().isZoomed());
  EnvelopeFigure fresh;
  fresh.showSnapshot(test::snapshotOf(changed));
  EXPECT_EQ(figure.canvas().xAxis->range(), fresh.canvas().xAxis->range());
}

TEST(EnvelopeFigure, ArrowKeysMoveTheCursorWithinTheCycle) {
  EnvelopeFigure figure;
  figure.showSnapshot(test::snapshotOf(test::shoulder()));
  QSignalSpy moved(&figure, &Figure::cursorTimeChanged);
  QTest::keyClick(&figure, Qt::Key_End);
  EXPECT_NEAR(figure.cursorTime(), 3.2, 1e-9) << "1.6 + 0.3 + 1.1 + 0.2 s";
  QTest::keyClick(&figure, Qt::Key_Right);
  EXPECT_EQ(moved.count(), 1) << "nothing lies behind the end";
  QTest::keyClick(&figure, Qt::Key_Home);
  EXPECT_EQ(figure.cursorTime(), 0);
}

TEST(EnvelopeFigure, SaysWhatIsMissingAndLinksToIt) {
  Project project = test::shoulder();
  project.cycle.segments.clear();
  project.active().motor.resistance = kUnset;
  EnvelopeFigure figure;
  figure.resize(690, 570);
  figure.showSnapshot(test::snapshotOf(project));
  auto* notice = figure.findChild<QLabel*>("figure.notice");
  ASSERT_TRUE(notice && !notice->isHidden());
  EXPECT_TRUE(notice->text().contains("field:motor.resistance")) << notice->text().toStdString();
  QSignalSpy asked(&figure, &Figure::fieldRequested);
  emit notice->linkActivated("field:motor.resistance");
  EXPECT_EQ(asked.value(0).value(0).toString(), "motor.resistance");
}

TEST(CycleFigure, RowsCanBeChosenAndShareTheTime) {
  CycleFigure figure;
  figure.resize(690, 570);
  figure.showSnapshot(test::snapshotOf(test::shoulder()));
  for (const char* row : {"motion", "torque", "motor", "power"})
    EXPECT_TRUE(figure.plot().shows(row));
  auto* power = figure.findChild<QToolButton*>("cycle.row.power");
  ASSERT_TRUE(power);
  power->click();
  EXPECT_FALSE(figure.plot().shows("power"));
  EXPECT_TRUE(figure.plot().shows("torque"));
}

TEST(CycleFigure, CausesAddUpToTheTotal) {
  // The joint torque is the sum of its causes (Newton-Euler about a fixed axis).
  const CycleView view = stripView(test::snapshotOf(test::shoulder()));
  ASSERT_EQ(view.rows.size(), 1U);
  const auto& series = view.rows.front().series;
  for (qsizetype i = 0; i < view.time.size(); ++i) {
    double sum = 0;
    for (std::size_t k = 1; k < series.size(); ++k) sum += series[k].values[i];
    EXPECT_NEAR(sum, series.front().values[i], 1e-9);
  }
}

TEST(CycleFigure, SeriesCanBeToldApartWithoutColour) {
  for (const CycleRow& row : cycleView(test::snapshotOf(test::shoulder())).rows)
    for (std::size_t i = 0; i < row.series.size(); ++i)
      for (std::size_t k = 0; k < i; ++k)
        EXPECT_NE(row.series[i].look.dashes, row.series[k].look.dashes) << row.id.toStdString();
}

TEST(Figures, ShowNothingBeforeTheFirstEvaluation) {
  EnvelopeFigure envelope;
  CycleFigure cycle;
  for (Figure* figure : {static_cast<Figure*>(&envelope), static_cast<Figure*>(&cycle)}) {
    figure->showSnapshot({});
    figure->setCursorTime(1);
    EXPECT_FALSE(figure->findChild<QLabel*>("figure.notice")->isHidden());
  }
}

}  // namespace
}  // namespace jw

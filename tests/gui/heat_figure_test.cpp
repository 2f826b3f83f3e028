#include <algorithm>
#include <cmath>

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <QSignalSpy>
#include <QTest>

#include "tests/gui/heat_support.h"
#include "widgets/figures/cycle_figure.h"
#include "widgets/figures/envelope_figure.h"
#include "widgets/figures/figure_export.h"
#include "widgets/figures/heat_figure.h"
#include "widgets/theme/number_text.h"

namespace jw {
namespace {

using testing::Each;

void check(const LineChart& chart) {
  for (const ChartLine& line : chart.lines) {
    EXPECT_EQ(line.x.size(), line.y.size()) << line.name.toStdString();
    EXPECT_THAT(line.y, Each(testing::Truly([](double v) { return !std::isinf(v); })));
  }
  EXPECT_LT(chart.x.low, chart.x.high);
  EXPECT_LT(chart.y.low, chart.y.high);
}

TEST(HeatView, ShowsTheEvaluationsTemperatures) {
  const Snapshot snapshot = test::studied(test::warmShoulder());
  const HeatView view = heatView(snapshot);
  const PeriodicHeat& periodic = snapshot.evaluation->heat->periodic;
  ASSERT_EQ(view.cycle.rows.size(), 2U);
  const QVector<double>& winding = view.cycle.rows[0].series[0].values;
  EXPECT_EQ(winding.size(), view.cycle.time.size());
  EXPECT_DOUBLE_EQ(*std::max_element(winding.begin(), winding.end()), periodic.windingPeak);
  for (const LineChart* chart : {&view.warmUp, &view.overload, &view.duty}) check(*chart);
  // From cold the winding begins at the ambient, 40 degC by default.
  EXPECT_DOUBLE_EQ(view.warmUp.bands[0].low[0], 40);
}

TEST(HeatView, NamesTheShortTimesOfTheStandard) {
  const HeatView view = heatView(test::studied(test::warmShoulder()));
  QStringList names;
  for (const ChartPoint& point : view.overload.points) names << point.text;
  // IEC 60034-1, S2 (from memory): 10, 30, 60 and 90 min are the usual times.
  EXPECT_EQ(names, (QStringList{"S2 90 min", "S2 60 min", "S2 30 min", "S2 10 min"}));
}

TEST(HeatView, SaysWhenTheLimitIsPassed) {
  Project project = test::warmShoulder();
  project.active().motor.thermalResistanceHousing = 6;
  const Snapshot snapshot = test::studied(project);
  const HeatView view = heatView(snapshot);
  const double seconds = snapshot.studies->heat->warmUp.timeToLimit;
  ASSERT_TRUE(std::isfinite(seconds));
  ASSERT_EQ(view.warmUp.points.size(), 1U);
  EXPECT_TRUE(view.warmUp.points[0].text.contains(durationText(seconds)));
}

TEST(HeatView, SaysThatHeatRunsAway) {
  Project project = test::warmShoulder();
  project.active().motor.thermalResistanceHousing = 40;
  const Snapshot snapshot = test::studied(project);
  ASSERT_TRUE(snapshot.evaluation->heat->periodic.runaway);
  const HeatView view = heatView(snapshot);
  EXPECT_TRUE(view.runaway);
  EXPECT_TRUE(view.cycle.rows.empty());
  EXPECT_TRUE(view.warmUp.warning.contains("runaway"));
  check(view.warmUp);
}

class HeatFigureTest : public ::testing::Test {
 protected:
  void SetUp() override {
    figure.resize(660, 520);
    figure.show();
  }
  QToolButton* button(const char* name) { return figure.findChild<QToolButton*>(name); }
  HeatFigure figure;
};

TEST_F(HeatFigureTest, SwitchesItsPictureAndWhatIsExported) {
  figure.showSnapshot(test::studied(test::warmShoulder()));
  EXPECT_TRUE(figure.warmUp().isVisible());
  EXPECT_EQ(figure.exportName(), "heat");
  QTest::mouseClick(button("heat.overload"), Qt::LeftButton);
  EXPECT_FALSE(figure.warmUp().isVisible());
  EXPECT_TRUE(figure.overload().isVisible() && figure.duty().isVisible());
  EXPECT_EQ(figure.exportName(), "overload");
  EXPECT_TRUE(figureNames().contains("heat") && figureNames().contains("overload"));
}

TEST_F(HeatFigureTest, StandsWithoutStudiesAndKeepsTheLastCharts) {
  const Snapshot bare = test::snapshotOf(test::warmShoulder());
  figure.showSnapshot(bare);
  EXPECT_TRUE(figure.warmUp().plot().chart().empty());
  figure.showSnapshot(test::withStudies(bare));
  const std::size_t lines = figure.warmUp().plot().chart().lines.size();
  EXPECT_EQ(lines, 2U);
  figure.showSnapshot(bare);
  EXPECT_EQ(figure.warmUp().plot().chart().lines.size(), lines);
}

TEST_F(HeatFigureTest, LinksToWhatIsMissing) {
  Project project = test::warmShoulder();
  project.active().motor.windingCapacity = kUnset;
  figure.showSnapshot(test::studied(project));
  auto* notice = figure.findChild<QLabel*>("figure.notice");
  ASSERT_TRUE(notice->isVisible());
  EXPECT_TRUE(notice->text().contains("field:motor.windingCapacity"));
  QSignalSpy asked(&figure, &Figure::fieldRequested);
  emit notice->linkActivated("field:motor.windingCapacity");
  ASSERT_EQ(asked.size(), 1);
  EXPECT_EQ(asked[0][0].toString(), "motor.windingCapacity");
}

TEST_F(HeatFigureTest, LabelsNeitherOverlapNorLeaveTheCharts) {
  figure.showSnapshot(test::studied(test::warmShoulder()));
  for (const auto picture : {HeatFigure::Picture::WarmUp, HeatFigure::Picture::Overload}) {
    figure.setPicture(picture);
    QTest::qWait(50);  // plots draw when the event loop comes to it
    for (const LineChartCanvas* canvas : {&figure.warmUp(), &figure.overload(), &figure.duty()}) {
      if (!canvas->isVisible()) continue;
      const auto& places = canvas->plot().labels().places();
      EXPECT_FALSE(places.empty());
      for (std::size_t i = 0; i < places.size(); ++i) {
        EXPECT_TRUE(QRectF(canvas->axisRect()->rect()).contains(places[i].rect));
        for (std::size_t k = 0; k < i; ++k) EXPECT_FALSE(places[i].rect.intersects(places[k].rect));
      }
    }
  }
}

TEST(EnvelopeExtrasTest, TheBandHoldsTheEnvelopeBetweenItsEdges) {
  const EnvelopeView view = envelopeView(test::studied(test::warmShoulder()), AxesAt::Motor);
  ASSERT_FALSE(view.strongest.speed.isEmpty());
  EXPECT_EQ(view.shortTimeName, "S2 5 min");
  for (const double speed : {0.0, 800.0, 1600.0}) {
    const double inner = curveTorqueAt(view.weakest, speed, true);
    const double outer = curveTorqueAt(view.strongest, speed, true);
    EXPECT_LE(inner, outer) << speed;
  }
}

// Along a line of equal efficiency, taken at its middle, the formula of the loss map gives it back.
TEST(EnvelopeExtrasTest, EfficiencyLinesLieWhereTheMapSays) {
  const Snapshot snapshot = test::studied(test::warmShoulder());
  const EnvelopeView none = envelopeView(snapshot, AxesAt::Motor);
  EXPECT_TRUE(none.efficiency.empty());
  const EnvelopeView view = envelopeView(snapshot, AxesAt::Motor, {true, true});
  ASSERT_FALSE(view.efficiency.empty());
  const LossMap& map = *snapshot.studies->losses;
  const double rpm = fromInternal(1, "rpm", Quantity::AngularSpeed);
  for (const EfficiencyLine& line : view.efficiency) {
    const auto i = line.points.speed.size() / 2;
    Eigen::Index column = 0;
    Eigen::Index row = 0;
    (map.speed * rpm - line.points.speed[i]).abs().minCoeff(&column);
    (map.torque - line.points.torque[i]).abs().minCoeff(&row);
    const double level = line.text.section(' ', 0, 0).toDouble() / 100;
    // Neighbouring nodes of the grid of 81 by 81 differ by up to some hundredths near the axes.
    if (std::isnan(map.efficiency(row, column))) continue;
    EXPECT_NEAR(map.efficiency(row, column), level, 0.12) << line.text.toStdString();
  }
}

TEST(EnvelopeExtrasTest, TogglesFollowTheStudies) {
  EnvelopeFigure figure;
  const Snapshot bare = test::snapshotOf(test::warmShoulder());
  figure.showSnapshot(bare);
  auto* band = figure.findChild<QToolButton*>("envelope.band");
  auto* efficiency = figure.findChild<QToolButton*>("envelope.efficiency");
  EXPECT_FALSE(band->isEnabled() || efficiency->isEnabled());
  EXPECT_TRUE(band->isChecked() && !efficiency->isChecked());
  figure.showSnapshot(test::withStudies(bare));
  EXPECT_TRUE(band->isEnabled() && efficiency->isEnabled());
  efficiency->click();
  EXPECT_FALSE(figure.canvas().plot().view().efficiency.empty());
  band->click();
  EXPECT_TRUE(figure.canvas().plot().view().strongest.speed.isEmpty());
}

const CycleRow* rowOf(const CycleView& view, const QString& id) {
  const auto row = std::find_if(view.rows.begin(), view.rows.end(),
                                [&](const CycleRow& r) { return r.id == id; });
  return row == view.rows.end() ? nullptr : &*row;
}

// Conservation of energy: what the supply gives, less every loss and what turning masses take up,
// arrives at the joint; over a closed cycle the masses keep nothing.
TEST(CycleLosses, AccountForAllThatDoesNotArrive) {
  const Snapshot snapshot = test::studied(test::warmShoulder());
  const CycleView view = cycleView(snapshot);
  const CycleRow* losses = rowOf(view, "losses");
  ASSERT_TRUE(losses);
  EXPECT_EQ(losses->series.size(), 5U);  // copper, no-load, controller, two stages
  const SampledCycle& cycle = *snapshot.evaluation->cycle;
  const auto energy = [&](const Eigen::ArrayXd& power) { return (cycle.weight * power).sum(); };
  double lost = 0;
  for (const CycleSeries& s : losses->series)
    lost += energy(Eigen::Map<const Eigen::ArrayXd>(s.values.data(), s.values.size()));
  const double given = energy(snapshot.evaluation->demand->supplyPower);
  const double arrived = energy(snapshot.evaluation->load->total * cycle.speed);
  EXPECT_NEAR(given, arrived + lost, 0.005 * given);
}

TEST(CycleBus, ShowsTheVoltageWithItsLimit) {
  const Snapshot snapshot = test::studied(test::warmShoulder());
  const CycleView view = cycleView(snapshot);
  const CycleRow* bus = rowOf(view, "bus");
  ASSERT_TRUE(bus);
  EXPECT_EQ(bus->series[0].values.size(), view.time.size());
  ASSERT_FALSE(bus->levels.empty());
  EXPECT_EQ(bus->levels[0].value, 60);
  EXPECT_FALSE(firstRows(view).contains("bus"));
}

}  // namespace
}  // namespace jw

#include <cmath>

#include <gtest/gtest.h>

#include <QTest>

#include "tests/gui/heat_support.h"
#include "widgets/figures/figure_export.h"
#include "widgets/figures/joint_chart_view.h"
#include "widgets/figures/precision_figure.h"

namespace jw {
namespace {

Project stiffShoulder() {
  Project project = test::warmShoulder();
  for (Stage& stage : project.active().transmission) {
    stage.backlash = 2e-4;
    stage.stiffness.first = 1e4;
    stage.hysteresis = 1e-4;
  }
  return project;
}

// Springs in series, by hand: the twist at the joint is the sum of T / (K_k prod N²).
TEST(PrecisionView, LoopEndsAtTheTwistOfSpringsInSeries) {
  const Snapshot snapshot = test::studied(stiffShoulder());
  ASSERT_TRUE(snapshot.studies->drive && snapshot.studies->drive->windUp);
  const DriveCharts& charts = *snapshot.studies->drive;
  double compliance = 0;
  double behind = 1;
  const auto& stages = *snapshot.evaluation->stages;
  for (auto stage = stages.rbegin(); stage != stages.rend(); ++stage) {
    compliance += 1 / (1e4 * behind * behind);
    behind *= stage->stage.ratio;
  }
  EXPECT_NEAR(charts.windUp->windUp, charts.windUpRange * compliance, 1e-12);
  EXPECT_NEAR(charts.stiffness, 1 / compliance, 1e-6 / compliance);
}

// Power: at each torque the loss of the stages is what the efficiency says is missing.
TEST(PrecisionView, EfficiencyOfTheCycleLiesBelowTheMesh) {
  Project project = stiffShoulder();
  EXPECT_EQ(test::studied(project).studies->drive->efficiency.size(), 1U);
  Stage& fast = project.active().transmission.front();
  fast.dragDamping = 1e-6;
  fast.ratedSpeed = 300;
  fast.ratedTorque = 3;
  const Snapshot snapshot = test::studied(project);
  const DriveCharts& charts = *snapshot.studies->drive;
  ASSERT_EQ(charts.efficiency.size(), 3U);
  double mesh = 1;
  for (const StageData& stage : *snapshot.evaluation->stages) mesh *= stage.efficiency.driving;
  for (const EfficiencyCurve& curve : charts.efficiency) {
    EXPECT_LE(curve.driving.maxCoeff(), mesh + 1e-12);
    EXPECT_EQ(curve.driving[0], 0);
    EXPECT_GE(curve.backdriving.minCoeff(), 0);
  }
  ASSERT_GT(charts.pointEfficiency.size(), 0);
  // Masses between the stages that slow down spare the stages before them a little.
  EXPECT_LE(charts.pointEfficiency.maxCoeff(), mesh + 0.005);
}

TEST(PrecisionView, SaysWhichStagesAreLeftOut) {
  Project project = stiffShoulder();
  project.active().transmission.back().stiffness.first = kUnset;
  const PrecisionView view = precisionView(test::studied(project));
  EXPECT_TRUE(view.loop.remark.contains("counts as rigid")) << view.loop.remark.toStdString();
}

TEST(PrecisionFigure, SwitchesAndNamesWhatIsExported) {
  PrecisionFigure figure;
  figure.resize(660, 520);
  figure.show();
  figure.showSnapshot(test::studied(stiffShoulder()));
  EXPECT_TRUE(figure.loop().isVisible() && figure.shares().isVisible());
  EXPECT_EQ(figure.exportName(), "precision");
  QTest::mouseClick(figure.findChild<QToolButton*>("precision.efficiency"), Qt::LeftButton);
  EXPECT_TRUE(figure.efficiency().isVisible());
  EXPECT_FALSE(figure.loop().isVisible());
  EXPECT_EQ(figure.exportName(), "efficiency");
  EXPECT_TRUE(figureNames().contains("precision") && figureNames().contains("efficiency"));
}

// The bars end where the sums of the budget say; own arithmetic of a stated budget.
TEST(PrecisionView, ToolErrorStacksToTheWorstCase) {
  JointCharts charts;
  charts.error = ErrorBudget{3e-4, 0, 4e-4, 0, 0};
  charts.reach = 0.5;
  charts.toolError = 1e-3;
  const LineChart chart = toolErrorChart(charts);
  ASSERT_EQ(chart.lines.size(), 4U);  // two pieces, the other sum, what is allowed
  EXPECT_NEAR(chart.lines[1].x.back(), 0.35, 1e-12);
  EXPECT_NEAR(chart.lines[2].x.back(), 0.25, 1e-12);
  EXPECT_NEAR(chart.lines[3].x.front(), 1, 1e-12);
  charts.error.reset();
  EXPECT_TRUE(toolErrorChart(charts).empty());
}

TEST(PrecisionFigure, ShowsResponseAndToolError) {
  PrecisionFigure figure;
  figure.resize(660, 520);
  figure.show();
  figure.showSnapshot(test::studied(stiffShoulder()));
  QTest::mouseClick(figure.findChild<QToolButton*>("precision.response"), Qt::LeftButton);
  EXPECT_TRUE(figure.swing().isVisible());
  EXPECT_EQ(figure.exportName(), "response");
  QTest::mouseClick(figure.findChild<QToolButton*>("precision.toolError"), Qt::LeftButton);
  EXPECT_TRUE(figure.toolError().isVisible());
  EXPECT_EQ(figure.exportName(), "toolerror");
}

TEST(PrecisionFigure, StandsForDirectDrive) {
  Project project = stiffShoulder();
  project.active().transmission.clear();
  project.active().motor.encoderSteps = 4096;
  PrecisionFigure figure;
  figure.show();
  const Snapshot snapshot = test::studied(project);
  figure.showSnapshot(snapshot);
  EXPECT_TRUE(figure.loop().isVisible());
  const PrecisionView view = precisionView(snapshot);
  EXPECT_TRUE(view.loop.empty());
  EXPECT_TRUE(view.loop.remark.contains("direct drive"));
  EXPECT_FALSE(view.toolError.empty()) << "the encoder's step is left";
}

}  // namespace
}  // namespace jw

#include "widgets/figures/precision_view.h"

#include <algorithm>
#include <cmath>

#include "widgets/figures/finite.h"
#include "widgets/figures/joint_chart_view.h"
#include "widgets/theme/number_text.h"

namespace jw {
namespace {

const QString kTorqueTitle = QStringLiteral("torque at the joint, N·m");

QString arcminText(double radians) { return quantityText(radians, Quantity::Angle, "arcmin"); }

QVector<double> inArcmin(const std::vector<double>& angles) {
  const double perRadian = fromInternal(1, "arcmin", Quantity::Angle);
  QVector<double> values;
  for (const double angle : angles) values << angle * perRadian;
  return values;
}

QVector<double> listed(const std::vector<double>& values) { return {values.begin(), values.end()}; }

/// Which stages the loop leaves out, so that a thin loop is not taken for a precise joint.
QString notGiven(const ChainWindUp& loop) {
  const auto stages = [](const std::vector<std::size_t>& which) {
    QStringList numbers;
    for (const std::size_t k : which) numbers << QString::number(k + 1);
    return numbers.join(QStringLiteral(", "));
  };
  QStringList parts;
  if (!loop.rigid.empty())
    parts << QStringLiteral("stage %1 counts as rigid").arg(stages(loop.rigid));
  if (!loop.withoutBacklash.empty())
    parts << QStringLiteral("play of stage %1 not given").arg(stages(loop.withoutBacklash));
  return parts.join(QStringLiteral("; "));
}

QString loopRemark(const DriveCharts& charts) {
  QStringList parts;
  if (std::isfinite(charts.lostMotion))
    parts << QStringLiteral("lost motion %1 (±%2)")
                 .arg(arcminText(charts.lostMotion),
                      quantityText(charts.lostMotionTorque, Quantity::Torque, "N*m"));
  if (std::isfinite(charts.stiffness))
    parts << quantityText(charts.stiffness, Quantity::TorsionalStiffness, "N*m/arcmin");
  const QString gaps = notGiven(*charts.windUp);
  if (!gaps.isEmpty()) parts << gaps;
  return parts.join(QStringLiteral(" · "));
}

/// Between the branches, over the torques of the cycle.
ChartBand operatingBand(const DriveCharts& charts) {
  ChartBand band;
  const auto rising = charts.windUp->rising;
  const auto falling = charts.windUp->falling;
  const QVector<double> low = inArcmin(rising.angle);
  QVector<double> high = inArcmin(falling.angle);
  std::reverse(high.begin(), high.end());
  const auto n = std::min(low.size(), high.size());
  for (qsizetype k = 0; k < n; ++k) {
    const double torque = rising.torque[static_cast<std::size_t>(k)];
    if (torque < charts.operatingLow || torque > charts.operatingHigh) continue;
    band.x << torque;
    band.low << std::min(low[k], high[k]);
    band.high << std::max(low[k], high[k]);
  }
  band.hue = &Palette::accent;
  return band;
}

LineChart loopChart(const DriveCharts& charts) {
  LineChart chart;
  chart.title = QStringLiteral("Wind-up, motor held");
  if (!charts.windUp) return chart;
  chart.remark = loopRemark(charts);
  chart.bands.push_back(operatingBand(charts));
  const QVector<double> rising = inArcmin(charts.windUp->rising.angle);
  const QVector<double> falling = inArcmin(charts.windUp->falling.angle);
  chart.lines.push_back({QStringLiteral("torque rising"),
                         listed(charts.windUp->rising.torque),
                         rising,
                         {&Palette::peak},
                         false,
                         0.8});
  chart.lines.push_back({QStringLiteral("torque falling"),
                         listed(charts.windUp->falling.torque),
                         falling,
                         {&Palette::accent, Qt::DashLine},
                         false,
                         0.8});
  double top = 0.1;
  for (const double v : rising) top = std::max(top, std::abs(v));
  for (const double v : falling) top = std::max(top, std::abs(v));
  chart.x = {kTorqueTitle, QStringLiteral("N·m"), -charts.windUpRange, charts.windUpRange};
  chart.y = {QStringLiteral("twist at the joint, arcmin"), QStringLiteral("arcmin"), -1.1 * top,
             1.1 * top};
  return chart;
}

/// "1 toothed belt, 2 cycloidal gear": the stages that have a name.
QString stageNames(const Project& project) {
  QStringList names;
  int number = 0;
  for (const Stage& stage : project.active().transmission) {
    ++number;
    const QString name = QString::fromStdString(stage.name);
    if (!name.isEmpty()) names << QStringLiteral("%1 %2").arg(number).arg(name);
  }
  return names.join(QStringLiteral(", "));
}

/// A horizontal bar from 0 to `value` per cent, with its text at the end.
void addBar(LineChart& chart, double y, double share, const QString& text, QColor Palette::*hue) {
  if (!(share > 0)) return;  // none, or not given
  chart.lines.push_back({{}, {0, 100 * share}, {y, y}, {hue, Qt::SolidLine, 9}});
  chart.points.push_back({{100 * share, y}, text, PlotMark::Shape::Disc, hue});
}

double shareOf(double part, double whole) { return whole > 0 ? part / whole : 0; }

LineChart shareChart(const Project& project, const DriveCharts& charts) {
  LineChart chart;
  chart.title = QStringLiteral("What each stage adds at the joint");
  if (!charts.windUp) return chart;
  const ChainWindUp& loop = *charts.windUp;
  const auto count = loop.stages.size();
  std::vector<std::pair<double, QString>> names;
  for (std::size_t k = 0; k < count; ++k) {
    const StageWindUp& stage = loop.stages[k];
    const double y = static_cast<double>(count - k);
    names.emplace_back(y, QStringLiteral("stage %1").arg(k + 1));
    addBar(chart, y + 0.3, shareOf(stage.backlash, loop.backlash),
           QStringLiteral("play %1").arg(arcminText(stage.backlash)), &Palette::peak);
    addBar(chart, y + 0.1, shareOf(stage.hysteresis, loop.hysteresis),
           QStringLiteral("hysteresis %1").arg(arcminText(stage.hysteresis)), &Palette::gravity);
    addBar(chart, y - 0.1, shareOf(stage.transmissionError, loop.transmissionError),
           QStringLiteral("transmission error %1").arg(arcminText(stage.transmissionError)),
           &Palette::friction);
    addBar(chart, y - 0.3, shareOf(stage.windUp, loop.windUp),
           QStringLiteral("wind-up %1").arg(arcminText(stage.windUp)), &Palette::accent);
  }
  chart.remark =
      QStringLiteral("wind-up at %1  ·  %2")
          .arg(quantityText(charts.windUpRange, Quantity::Torque, "N*m"), stageNames(project));
  chart.x = {QStringLiteral("share of the whole, %"), QStringLiteral("%"), 0, 140};
  chart.y = {{}, {}, 0.4, static_cast<double>(count) + 0.6, names};
  return chart;
}

LineChart efficiencyChart(const DriveCharts& charts) {
  LineChart chart;
  chart.title = QStringLiteral("Efficiency of the chain");
  if (charts.efficiency.empty()) return chart;
  const std::array looks{SeriesLook{&Palette::peak}, SeriesLook{&Palette::accent, Qt::DashLine},
                         SeriesLook{&Palette::friction, Qt::DotLine}};
  for (std::size_t k = 0; k < charts.efficiency.size(); ++k) {
    const EfficiencyCurve& curve = charts.efficiency[k];
    const QString speed = charts.efficiency.size() == 1
                              ? QStringLiteral("motor driving")
                              : quantityText(curve.speed, Quantity::AngularSpeed, "rpm");
    chart.lines.push_back({speed, plotValues(curve.torque), plotValues(curve.driving, 100),
                           looks[k % looks.size()], false, 0.55 + 0.15 * double(k)});
  }
  const EfficiencyCurve& fast = charts.efficiency.front();
  chart.lines.push_back({QStringLiteral("driven back"),
                         plotValues(fast.torque),
                         plotValues(fast.backdriving, 100),
                         {&Palette::muted, Qt::DashDotLine},
                         false,
                         0.35});
  if (charts.pointTorque.size() > 0) {
    chart.lines.push_back({QStringLiteral("this cycle"),
                           plotValues(charts.pointTorque),
                           plotValues(charts.pointEfficiency, 100),
                           {&Palette::text},
                           true,
                           0.2});
  }
  chart.remark = charts.efficiency.size() == 1
                     ? QStringLiteral("steady, the same at every speed")
                     : QStringLiteral("motor driving, steady, at joint speeds");
  chart.x = {kTorqueTitle, QStringLiteral("N·m"), 0, fast.torque[fast.torque.size() - 1]};
  chart.y = {QStringLiteral("efficiency, %"), QStringLiteral("%"), 0, 100};
  return chart;
}

}  // namespace

PrecisionView precisionView(const Snapshot& snapshot) {
  if (!snapshot.studies || !snapshot.evaluatedProject) return {};
  const bool direct = snapshot.evaluatedProject->active().transmission.empty();
  if ((!direct && !snapshot.studies->drive) || !snapshot.studies->joint) return {};
  const DriveCharts none;
  const DriveCharts& charts = direct ? none : *snapshot.studies->drive;
  PrecisionView view{loopChart(charts), shareChart(*snapshot.evaluatedProject, charts),
                     efficiencyChart(charts), swingChart(*snapshot.studies->joint),
                     toolErrorChart(*snapshot.studies->joint)};
  if (!direct) return view;
  for (LineChart* chart : {&view.loop, &view.shares, &view.efficiency, &view.swing})
    chart->remark = QStringLiteral("a direct drive has no stage that plays, twists or loses power");
  return view;
}

}  // namespace jw

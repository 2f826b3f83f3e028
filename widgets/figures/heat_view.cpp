#include "widgets/figures/heat_view.h"

#include <algorithm>
#include <cmath>

#include "core/studies/shown_samples.h"
#include "widgets/figures/finite.h"
#include "widgets/theme/number_text.h"

namespace jw {
namespace {

const QString kCelsius = QStringLiteral("°C");
const QString kMultipleTitle = QStringLiteral("torque, multiple of the continuous one");

// The unit in which a length of time is told.
std::string_view timeUnit(double seconds) {
  return seconds < 180 ? "s" : seconds < 3 * 3600 ? "min" : "h";
}

QString temperatureText(double celsius) { return quantityText(celsius, Quantity::Temperature); }

double multipleCeiling(const QVector<double>& values, double least) {
  double top = least;
  for (const double v : values)
    if (!std::isnan(v)) top = std::max(top, v);
  return 1.08 * top;
}

// Level of the winding limit, and of the housing's if there is one.
std::vector<Level> limitLevels(const MotorHeat& heat, const Motor& motor) {
  std::vector<Level> levels{{QStringLiteral("winding limit %1").arg(temperatureText(heat.limit)),
                             heat.limit, &Palette::shortfall}};
  const double housing = motor.housingTemperatureMax;
  if (isSet(housing))
    levels.push_back({QStringLiteral("housing limit %1").arg(temperatureText(housing)), housing,
                      &Palette::shortfall});
  const double ambient = heat.network.ambient;
  levels.push_back({QStringLiteral("ambient %1").arg(temperatureText(ambient)), ambient});
  return levels;
}

// Where the limit is passed, if that is on the chart.
void addTimeToLimit(LineChart& chart, const MotorHeat& heat, double seconds, double perUnit) {
  if (!std::isfinite(seconds)) {
    chart.remark = QStringLiteral("the winding stays below its limit");
    return;
  }
  const QString text = seconds == 0 ? QStringLiteral("over the limit within the first cycle")
                                    : QStringLiteral("limit after %1").arg(durationText(seconds));
  chart.remark = QStringLiteral("the winding passes its limit");
  if (seconds * perUnit <= chart.x.high)
    chart.points.push_back(
        {{seconds * perUnit, heat.limit}, text, PlotMark::Shape::Ring, &Palette::shortfall, true});
}

// The stretch of time on which the warm-up is worth looking at: all, or until it leaves the chart.
double lastTime(const WarmUp& warmUp, double ceiling) {
  const Eigen::Index n = warmUp.time.size();
  for (Eigen::Index i = 1; i < n; ++i)
    if (!(warmUp.windingHigh[i] <= ceiling)) return warmUp.time[i];
  return warmUp.time[n - 1];
}

LineChart warmUpChart(const MotorHeat& heat, const WarmUp& warmUp, const Motor& motor) {
  LineChart chart;
  const double ambient = heat.network.ambient;
  const double rise = std::max(heat.limit - ambient, 1.0);
  const double ceiling = heat.limit + 0.6 * rise;
  const double last = lastTime(warmUp, ceiling);
  const std::string_view unit = timeUnit(last);
  const double perUnit = fromInternal(1, unit, Quantity::Time);
  const QString unitText = QString::fromStdString(prettyUnit(unit));
  chart.title = QStringLiteral("Warm-up from cold");
  chart.x = {QStringLiteral("time since cold, %1").arg(unitText), unitText, 0, last * perUnit};
  chart.levels = limitLevels(heat, motor);
  double high = heat.limit;
  for (const Level& level : chart.levels) high = std::max(high, level.value);
  for (const double v : warmUp.windingHigh) high = std::max(high, std::min(v, ceiling));
  chart.y = {QStringLiteral("temperature, °C"), kCelsius, ambient - 0.06 * rise,
             high + 0.08 * (high - ambient)};
  const QVector<double> time = plotValues(warmUp.time, perUnit);
  const QVector<double> windingHigh = plotValues(warmUp.windingHigh);
  chart.bands.push_back({time, plotValues(warmUp.windingLow), windingHigh, &Palette::peak});
  chart.lines.push_back(
      {QStringLiteral("winding"), time, windingHigh, {&Palette::peak}, false, 0.3});
  chart.lines.push_back({QStringLiteral("housing"),
                         time,
                         plotValues(warmUp.housing),
                         {&Palette::accent, Qt::DashLine},
                         false,
                         0.45});
  addTimeToLimit(chart, heat, warmUp.timeToLimit, perUnit);
  if (heat.periodic.runaway)
    chart.warning = QStringLiteral("Thermal runaway: every cycle ends hotter than the last");
  return chart;
}

Level temperatureLevel(const QString& name, double celsius, QColor Palette::*hue) {
  const QString text = quantityText(celsius, Quantity::Temperature, {}, 4);
  return {QStringLiteral("%1 %2").arg(name, text), celsius, hue};
}

// Rows of their own: the winding's ripple would vanish beside its distance from the housing.
CycleRow temperatureRow(const std::vector<Eigen::Index>& samples, const QString& name,
                        const Eigen::ArrayXd& values, const SeriesLook& look) {
  CycleRow row{name, name, name + QStringLiteral(" once settled, °C"), {}, {}, false, 1};
  row.series.push_back({name, kCelsius, plotValues(picked(values, samples)), look});
  return row;
}

std::vector<CycleRow> temperatureRows(const std::vector<Eigen::Index>& samples,
                                      const PeriodicHeat& periodic) {
  std::vector<CycleRow> rows{
      temperatureRow(samples, "winding", periodic.winding, {&Palette::peak, Qt::SolidLine, 1.8}),
      temperatureRow(samples, "housing", periodic.housing, {&Palette::accent, Qt::DashLine})};
  rows[0].levels = {temperatureLevel("peak", periodic.windingPeak, &Palette::peak),
                    temperatureLevel("mean", periodic.windingMean, &Palette::muted)};
  rows[1].levels = {temperatureLevel("peak", periodic.housingPeak, &Palette::accent)};
  return rows;
}

CycleView temperatureCycle(const Snapshot& snapshot) {
  const MotorHeat& heat = *snapshot.evaluation->heat;
  CycleView view;
  const std::vector<Eigen::Index>& samples = snapshot.shownSamples();
  view.time = plotValues(picked(heat.time, samples));
  view.period = snapshot.evaluation->cycle->period;
  view.bands = segmentBands(*snapshot.evaluatedProject, *snapshot.evaluation->cycle);
  view.stale = snapshot.stale;
  if (!heat.periodic.runaway) view.rows = temperatureRows(samples, heat.periodic);
  return view;
}

QString oneText(const HeatCharts& charts) {
  return QStringLiteral("1 = %1, S1")
      .arg(quantityText(charts.continuousTorque, Quantity::Torque, "N*m"));
}

// A line through those overloads that last a finite while.
ChartLine overloadLine(const QString& name, const std::vector<OverloadPoint>& points,
                       double OverloadPoint::*seconds, const SeriesLook& look, double nameFrom) {
  ChartLine line{name, {}, {}, look, false, nameFrom};
  for (auto point = points.rbegin(); point != points.rend(); ++point) {
    const double time = (*point).*seconds;
    if (!(time > 0) || !std::isfinite(time)) continue;
    line.x << time;
    line.y << point->multiple;
  }
  return line;
}

std::vector<std::pair<double, QString>> durationTicks() {
  std::vector<std::pair<double, QString>> ticks;
  for (const double s : {0.01, 0.1, 1.0, 10.0, 60.0, 600.0, 3600.0, 36000.0, 360000.0})
    ticks.emplace_back(s, durationText(s));
  return ticks;
}

void addShortTime(LineChart& chart, const HeatCharts& charts) {
  // The longest first: it stands closest to the others and needs the free side.
  for (auto point = charts.shortTime.rbegin(); point != charts.shortTime.rend(); ++point) {
    const auto [seconds, multiple] = *point;
    if (!std::isfinite(multiple)) continue;
    const QString text = QStringLiteral("S2 %1").arg(quantityText(seconds, Quantity::Time, "min"));
    chart.points.push_back({{seconds, multiple}, text, PlotMark::Shape::Disc, &Palette::peak});
  }
}

LineChart overloadChart(const HeatCharts& charts) {
  LineChart chart;
  chart.title = QStringLiteral("Overload");
  chart.remark = oneText(charts);
  chart.lines = {overloadLine(QStringLiteral("from cold"), charts.overload,
                              &OverloadPoint::fromCold, {&Palette::peak}, 0.25),
                 overloadLine(QStringLiteral("from warm"), charts.overload,
                              &OverloadPoint::fromWarm, {&Palette::accent, Qt::DashLine}, 0.6)};
  addShortTime(chart, charts);
  std::erase_if(chart.lines, [](const ChartLine& line) { return line.x.size() < 2; });
  double first = 600;
  double last = 2 * 5400;
  for (const ChartLine& line : chart.lines) {
    first = std::min(first, line.x.first());
    last = std::max(last, line.x.last());
  }
  chart.x = {QStringLiteral("time until the winding limit (s, min, h)"),
             QStringLiteral("s"),
             first / 6,
             last * 5,
             durationTicks(),
             true};
  chart.y = {kMultipleTitle, {}, 0, 6.4};
  chart.levels = {{QStringLiteral("S1, lasts"), 1, &Palette::continuous}};
  return chart;
}

ChartLine dutyLine(const QString& name, const std::vector<DutyPoint>& points,
                   double DutyPoint::*multiple, const SeriesLook& look, double nameFrom) {
  ChartLine line{name, {}, {}, look, false, nameFrom};
  for (const DutyPoint& point : points) {
    line.x << 100 * point.duty;
    line.y << finiteOrGap(point.*multiple);
  }
  return line;
}

// Whether the loss of turning unloaded makes a curve of its own.
bool dragTells(const std::vector<DutyPoint>& points) {
  return std::any_of(points.begin(), points.end(), [](const DutyPoint& p) {
    return std::abs(p.standing - p.running) > 0.01 * p.standing;
  });
}

LineChart dutyChart(const HeatCharts& charts) {
  LineChart chart;
  chart.title = QStringLiteral("Duty");
  chart.remark = oneText(charts);
  chart.lines = {dutyLine(QStringLiteral("S3, idle at rest"), charts.duty, &DutyPoint::standing,
                          {&Palette::peak}, 0.35)};
  if (dragTells(charts.duty))
    chart.lines.push_back(dutyLine(QStringLiteral("S6, idle turning"), charts.duty,
                                   &DutyPoint::running, {&Palette::accent, Qt::DashLine}, 0.6));
  else
    chart.lines.front().name = QStringLiteral("S3 and S6");
  if (charts.cycleMultiple > 0) {
    const QPointF at(100 * charts.cycleDuty, charts.cycleMultiple);
    chart.points.push_back(
        {at, QStringLiteral("this cycle: %1 at %2 %").arg(numberText(at.y()), numberText(at.x())),
         PlotMark::Shape::Ring, &Palette::text, true});
  }
  const double top = multipleCeiling(chart.lines.front().y, std::max(1.2, charts.cycleMultiple));
  chart.x = {QStringLiteral("duty factor, %"), QStringLiteral("%"), 0, 100};
  chart.y = {kMultipleTitle, {}, 0, top};
  chart.levels = {{QStringLiteral("S1"), 1, &Palette::continuous}};
  return chart;
}

}  // namespace

HeatView heatView(const Snapshot& snapshot) {
  HeatView view;
  view.stale = snapshot.stale;
  if (!snapshot.evaluation || !snapshot.evaluation->heat || !snapshot.evaluatedProject) return view;
  const MotorHeat& heat = *snapshot.evaluation->heat;
  view.runaway = heat.periodic.runaway;
  view.cycle = temperatureCycle(snapshot);
  if (!snapshot.studies || !snapshot.studies->heat) return view;
  const HeatCharts& charts = *snapshot.studies->heat;
  view.warmUp = warmUpChart(heat, charts.warmUp, snapshot.evaluatedProject->active().motor);
  view.overload = overloadChart(charts);
  view.duty = dutyChart(charts);
  return view;
}

}  // namespace jw

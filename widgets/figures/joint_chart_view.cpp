#include "widgets/figures/joint_chart_view.h"

#include <algorithm>
#include <cmath>

#include "widgets/theme/number_text.h"

namespace jw {
namespace {

constexpr double kLowest = -60;  // [dB]
constexpr double kHighest = 40;  // at least
constexpr double kStep = 20;

QString hertz(double frequency) { return quantityText(frequency, Quantity::Frequency, "Hz"); }

QVector<double> listed(const std::vector<double>& values) { return {values.begin(), values.end()}; }

/// Below the chart's edge a gap, not a line along it.
QVector<double> shown(const std::vector<double>& values) {
  QVector<double> list = listed(values);
  for (double& value : list)
    if (value < kLowest) value = std::nan("");
  return list;
}

/// [dB] the first line of the grid that leaves room above every resonance for its name.
double highestOf(const std::vector<SwingCurve>& curves) {
  double highest = kHighest;
  for (const SwingCurve& curve : curves) {
    const double peak = *std::max_element(curve.motor.begin(), curve.motor.end());
    highest = std::max(highest, kStep * std::ceil((peak + kStep / 4) / kStep));
  }
  return highest;
}

void addSwing(LineChart& chart, const SwingCurve& curve, bool lighter) {
  const QString inertia = quantityText(curve.masses.load, Quantity::Inertia, "kg*m^2");
  const Qt::PenStyle dashes = lighter ? Qt::DashLine : Qt::SolidLine;
  const QVector<double> x = listed(curve.frequency);
  chart.lines.push_back(
      {lighter ? QStringLiteral("motor, %1").arg(inertia) : QStringLiteral("motor"),
       x,
       shown(curve.motor),
       {&Palette::peak, dashes},
       false,
       0.93});
  chart.lines.push_back(
      {lighter ? QStringLiteral("joint, %1").arg(inertia) : QStringLiteral("joint"),
       x,
       shown(curve.joint),
       {&Palette::accent, dashes},
       false,
       0.72});
}

/// 1, 2 and 5 of every decade between `low` and `high`, both above 0.
std::vector<std::pair<double, QString>> decadeTicks(double low, double high) {
  std::vector<std::pair<double, QString>> ticks;
  for (double decade = std::pow(10, std::floor(std::log10(low))); decade <= high; decade *= 10) {
    for (const double step : {1.0, 2.0, 5.0}) {
      const double at = step * decade;
      if (at >= low && at <= high) ticks.emplace_back(at, numberText(at));
    }
  }
  return ticks;
}

/// [dB] of a curve at a frequency of its list.
double valueAt(const SwingCurve& curve, const std::vector<double>& values, double frequency) {
  const auto found = std::lower_bound(curve.frequency.begin(), curve.frequency.end(), frequency);
  return values[static_cast<std::size_t>(found - curve.frequency.begin())];
}

void markResonances(LineChart& chart, const SwingCurve& curve) {
  const double low = std::max(kLowest, valueAt(curve, curve.motor, curve.locked));
  const double high = valueAt(curve, curve.motor, curve.free);
  chart.points.push_back({{curve.locked, low},
                          QStringLiteral("antiresonance %1").arg(hertz(curve.locked)),
                          PlotMark::Shape::Ring,
                          &Palette::peak});
  chart.points.push_back({{curve.free, high},
                          QStringLiteral("resonance %1").arg(hertz(curve.free)),
                          PlotMark::Shape::Ring,
                          &Palette::peak});
}

/// One piece of the stacked bar, from `from` [mm]; returns its end.
double addPiece(LineChart& chart, double from, double size, const QString& name,
                QColor Palette::*hue) {
  if (!(size > 0)) return from;
  const double to = from + size;
  chart.lines.push_back({{}, {from, to}, {2, 2}, {hue, Qt::SolidLine, 14}});
  chart.points.push_back(
      {{(from + to) / 2, 2},
       QStringLiteral("%1 %2").arg(name, quantityText(1e-3 * size, Quantity::Length, "mm")),
       PlotMark::Shape::Disc,
       hue});
  return to;
}

}  // namespace

LineChart swingChart(const JointCharts& charts) {
  LineChart chart;
  chart.title = QStringLiteral("Frequency response to the motor's torque");
  if (charts.swing.empty()) {
    chart.remark = QStringLiteral("needs the rotor's inertia and a stage's stiffness");
    return chart;
  }
  const SwingCurve& heavy = charts.swing.front();
  for (std::size_t k = 0; k < charts.swing.size(); ++k) addSwing(chart, charts.swing[k], k > 0);
  for (const SwingCurve& curve : charts.swing) markResonances(chart, curve);
  if (charts.bandwidth > 0) {
    chart.lines.push_back({QStringLiteral("wanted %1").arg(hertz(charts.bandwidth)),
                           {charts.bandwidth, charts.bandwidth},
                           {kLowest, highestOf(charts.swing)},
                           {&Palette::muted, Qt::DotLine},
                           false,
                           0.9});
  }
  chart.remark = QStringLiteral("load %1 · %2 % damping assumed")
                     .arg(quantityText(heavy.masses.load, Quantity::Inertia, "kg*m^2"),
                          numberText(100 * kAssumedDamping));
  chart.x = {QStringLiteral("frequency, Hz"), QStringLiteral("Hz"), heavy.frequency.front(),
             charts.swing.back().frequency.back()};
  chart.x.logarithmic = true;
  chart.x.ticks = decadeTicks(chart.x.low, chart.x.high);
  const double highest = highestOf(charts.swing);
  chart.y = {QStringLiteral("speed over that of a rigid joint, dB"), QStringLiteral("dB"), kLowest,
             highest};
  return chart;
}

LineChart toolErrorChart(const JointCharts& charts) {
  LineChart chart;
  chart.title = QStringLiteral("Error at the tool");
  if (!charts.error || !(charts.reach > 0)) {
    chart.remark = QStringLiteral("needs an encoder, each stage's play, a stiffness and the reach");
    return chart;
  }
  const double mm = 1e3 * charts.reach;
  const ErrorBudget& error = *charts.error;
  double end = 0;
  end = addPiece(chart, end, mm * error.play, QStringLiteral("play"), &Palette::peak);
  end =
      addPiece(chart, end, mm * error.hysteresis, QStringLiteral("hysteresis"), &Palette::gravity);
  end = addPiece(chart, end, mm * error.windUp, QStringLiteral("wind-up"), &Palette::accent);
  end = addPiece(chart, end, mm * error.transmission, QStringLiteral("transmission error"),
                 &Palette::friction);
  end = addPiece(chart, end, mm * error.encoder, QStringLiteral("encoder step"), &Palette::text);
  const double rss = mm * error.rootSumSquare();
  const auto length = [](double value) {
    return quantityText(1e-3 * value, Quantity::Length, "mm");
  };
  chart.lines.push_back({{}, {0, rss}, {1, 1}, {&Palette::muted, Qt::SolidLine, 14}});
  chart.points.push_back({{rss, 1}, length(rss), PlotMark::Shape::Disc, &Palette::muted});
  double right = std::max(end, rss);
  if (charts.toolError > 0) {
    const double allowed = 1e3 * charts.toolError;
    right = std::max(right, allowed);
    chart.lines.push_back({QStringLiteral("allowed %1").arg(length(allowed)),
                           {allowed, allowed},
                           {0.4, 2.6},
                           {&Palette::shortfall, Qt::DashLine},
                           false,
                           0.9});
  }
  chart.remark =
      QStringLiteral("worst case %1 · root sum of squares %2 · at %3")
          .arg(length(end), length(rss), quantityText(charts.reach, Quantity::Length, "m"));
  chart.x = {QStringLiteral("error at the tool, mm"), QStringLiteral("mm"), 0, 1.15 * right};
  chart.y = {{}, {}, 0.4, 2.6, {{2, QStringLiteral("worst")}, {1, QStringLiteral("r.s.s.")}}};
  return chart;
}

}  // namespace jw

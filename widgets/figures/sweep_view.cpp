#include "widgets/figures/sweep_view.h"

#include <algorithm>
#include <cmath>

#include "widgets/figures/chooser.h"
#include "widgets/inputs/field_text.h"
#include "widgets/theme/number_text.h"

namespace jw {
namespace {

MarginCurves curvesOf(const SweepView& view) {
  return {view.x, view.sweep->points, view.sweep->checks};
}

QString withUnit(const QString& text, std::string_view unit) {
  const QString pretty = QString::fromStdString(prettyUnit(unit));
  return pretty.isEmpty() ? text : text + QStringLiteral(", ") + pretty;
}

/// A few round values between two.
std::vector<std::pair<double, QString>> fewTicks(double low, double high) {
  std::vector<std::pair<double, QString>> ticks;
  const double decade = std::pow(10, std::floor(std::log10(high - low)));
  for (const double part : {1.0, 0.5, 0.2}) {
    ticks.clear();
    const double step = part * decade;
    for (double k = std::ceil(low / step); k * step <= high; ++k)
      ticks.emplace_back(k * step, numberText(k * step, 4));
    if (ticks.size() >= 3) break;
  }
  return ticks;
}

/// A curve with the range of what is known of it; empty if nothing is.
LineChart quantityChart(const SweepView& view, const std::string& id) {
  LineChart chart;
  const auto& columns = view.sweep->quantities;
  const auto found = std::find_if(columns.begin(), columns.end(),
                                  [&](const QuantityColumn& column) { return column.id == id; });
  if (found == columns.end()) return chart;
  ChartLine line;
  double low = INFINITY, high = -INFINITY;
  for (std::size_t k = 0; k < found->value.size(); ++k) {
    double shown = kUnset;
    if (std::isfinite(found->value[k]))
      shown = fromInternal(found->value[k], found->unit, found->quantity);
    line.x << view.x[k];
    line.y << shown;
    if (!isSet(shown)) continue;
    low = std::min(low, shown);
    high = std::max(high, shown);
  }
  const QString label = toQString(found->label);
  chart.title = label;
  if (!(low <= high)) {
    chart.remark = QStringLiteral("is not known");
    return chart;
  }
  const double room = std::max(0.06 * (high - low), 1e-6 * std::max(std::abs(high), 1e-6));
  line.look = {&Palette::accent, Qt::SolidLine, 2};
  chart.lines.push_back(std::move(line));
  const QString unit = QString::fromStdString(prettyUnit(found->unit));
  chart.y = {unit, unit, low - room, high + room, fewTicks(low - room, high + room)};
  return chart;
}

void markPresent(LineChart& chart, double x, double low, double high) {
  chart.lines.push_back({{}, {x, x}, {low, high}, {&Palette::accent, Qt::DotLine, 1.6}});
}

}  // namespace

QString axisTitle(const Project& project, const SweepAxis& axis) {
  return withUnit(lowerFirst(fieldTitle(project, axis.path)), axis.info->unit);
}

std::vector<double> shownValues(const SweepAxis& axis) {
  std::vector<double> shown;
  for (const double value : axis.value)
    shown.push_back(fromInternal(value, axis.info->unit, axis.info->quantity));
  return shown;
}

QString axisText(const SweepAxis& axis, double shown) {
  const QString unit = QString::fromStdString(prettyUnit(axis.info->unit));
  return unit.isEmpty() ? numberText(shown, 4) : numberText(shown, 4) + u' ' + unit;
}

SweepView sweepView(std::shared_ptr<const FieldSweep> sweep, const Project& project,
                    const std::string& quantity) {
  SweepView view;
  if (!sweep || sweep->axis.value.size() < 2) return view;
  view.sweep = std::move(sweep);
  const SweepAxis& axis = view.sweep->axis;
  view.x = shownValues(axis);
  view.margins = marginChart(curvesOf(view), project.requirements.targetMargin);
  view.margins.title = QStringLiteral("Margins over ") + lowerFirst(fieldTitle(project, axis.path));
  view.margins.x = {axisTitle(project, axis), {}, view.x.front(), view.x.back()};
  view.quantity = quantityChart(view, quantity);
  view.quantity.x = view.margins.x;
  const auto field = findField(project, axis.path);
  if (!field || !isSet(field->number())) return view;
  const double now = fromInternal(field->number(), axis.info->unit, axis.info->quantity);
  view.margins.remark = QStringLiteral("as it is: ") + axisText(axis, now);
  if (!(now >= view.x.front() && now <= view.x.back())) return view;
  markPresent(view.margins, now, kLeastMargin, kMostMargin);
  if (!view.quantity.empty())
    markPresent(view.quantity, now, view.quantity.y.low, view.quantity.y.high);
  return view;
}

QString sweepReading(const SweepView& view, double x, double margin) {
  if (!view.sweep) return {};
  const QString read = marginReading(curvesOf(view), x, margin);
  return read.isEmpty() ? read : axisText(view.sweep->axis, x) + QStringLiteral("  ·  ") + read;
}

}  // namespace jw

#include "widgets/figures/ratio_view.h"

#include <algorithm>
#include <cmath>

#include "core/model/field_catalogue.h"
#include "widgets/theme/number_text.h"

namespace jw {
namespace {

QString ratioText(double ratio) { return numberText(ratio, 4); }

MarginCurves curvesOf(const RatioSweep& sweep) { return {sweep.ratio, sweep.points, sweep.checks}; }

void addBands(RatioView& view, const RatioSweep& sweep) {
  const auto addEnd = [&](const BandEnd& end, bool low) {
    QString limit = end.title.empty() ? QStringLiteral("end of the range") : checkLabel(end.title);
    if (end.open) limit += QStringLiteral(" cannot be evaluated beyond");
    view.ends.push_back({end.ratio, ratioText(end.ratio) + QStringLiteral(" · ") + limit, low});
  };
  for (const FeasibleBand& band : sweep.bands) {
    const QVector<double> x{band.low.ratio, band.high.ratio};
    view.chart.bands.push_back(
        {x, {kRatioBottom, kRatioBottom}, {kMostMargin, kMostMargin}, &Palette::holds});
    addEnd(band.low, true);
    addEnd(band.high, false);
  }
}

/// Marks beyond the range are told in words.
void addMarks(RatioView& view, const RatioSweep& sweep) {
  QStringList beyond;
  const auto add = [&](double ratio, const QString& name, QColor Palette::*hue) {
    if (!isSet(ratio)) return;
    const QString text = name + u' ' + ratioText(ratio);
    if (ratio >= sweep.ratio.front() && ratio <= sweep.ratio.back())
      view.marks.push_back({ratio, text, hue});
    else
      beyond << text;
  };
  const QString loss = quantityText(sweep.leastLoss.value, Quantity::Power, "W");
  const QString peak = quantityText(sweep.coolest.value, Quantity::Temperature, "degC");
  add(sweep.leastLoss.ratio, QStringLiteral("least loss (%1)").arg(loss), &Palette::accent);
  add(sweep.coolest.ratio, QStringLiteral("coolest winding (%1)").arg(peak), &Palette::accent);
  add(sweep.inertiaMatched, QStringLiteral("inertia match"), &Palette::text);
  add(sweep.torqueMatched, QStringLiteral("match with load torque"), &Palette::text);
  std::sort(view.marks.begin(), view.marks.end(),
            [](const RatioMark& a, const RatioMark& b) { return a.ratio < b.ratio; });
  if (!beyond.isEmpty() && view.chart.warning.isEmpty())
    view.chart.remark +=
        QStringLiteral("  ·  beyond the range: ") + beyond.join(QStringLiteral(", "));
}

QString bandSummary(const RatioSweep& sweep) {
  QStringList parts;
  for (const FeasibleBand& band : sweep.bands)
    parts << QStringLiteral("%1 to %2").arg(ratioText(band.low.ratio), ratioText(band.high.ratio));
  return QStringLiteral("all hold from ") + parts.join(QStringLiteral(" and from "));
}

/// Where something cannot be evaluated, in words that follow others; empty if nowhere.
QString openSummary(const RatioSweep& sweep) {
  QString text;
  for (std::size_t k = 0; k < sweep.points.size(); ++k) {
    if (sweep.points[k].openAt < 0) continue;
    std::size_t last = k;
    while (last + 1 < sweep.points.size() && sweep.points[last + 1].openAt >= 0) ++last;
    text += QStringLiteral("  ·  cannot be evaluated from %1 to %2")
                .arg(ratioText(sweep.ratio[k]), ratioText(sweep.ratio[last]));
    k = last;
  }
  if (!text.isEmpty() && !sweep.openReason.empty())
    text += QStringLiteral(": ") + QString::fromStdString(sweep.openReason);
  return text;
}

}  // namespace

QString ratioName(const Project& project, int stage) {
  if (stage < 0) return QStringLiteral("from motor to joint");
  const auto& transmission = project.active().transmission;
  QString name = QStringLiteral("of stage %1").arg(stage + 1);
  if (std::size_t(stage) >= transmission.size()) return name;
  const Stage& one = transmission[std::size_t(stage)];
  if (!one.name.empty()) return name + QStringLiteral(", ") + QString::fromStdString(one.name);
  const FieldInfo& family = *structInfo<Stage>().find("family");
  const std::string_view label = family.choices[std::size_t(one.family)].label;
  return name + QStringLiteral(", ") + checkLabel(std::string(label));
}

RatioView ratioView(std::shared_ptr<const RatioSweep> sweep, const Project& project) {
  RatioView view;
  if (!sweep || sweep->ratio.size() < 2) return view;
  view.chart = marginChart(curvesOf(*sweep), project.requirements.targetMargin);
  view.chart.title =
      QStringLiteral("Ratio ") + ratioName(project, sweep->total ? -1 : sweep->stage);
  if (sweep->bands.empty())
    view.chart.warning = QStringLiteral("no ratio of the range holds") + openSummary(*sweep);
  else
    view.chart.remark = bandSummary(*sweep) + openSummary(*sweep);
  view.chart.x = {QStringLiteral("ratio"), {}, sweep->ratio.front(), sweep->ratio.back()};
  view.chart.x.logarithmic = true;
  view.chart.y.title = QStringLiteral("margin, %  (curves beyond +200 % leave the picture)");
  view.chart.y.low = kRatioBottom;
  view.chart.y.high = kRatioTop;
  view.chart.nameHeights = std::pair(kLeastMargin, kMostMargin);
  addBands(view, *sweep);
  addMarks(view, *sweep);
  view.ticks = sweep->realizable;
  view.present = sweep->present;
  view.sweep = std::move(sweep);
  return view;
}

QString ratioReading(const RatioView& view, double ratio, double margin) {
  if (!view.sweep) return {};
  const QString read = marginReading(curvesOf(*view.sweep), ratio, margin);
  return read.isEmpty() ? read : ratioText(ratio) + QStringLiteral("  ·  ") + read;
}

}  // namespace jw

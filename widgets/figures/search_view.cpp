#include "widgets/figures/search_view.h"

#include <algorithm>
#include <cmath>

#include <QCoreApplication>

#include "core/studies/pareto_front.h"
#include "widgets/figures/finite.h"
#include "widgets/inputs/field_text.h"
#include "widgets/theme/number_text.h"

namespace jw {
namespace {

QString tr(const char* text) { return QCoreApplication::translate("Search", text); }

/// The figure of that name; a name that is not known becomes the smallest margin.
DesignFigure figureOf(const std::string& name) {
  const auto figure = findFigure(name);
  return figure ? *figure : *findFigure("margin");
}

double shownValue(const DesignFigure& figure, const DesignPoint& point, const Properties& of) {
  const double value = finiteOrGap(figure.of(point, of));
  return std::isnan(value) ? value : fromInternal(value, figure.unit, figure.quantity);
}

/// Least and greatest of all that is shown.
struct Extent {
  double low = kUnset;
  double high = kUnset;
  void add(double value) {
    if (std::isnan(value)) return;
    if (!(low <= value)) low = value;
    if (!(high >= value)) high = value;
  }
  void addTo(ChartAxis& axis) const {
    if (std::isnan(low)) return;
    const double room = high > low ? 0.07 * (high - low) : std::max(0.1 * std::abs(low), 0.1);
    axis.low = low - room;
    axis.high = high + room;
  }
};

/// The front as a staircase: what can be had of the second figure for the first.
ChartLine staircase(const std::vector<QPointF>& front, bool falling) {
  ChartLine line;
  line.look = {&Palette::accent, Qt::SolidLine, 1.4};
  for (std::size_t k = 0; k < front.size(); ++k) {
    if (k > 0) {
      line.x << front[k].x();
      line.y << front[k - 1].y();
    }
    line.x << front[k].x();
    line.y << front[k].y();
  }
  if (falling) {
    std::reverse(line.x.begin(), line.x.end());
    std::reverse(line.y.begin(), line.y.end());
  }
  return line;
}

ChartLine frontOf(const std::vector<SearchDot>& dots, const DesignFigure& x,
                  const DesignFigure& y) {
  ParetoAxis first{{}, moreIsBetter(x)};
  ParetoAxis second{{}, moreIsBetter(y)};
  std::vector<QPointF> held;
  for (const SearchDot& dot : dots) {
    if (dot.state == CheckState::Short) continue;
    held.push_back(dot.at);
    first.value.push_back(dot.at.x());
    second.value.push_back(dot.at.y());
  }
  std::vector<QPointF> front;
  for (const std::size_t k : paretoFront(first, second)) front.push_back(held[k]);
  return staircase(front, moreIsBetter(x));
}

void addPresent(LineChart& chart, const SearchStudy& study, const DesignFigure& x,
                const DesignFigure& y, std::array<Extent, 2>& extents) {
  if (!study.base) return;
  const QPointF at(shownValue(x, study.present, study.presentProperties),
                   shownValue(y, study.present, study.presentProperties));
  if (std::isnan(at.x()) || std::isnan(at.y())) return;
  extents[0].add(at.x());
  extents[1].add(at.y());
  chart.points.push_back({at, {}, PlotMark::Shape::Target, &Palette::text, true});
}

QString betterText(const DesignFigure& figure) {
  return moreIsBetter(figure) ? tr("more is better") : tr("less is better");
}

/// Checks that are short, worst first.
std::vector<PointMargin> shortOnes(const DesignPoint& point) {
  std::vector<PointMargin> ones;
  for (const PointMargin& one : point.margins)
    if (one.margin < 0) ones.push_back(one);
  std::sort(ones.begin(), ones.end(),
            [](const PointMargin& a, const PointMargin& b) { return a.margin < b.margin; });
  return ones;
}

QString nameOf(const SearchStudy& study, const Candidate& candidate) {
  return QString::fromStdString(combinationName(*study.question.space, candidate.which));
}

QString titleOf(const SearchStudy& study, const PointMargin& one) {
  return QString::fromStdString(checkTitle(one.id, one.stage, *study.base));
}

/// Mass, loss, size and heat, and what is on the axes.
QStringList keyNumbers(const SearchStudy& study, const Candidate& one) {
  QStringList numbers;
  std::vector<std::string> names{"mass", "loss", "length", "motor.temperature_winding_peak"};
  for (const std::string& axis : {study.x, study.y}) {
    if (axis != "margin" && std::find(names.begin(), names.end(), axis) == names.end()) {
      names.push_back(axis);
    }
  }
  for (const std::string& name : names) {
    const DesignFigure figure = figureOf(name);
    if (std::isnan(figure.of(one.point, one.properties))) continue;
    numbers << lowerFirst(QString::fromStdString(figureLabel(figure))) + u' ' +
                   figureText(figure, one.point, one.properties);
  }
  return numbers;
}

QString countText(std::size_t count) { return fixedNumber(double(count), 0); }

}  // namespace

CheckState stateOf(const DesignPoint& point, const Project& project) {
  if (!isSet(point.worst)) return CheckState::Open;
  if (point.worst < 0) return CheckState::Short;
  if (point.openAt >= 0) return CheckState::Open;
  return point.worst < project.requirements.targetMargin ? CheckState::Close : CheckState::Holds;
}

QString axisTitle(const DesignFigure& figure) {
  const QString unit = QString::fromStdString(prettyUnit(figure.unit));
  const QString label = lowerFirst(QString::fromStdString(figureLabel(figure)));
  return unit.isEmpty() ? label : label + QStringLiteral(", ") + unit;
}

SearchView searchView(const SearchStudy& study, bool withShort) {
  SearchView view;
  const DesignFigure x = figureOf(study.x);
  const DesignFigure y = figureOf(study.y);
  std::array<Extent, 2> extents;
  for (std::size_t k = 0; k < study.candidates.size(); ++k) {
    const Candidate& one = study.candidates[k];
    const SearchDot dot{
        {shownValue(x, one.point, one.properties), shownValue(y, one.point, one.properties)},
        stateOf(one.point, *study.question.project),
        k};
    const bool isShort = !one.point.noneShort();
    if ((isShort && !withShort) || std::isnan(dot.at.x()) || std::isnan(dot.at.y())) continue;
    extents[0].add(dot.at.x());
    extents[1].add(dot.at.y());
    view.dots.push_back(dot);
  }
  std::stable_partition(view.dots.begin(), view.dots.end(),
                        [](const SearchDot& d) { return d.state == CheckState::Short; });
  LineChart& chart = view.chart;
  chart.x.title = axisTitle(x);
  chart.y.title = axisTitle(y);
  chart.lines.push_back(frontOf(view.dots, x, y));
  addPresent(chart, study, x, y, extents);
  extents[0].addTo(chart.x);
  extents[1].addTo(chart.y);
  chart.title = study.question.invented ? tr("Invented parts") : tr("Parts of the catalogue");
  chart.remark = QStringLiteral("→ %1  ·  ↑ %2").arg(betterText(x), betterText(y));
  if (!chart.points.empty()) chart.remark += QStringLiteral("  ·  ○ ") + tr("present design");
  if (!chart.lines.front().x.empty())
    chart.remark += QStringLiteral("  ·  — ") + tr("Pareto front");
  return view;
}

QString figureText(const DesignFigure& figure, const DesignPoint& point, const Properties& of) {
  const double value = figure.of(point, of);
  if (figure.name.starts_with("margin")) return marginText(value);
  return quantityText(value, figure.quantity, figure.unit);
}

QString tightestText(const SearchStudy& study, const DesignPoint& point) {
  if (point.worstAt < 0 || !study.base) return {};
  return titleOf(study, point.margins[std::size_t(point.worstAt)]);
}

/// Which verdicts the present design can tell and this one cannot.
static QString openText(const SearchStudy& study, const DesignPoint& point) {
  if (point.opened == 0 || !study.base) return {};
  const QString first = titleOf(study, point.margins[std::size_t(point.openAt)]);
  QString text = QStringLiteral("<br>○ ") + tr("open for want of a part's data: %1").arg(first);
  if (point.opened > 1) text += tr(" and %1 more").arg(point.opened - 1);
  return text;
}

QString candidateTip(const SearchStudy& study, const Candidate& candidate) {
  constexpr std::size_t kMostReasons = 4;
  QString text = QStringLiteral("<b>%1</b><br>%2")
                     .arg(nameOf(study, candidate).toHtmlEscaped(),
                          keyNumbers(study, candidate).join(QStringLiteral("<br>")));
  const std::vector<PointMargin> reasons = shortOnes(candidate.point);
  if (reasons.empty()) {
    text += QStringLiteral("<br>") +
            tr("tightest: %1 %2")
                .arg(tightestText(study, candidate.point), marginText(candidate.point.worst));
    return text + openText(study, candidate.point);
  }
  text += QStringLiteral("<br>") + tr("falls short:");
  for (std::size_t k = 0; k < std::min(kMostReasons, reasons.size()); ++k) {
    text += QStringLiteral("<br>■ %1 %2")
                .arg(titleOf(study, reasons[k]), marginText(reasons[k].margin));
  }
  if (reasons.size() > kMostReasons) {
    text += QStringLiteral("<br>") + tr("and %1 more").arg(reasons.size() - kMostReasons);
  }
  return text;
}

QString candidateLine(const SearchStudy& study, const Candidate& candidate) {
  const QString verb = candidate.point.noneShort() ? tr("tightest") : tr("short of");
  const int open = candidate.point.opened;
  return QStringLiteral("%1: %2 %3 %4%5")
      .arg(nameOf(study, candidate), verb, tightestText(study, candidate.point),
           marginText(candidate.point.worst),
           open > 0 ? tr(", %1 left open").arg(open) : QString());
}

QString countsText(const SearchStudy& study) {
  const SearchProgress& n = study.result.counts;
  const bool all = n.screened == n.total;
  QStringList parts{all ? tr("%1 screened").arg(countText(n.total))
                        : tr("%1 of %2 screened").arg(countText(n.screened), countText(n.total)),
                    tr("%1 survive").arg(countText(n.survivors))};
  const std::size_t most = study.question.mostEvaluated;
  if (most > 0 && n.survivors > most) parts << tr("of these the lightest %1").arg(countText(most));
  if (!study.done) parts << tr("%1 evaluated").arg(countText(n.evaluated));
  parts << tr("%1 found").arg(countText(n.found + study.result.filteredOut));
  if (!study.question.filters.empty() && study.done)
    parts << tr("%1 pass the filters").arg(countText(n.found));
  return parts.join(QStringLiteral(" · "));
}

QString reasonsText(const SearchStudy& study) {
  if (!study.base) return {};
  const auto listed = [&](const std::map<std::string_view, std::size_t>& counts,
                          const QString& heading) {
    std::vector<std::pair<std::size_t, std::string_view>> order;
    for (const auto& [check, count] : counts) order.emplace_back(count, check);
    std::sort(order.rbegin(), order.rend());
    QString text;
    for (const auto& [count, check] : order) {
      const QString title = QString::fromStdString(checkTitle(check, -1, *study.base));
      text += QStringLiteral("\n  %1  %2").arg(countText(count), lowerFirst(title));
    }
    return text.isEmpty() ? text : heading + text;
  };
  QStringList parts{listed(study.result.rejected, tr("Rejected by screening, by check:")),
                    listed(study.result.fellShort, tr("Short in full, by the worst check:"))};
  parts.removeAll(QString());
  if (study.result.unknown > 0)
    parts << tr("Cannot be evaluated for want of data: %1").arg(countText(study.result.unknown));
  if (study.result.filteredOut > 0)
    parts << tr("Kept out by the filters: %1").arg(countText(study.result.filteredOut));
  return parts.join(u'\n');
}

}  // namespace jw

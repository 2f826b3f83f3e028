#include "app/sweep_report.h"

#include <algorithm>
#include <cmath>

#include <fmt/format.h>

#include "app/caution_text.h"
#include "app/csv_text.h"
#include "app/text_table.h"

namespace jw {
namespace {

std::string checkName(std::string_view id, int stage) {
  return stage < 0 ? std::string(id) : fmt::format("{} stage {}", id, stage + 1);
}

/// The smallest margin, or the check that is open while none is short; null if none is known.
const PointMargin* worstOf(const DesignPoint& point) {
  const int at = point.openAt >= 0 && !(point.worst < 0) ? point.openAt : point.worstAt;
  return at < 0 ? nullptr : &point.margins[static_cast<std::size_t>(at)];
}

std::string worstName(const DesignPoint& point) {
  const PointMargin* worst = worstOf(point);
  return worst ? checkName(worst->id, worst->stage) : std::string();
}

const char* stateOf(const DesignPoint& point) {
  if (point.holds()) return "holds";
  return point.worst < 0 ? "short" : "open";
}

std::string percent(double margin) {
  if (std::isnan(margin)) return "–";
  return std::isinf(margin) ? "unlimited" : formatNumber(100 * margin, 3) + " %";
}

double inUnit(double value, std::string_view unit, Quantity quantity) {
  return std::isfinite(value) ? fromInternal(value, unit, quantity) : value;
}

/// What both kinds of sweep have in common.
struct Rows {
  std::string axisTitle;
  std::vector<double> axis;  ///< in the unit of the title
  const std::vector<DesignPoint>& points;
  const std::vector<MarginColumn>& checks;
  const std::vector<QuantityColumn>& quantities;
};

Rows rowsOf(const RatioSweep& sweep) {
  const std::string title =
      sweep.total ? "ratio" : fmt::format("transmission[{}].ratio", sweep.stage);
  return {title, sweep.ratio, sweep.points, sweep.checks, sweep.quantities};
}

Rows rowsOf(const FieldSweep& sweep) {
  const FieldInfo& info = *sweep.axis.info;
  std::vector<double> axis;
  for (const double value : sweep.axis.value) {
    axis.push_back(inUnit(value, info.unit, info.quantity));
  }
  return {csvTitle(sweep.axis.path, info.unit), std::move(axis), sweep.points, sweep.checks,
          sweep.quantities};
}

std::string csvOf(const Rows& rows) {
  std::vector<std::string> titles{rows.axisTitle, "holds", "worst margin", "worst check"};
  for (const MarginColumn& c : rows.checks) titles.push_back("margin " + checkName(c.id, c.stage));
  for (const QuantityColumn& q : rows.quantities) titles.push_back(csvTitle(q.id, q.unit));
  std::string text = csvLine(titles);
  for (std::size_t k = 0; k < rows.axis.size(); ++k) {
    const DesignPoint& point = rows.points[k];
    std::vector<std::string> cells{csvNumber(rows.axis[k]), point.holds() ? "yes" : "no",
                                   csvNumber(point.worst), worstName(point)};
    for (const MarginColumn& c : rows.checks) cells.push_back(csvNumber(c.margin[k]));
    for (const QuantityColumn& q : rows.quantities) {
      cells.push_back(csvNumber(inUnit(q.value[k], q.unit, q.quantity)));
    }
    text += csvLine(cells);
  }
  return text;
}

std::string tableOf(const Rows& rows) {
  TextTable table("rlrl");
  table.addRow({rows.axisTitle, "", "worst margin", "by"});
  for (std::size_t k = 0; k < rows.axis.size(); ++k) {
    const DesignPoint& point = rows.points[k];
    table.addRow(
        {formatNumber(rows.axis[k], 5), stateOf(point), percent(point.worst), worstName(point)});
  }
  return table.text();
}

std::string endText(const BandEnd& end) {
  const std::string ratio = formatNumber(end.ratio, 5);
  return end.title.empty() ? ratio + " (end of the range)"
                           : fmt::format("{} (beyond: {}{})", ratio, end.title,
                                         end.open ? " cannot be evaluated" : "");
}

std::string markText(std::string_view what, double ratio) {
  return isSet(ratio) ? fmt::format("{}: {}\n", what, formatNumber(ratio, 5)) : std::string();
}

std::string marksOf(const RatioSweep& sweep) {
  std::string text = markText("Ratio as it is", sweep.present);
  for (const FeasibleBand& band : sweep.bands) {
    text += fmt::format("Holds from {} to {}\n", endText(band.low), endText(band.high));
  }
  if (sweep.bands.empty()) text += "No ratio of the range holds\n";
  if (!sweep.openReason.empty()) text += "Where it is open: " + sweep.openReason + "\n";
  text += markText("Least loss", sweep.leastLoss.ratio);
  text += markText("Coolest winding", sweep.coolest.ratio);
  text += markText("Inertia match, √(J_L/J_m)", sweep.inertiaMatched);
  text += markText("Inertia match with load torque, √((J_L + τ_L/α)/J_m)", sweep.torqueMatched);
  return text + fmt::format("Ratios that can be built: {}\n", sweep.realizable.size());
}

/// The checks that the rows of the text name.
std::vector<std::string_view> namedIn(const std::vector<DesignPoint>& points) {
  std::vector<std::string_view> named;
  for (const DesignPoint& point : points) {
    if (const PointMargin* worst = worstOf(point)) named.push_back(worst->id);
  }
  return named;
}

std::vector<std::string_view> namedIn(const RatioSweep& sweep) {
  std::vector<std::string_view> named = namedIn(sweep.points);
  for (const FeasibleBand& band : sweep.bands) {
    named.insert(named.end(), {band.low.check, band.high.check});
  }
  return named;
}

std::vector<std::string_view> namedIn(const FieldMap& map) {
  std::vector<std::string_view> named;
  for (const int at : map.worstAt.reshaped()) {
    if (at >= 0) named.push_back(map.checks[static_cast<std::size_t>(at)].id);
  }
  return named;
}

std::string mapCheck(const FieldMap& map, Eigen::Index row, Eigen::Index column) {
  const int at = map.worstAt(row, column);
  if (at < 0) return {};
  const MarginColumn& check = map.checks[static_cast<std::size_t>(at)];
  return checkName(check.id, check.stage);
}

std::string axisNumber(const SweepAxis& axis, Eigen::Index k) {
  const double value = axis.value[static_cast<std::size_t>(k)];
  return csvNumber(inUnit(value, axis.info->unit, axis.info->quantity));
}

}  // namespace

std::string sweepCsv(const RatioSweep& sweep) { return csvOf(rowsOf(sweep)); }
std::string sweepCsv(const FieldSweep& sweep) { return csvOf(rowsOf(sweep)); }

std::string mapCsv(const FieldMap& map) {
  std::string text =
      csvLine({csvTitle(map.across.path, map.across.info->unit),
               csvTitle(map.up.path, map.up.info->unit), "holds", "worst margin", "worst check"});
  for (Eigen::Index row = 0; row < map.worst.rows(); ++row) {
    for (Eigen::Index column = 0; column < map.worst.cols(); ++column) {
      const double worst = map.worst(row, column);
      text += csvLine({axisNumber(map.across, column), axisNumber(map.up, row),
                       worst >= 0 ? "yes" : "no", csvNumber(worst), mapCheck(map, row, column)});
    }
  }
  return text;
}

std::string sweepText(const RatioSweep& sweep) {
  return marksOf(sweep) + "\n" + tableOf(rowsOf(sweep)) + cautionText(namedIn(sweep));
}

std::string sweepText(const FieldSweep& sweep) {
  return tableOf(rowsOf(sweep)) + cautionText(namedIn(sweep.points));
}

std::string mapText(const FieldMap& map) {
  TextTable table("rrlrl");
  table.addRow({map.across.path, map.up.path, "", "worst margin", "by"});
  for (Eigen::Index row = 0; row < map.worst.rows(); ++row) {
    for (Eigen::Index column = 0; column < map.worst.cols(); ++column) {
      const double worst = map.worst(row, column);
      table.addRow({axisNumber(map.across, column), axisNumber(map.up, row),
                    worst >= 0  ? "holds"
                    : worst < 0 ? "short"
                                : "open",
                    percent(worst), mapCheck(map, row, column)});
    }
  }
  return table.text() + cautionText(namedIn(map));
}

}  // namespace jw

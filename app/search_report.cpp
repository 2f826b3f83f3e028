#include "app/search_report.h"

#include <algorithm>
#include <cmath>

#include <fmt/format.h>

#include "app/caution_text.h"
#include "app/check_report.h"
#include "app/csv_text.h"
#include "app/text_table.h"
#include "app/whole_number.h"

namespace jw {
namespace {

constexpr std::size_t kMostRows = 40;  // of the text for people

double inUnit(double value, std::string_view unit, Quantity quantity) {
  return std::isfinite(value) ? fromInternal(value, unit, quantity) : value;
}

std::string worstName(const DesignPoint& point) {
  if (point.worstAt < 0) return {};
  const PointMargin& worst = point.margins[static_cast<std::size_t>(point.worstAt)];
  return worst.stage < 0 ? std::string(worst.id)
                         : fmt::format("{} stage {}", worst.id, worst.stage + 1);
}

std::vector<DesignPoint> pointsOf(const SearchReport& report) {
  std::vector<DesignPoint> points;
  for (const std::size_t k : report.order) points.push_back(report.result.candidates[k].point);
  return points;
}

/// The cells that both forms begin with.
std::vector<std::string> nameCells(const SearchSpace& space, const Combination& which) {
  std::vector<std::string> cells{space.motors[which.motor].name,
                                 space.reducers[which.reducer].name};
  if (space.beltStage >= 0) cells.push_back(csvNumber(space.beltRatios[which.ratio]));
  return cells;
}

std::vector<std::string> csvTitles(const SearchReport& report,
                                   const std::vector<MarginColumn>& margins,
                                   const std::vector<QuantityColumn>& quantities) {
  std::vector<std::string> titles{"motor", "reducer"};
  if (report.space.beltStage >= 0) titles.push_back("belt ratio");
  for (const char* title : {"worst margin", "worst check", "open", "mass [kg]", "length [mm]",
                            "diameter [mm]", "loss [W]"}) {
    titles.emplace_back(title);
  }
  for (const MarginColumn& c : margins) {
    titles.push_back(c.stage < 0 ? fmt::format("margin {}", c.id)
                                 : fmt::format("margin {} stage {}", c.id, c.stage + 1));
  }
  for (const QuantityColumn& q : quantities) titles.push_back(csvTitle(q.id, q.unit));
  return titles;
}

std::string countsText(const SearchResult& result) {
  const SearchProgress& n = result.counts;
  std::string text = fmt::format(
      "{} combinations, {} after screening, {} evaluated in full, {} found, {} kept out by "
      "filters\n",
      countText(n.total), countText(n.survivors), countText(n.evaluated), countText(n.found),
      countText(result.filteredOut));
  for (const auto& [check, count] : result.rejected) {
    text += fmt::format("  screened out by {}: {}\n", check, countText(count));
  }
  for (const auto& [check, count] : result.fellShort) {
    text += fmt::format("  short in full, worst {}: {}\n", check, countText(count));
  }
  if (result.unknown > 0) {
    text += fmt::format("  cannot be evaluated for want of data: {}\n", result.unknown);
  }
  return text;
}

std::size_t rowsShown(const SearchReport& report) {
  return std::min(kMostRows, report.order.size());
}

/// The checks that the text for people names.
std::vector<std::string_view> namedIn(const SearchReport& report) {
  std::vector<std::string_view> named;
  for (const auto& [check, count] : report.result.rejected) named.push_back(check);
  for (const auto& [check, count] : report.result.fellShort) named.push_back(check);
  for (std::size_t row = 0; row < rowsShown(report); ++row) {
    const DesignPoint& point = report.result.candidates[report.order[row]].point;
    if (point.worstAt < 0) continue;
    named.push_back(point.margins[static_cast<std::size_t>(point.worstAt)].id);
  }
  return named;
}

}  // namespace

std::string searchCsv(const SearchReport& report) {
  const std::vector<DesignPoint> points = pointsOf(report);
  const auto margins = marginColumns(points, report.base);
  const auto quantities = quantityColumns(points, report.base);
  std::string text = csvLine(csvTitles(report, margins, quantities));
  for (std::size_t row = 0; row < report.order.size(); ++row) {
    const Candidate& one = report.result.candidates[report.order[row]];
    std::vector<std::string> cells = nameCells(report.space, one.which);
    cells.push_back(csvNumber(one.point.worst));
    cells.push_back(worstName(one.point));
    cells.push_back(std::to_string(one.point.opened));
    const Properties& p = one.properties;
    for (const double value : {p.mass, 1e3 * p.length, 1e3 * p.diameter, one.point.lossMean}) {
      cells.push_back(csvNumber(value));
    }
    for (const MarginColumn& c : margins) cells.push_back(csvNumber(c.margin[row]));
    for (const QuantityColumn& q : quantities) {
      cells.push_back(csvNumber(inUnit(q.value[row], q.unit, q.quantity)));
    }
    text += csvLine(cells);
  }
  return text;
}

std::string searchText(const SearchReport& report) {
  const bool belt = report.space.beltStage >= 0;
  TextTable table(belt ? "llrrlrrr" : "llrlrrr");
  std::vector<std::string> titles{"motor", "reducer"};
  if (belt) titles.push_back("belt");
  for (const char* title : {"worst margin", "by", "open", "mass/kg", "loss/W"})
    titles.emplace_back(title);
  table.addRow(titles);
  for (std::size_t row = 0; row < rowsShown(report); ++row) {
    const Candidate& one = report.result.candidates[report.order[row]];
    std::vector<std::string> cells = nameCells(report.space, one.which);
    cells.push_back(formatNumber(100 * one.point.worst, 3) + " %");
    cells.push_back(worstName(one.point));
    cells.push_back(std::to_string(one.point.opened));
    cells.push_back(formatNumber(one.properties.mass, 3));
    cells.push_back(formatNumber(one.point.lossMean, 3));
    table.addRow(cells);
  }
  std::string text = countsText(report.result) + "\n";
  if (report.order.empty()) return text + "Nothing was found.\n" + cautionText(namedIn(report));
  text += fmt::format("By {}:\n", report.sortedBy) + table.text();
  if (report.order.size() > kMostRows) {
    text +=
        fmt::format("and {} more; --csv lists all\n", countText(report.order.size() - kMostRows));
  }
  return text + cautionText(namedIn(report));
}

std::string explanationText(const Project& combined, const std::string& name) {
  const Evaluation evaluation = evaluate(combined);
  std::string text = fmt::format("{}: {}\n", name, countStates(evaluation.checks));
  std::vector<std::string_view> named;
  for (const Check* check : worstFirst(evaluation.checks)) {
    if (check->state != CheckState::Short) continue;
    named.push_back(check->id);
    const Working working = explain(combined, evaluation, *check);
    text += fmt::format("\n{}\n  {}\n  {}\n", check->title, working.formula, working.result);
    for (const WorkingSymbol& s : working.symbols) {
      text += fmt::format("  {} = {}  {}, {}\n", s.symbol,
                          formatQuantity(s.value, s.quantity, s.unit), s.label, s.origin);
    }
  }
  for (const MissingInput& missing : evaluation.missing) text += describe(missing) + "\n";
  return text + cautionText(named);
}

}  // namespace jw

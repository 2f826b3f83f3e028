#include "app/check_report.h"

#include <algorithm>
#include <array>
#include <cmath>

#include <fmt/format.h>

#include "app/caution_text.h"
#include "app/text_table.h"
#include "core/checks/acceptance_check.h"

namespace jw {
namespace {

constexpr std::array kReportOrder{CheckState::Short, CheckState::Close, CheckState::Open,
                                  CheckState::Holds};

std::string joined(const std::vector<std::string>& parts) {
  std::string all;
  for (const std::string& part : parts) all += (all.empty() ? "" : ", ") + part;
  return all;
}

/// A note may have several lines; a row of a table has one.
std::string onOneLine(std::string text) {
  std::replace_if(
      text.begin(), text.end(), [](unsigned char c) { return c < ' '; }, ' ');
  return text;
}

std::string verdictTable(const std::vector<Check>& checks) {
  TextTable table("llrrl");
  for (const Check* check : worstFirst(checks)) {
    const bool open = check->state == CheckState::Open;
    table.addRow({std::string(stateName(check->state)), check->title,
                  open ? "needs " + joined(check->missing) : formatDemand(*check),
                  open ? "" : formatMargin(*check), onOneLine(acceptedText(*check))});
  }
  return table.text();
}

std::string quantityTable(const std::vector<NamedQuantity>& quantities) {
  TextTable table("lrl");
  for (const NamedQuantity& q : quantities) {
    const double shown = isSet(q.value) ? fromInternal(q.value, q.unit, q.quantity) : kUnset;
    table.addRow({std::string(q.label), formatNumber(shown), prettyUnit(q.unit)});
  }
  return table.text();
}

/// What was passed over or changed while the file was read; each says what became of it.
std::string fileNotes(const CheckReport& report) {
  if (report.notes.empty()) return {};
  std::string text = "Remarks on the file:\n";
  for (const InputError& note : report.notes) text += "  " + describe(note) + "\n";
  return text + "\n";
}

std::string remarks(const CheckReport& report) {
  std::string text;
  for (const InputError& error : report.evaluation.missing) text += describe(error) + "\n";
  for (const Notice& notice : report.evaluation.notices) text += describe(notice.text) + "\n";
  return text;
}

/// How many short or close ones someone has accepted as they stand.
std::ptrdiff_t countAccepted(const std::vector<Check>& checks, CheckState state) {
  if (state != CheckState::Short && state != CheckState::Close) return 0;
  return std::count_if(checks.begin(), checks.end(), [&](const Check& check) {
    return check.state == state && standsAccepted(check);
  });
}

}  // namespace

std::string countStates(const std::vector<Check>& checks) {
  std::vector<std::string> parts;
  for (const CheckState state : kReportOrder) {
    const auto count = std::count_if(checks.begin(), checks.end(),
                                     [&](const Check& check) { return check.state == state; });
    const bool plural = state == CheckState::Holds && count > 1;
    if (count == 0) continue;
    parts.push_back(fmt::format("{} {}", count, plural ? "hold" : stateName(state)));
    if (const auto accepted = countAccepted(checks, state); accepted > 0) {
      parts.back() += fmt::format(" ({} accepted)", accepted);
    }
  }
  return parts.empty() ? "no verdicts" : joined(parts);
}

std::string formatMargin(const Check& check) {
  if (std::isnan(check.margin)) return "–";
  if (std::isinf(check.margin)) return "unlimited";
  const double percent = 100 * check.margin;
  const std::string number = formatNumber(std::round(percent * 10) / 10, 3);
  return (percent >= 0 ? "+" : "") + number + " %";
}

std::string formatDemand(const Check& check) {
  const auto shown = [&](double value) {
    return formatNumber(std::isfinite(value) ? fromInternal(value, check.unit, check.quantity)
                                             : value);
  };
  const std::string unit = prettyUnit(check.unit);
  const double reached = check.capacityIsResult ? check.capacity : check.demand;
  const double allowed = check.capacityIsResult ? check.demand : check.capacity;
  return fmt::format("{}{}{}{}{}", shown(reached), check.capacityIsResult ? ", wanted " : " of ",
                     shown(allowed), unit.empty() || unit == "°" ? "" : " ", unit);
}

std::string checkTable(const CheckReport& report) {
  const Project& project = report.project;
  std::string text = fmt::format("{} · variant {}: {}\n\n",
                                 project.title.empty() ? report.fileName : project.title,
                                 project.active().name, countStates(report.evaluation.checks));
  text += fileNotes(report) + verdictTable(report.evaluation.checks);
  text += "\n" + quantityTable(report.evaluation.quantities);
  if (const std::string notes = remarks(report); !notes.empty()) text += "\n" + notes;
  return text + cautionText(idsOf(report.evaluation.checks));
}

}  // namespace jw

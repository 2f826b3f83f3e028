#include "app/remedies_report.h"

#include <algorithm>
#include <cmath>

#include <fmt/format.h>
#include <nlohmann/json.hpp>

#include "app/caution_text.h"
#include "app/text_table.h"
#include "core/checks/cautions.h"
#include "core/checks/check_order.h"

namespace jw {
namespace {

using Json = nlohmann::ordered_json;

Json number(double value) { return std::isfinite(value) ? Json(value) : Json(nullptr); }

Json stageNumber(int stage) { return stage < 0 ? Json(nullptr) : Json(stage + 1); }

template <class Changed>
Json inUnit(double value, const Changed& one) {
  return number(isSet(value) ? fromInternal(value, one.unit, one.quantity) : value);
}

Json slopeObject(const InputSlope& slope, const RemediesReport& report) {
  const StudyInput& input = report.slopes.inputs[slope.input];
  return {{"path", input.path},           {"label", inputLabel(report.project, input)},
          {"slope", number(slope.slope)}, {"below", number(slope.below)},
          {"above", number(slope.above)}, {"corner", slope.corner}};
}

Json movedObject(const MovedVerdict& moved) {
  return {{"id", moved.id},
          {"stage", stageNumber(moved.stage)},
          {"title", moved.title},
          {"before", number(moved.before)},
          {"after", number(moved.after)},
          {"was", stateName(moved.was)},
          {"becomes", stateName(moved.becomes)}};
}

std::string_view kindName(RemedyKind kind) {
  switch (kind) {
    case RemedyKind::Field: return "field";
    case RemedyKind::Parts: return "parts";
    case RemedyKind::Motor: return "motor";
  }
  return "";
}

Json remedyObject(const Remedy& remedy) {
  Json object{{"kind", kindName(remedy.kind)},
              {"asks_less", remedy.role == InputRole::AsksLess},
              {"path", remedy.path},
              {"label", remedy.label},
              {"unit", remedy.unit}};
  object["from"] = inUnit(remedy.from, remedy);
  object["to"] = inUnit(remedy.to, remedy);
  object["change"] = number(remedy.change);
  Json& set = object["set"] = Json::object();
  for (const FieldEdit& edit : remedy.edits) set[edit.path] = edit.text;
  object["motor"] = remedy.motor ? Json(remedy.motor->name) : Json(nullptr);
  object["margin"] = number(remedy.margin);
  Json& moves = object["moves"] = Json::array();
  for (const MovedVerdict& moved : remedy.others) moves.push_back(movedObject(moved));
  return object;
}

Json noneObject(const NoRemedy& none) {
  return {{"asks_less", none.role == InputRole::AsksLess},
          {"path", none.path},
          {"label", none.label},
          {"unit", none.unit},
          {"from", inUnit(none.from, none)},
          {"best", inUnit(none.reached, none)},
          {"margin", number(none.margin)}};
}

Json checkObject(const Check& check, const RemediesReport& report) {
  Json object{{"id", check.id},
              {"stage", stageNumber(check.stage)},
              {"title", check.title},
              {"state", stateName(check.state)},
              {"margin", number(check.margin)}};
  Json& slopes = object["depends_on"] = Json::array();
  if (const MarginSlopes* known = report.slopes.of(check.id, check.stage)) {
    for (const InputSlope& one : known->inputs) slopes.push_back(slopeObject(one, report));
  }
  Json& remedies = object["remedies"] = Json::array();
  Json& cannot = object["cannot"] = Json::array();
  if (const CheckRemedies* found = report.found.of(check.id, check.stage)) {
    for (const Remedy& one : found->remedies) remedies.push_back(remedyObject(one));
    for (const NoRemedy& one : found->cannot) cannot.push_back(noneObject(one));
  }
  return object;
}

std::string percent(double share, int digits = 3) {
  return std::isfinite(share) ? formatNumber(100 * share, digits) + " %" : "–";
}

std::string signedPercent(double share) { return (share > 0 ? "+" : "") + percent(share); }

/// "motor rotor inertia +1.4, ratio −0.5".
std::string dependsText(const Check& check, const RemediesReport& report) {
  const MarginSlopes* slopes = report.slopes.of(check.id, check.stage);
  if (!slopes) return {};
  std::string text;
  for (std::size_t k = 0; k < std::min<std::size_t>(3, slopes->inputs.size()); ++k) {
    const InputSlope& one = slopes->inputs[k];
    if (k > 0) text += ", ";
    text += inputLabel(report.project, report.slopes.inputs[one.input]) +
            (one.slope > 0 ? " +" : " ") + formatNumber(one.slope, 2);
  }
  return text;
}

std::string worseText(const Remedy& remedy) {
  std::string text;
  for (const MovedVerdict& moved : remedy.others) {
    if (!moved.worsens()) break;
    if (!text.empty()) text += ", ";
    text += fmt::format("{} gets {}", moved.title, stateName(moved.becomes));
  }
  return text;
}

std::vector<std::string> remedyRow(const Remedy& remedy) {
  return {remedy.label, formatQuantity(remedy.from, remedy.quantity, remedy.unit),
          "→ " + formatQuantity(remedy.to, remedy.quantity, remedy.unit),
          signedPercent(remedy.change), worseText(remedy)};
}

std::string remediesOf(const CheckRemedies& found, InputRole role, const char* heading) {
  TextTable table("lrrrl");
  std::size_t rows = 0;
  for (const Remedy& remedy : found.remedies) {
    if (remedy.role != role) continue;
    table.addRow(remedyRow(remedy));
    ++rows;
  }
  return rows == 0 ? std::string() : fmt::format("  {}\n{}", heading, table.text("    "));
}

std::string cannotOf(const CheckRemedies& found) {
  TextTable table("lrl");
  for (const NoRemedy& none : found.cannot) {
    table.addRow({none.label, percent(none.margin),
                  "at " + formatQuantity(none.reached, none.quantity, none.unit)});
  }
  return found.cannot.empty() ? std::string() : "  Cannot alone, at best\n" + table.text("    ");
}

std::string checkText(const Check& check, const RemediesReport& report) {
  std::string text = fmt::format("{}: {}, margin {}\n", check.title, stateName(check.state),
                                 percent(check.margin));
  const std::string depends = dependsText(check, report);
  if (!depends.empty()) text += "  Depends most on " + depends + "\n";
  const CheckRemedies* found = report.found.of(check.id, check.stage);
  if (!found) return text;
  const std::string design = remediesOf(*found, InputRole::Design, "Would make it hold");
  text += design.empty() ? "  No input of the design makes it hold alone.\n" : design;
  text += remediesOf(*found, InputRole::AsksLess, "Asking for less");
  return text + cannotOf(*found);
}

}  // namespace

std::string remediesJson(const RemediesReport& report) {
  Json document{{"format", "jointwright remedies"}, {"version", 1}, {"file", report.fileName}};
  document["project"] = report.project.title;
  document["variant"] = report.project.active().name;
  document["target"] = report.found.target;
  Json& checks = document["checks"] = Json::array();
  std::vector<std::string_view> told;
  for (const Check* check : worstFirst(report.evaluation.checks)) {
    if (!report.tells(check->id)) continue;
    checks.push_back(checkObject(*check, report));
    told.push_back(check->id);
  }
  document["caution"] = kCaution;
  document["cautions"] = cautionsBeside(told);
  return document.dump(2, ' ', false, Json::error_handler_t::replace) + "\n";
}

std::string remediesText(const RemediesReport& report) {
  std::string text =
      fmt::format("Target margin {}; per cent of margin per per cent of the input\n\n",
                  percent(report.found.target));
  std::vector<std::string_view> told;
  for (const Check* check : worstFirst(report.evaluation.checks)) {
    if (!report.tells(check->id) || check->state == CheckState::Open) continue;
    text += checkText(*check, report);
    told.push_back(check->id);
  }
  return text + cautionText(told);
}

}  // namespace jw

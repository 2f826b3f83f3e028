// The verdicts for programs.
#include <cmath>

#include <nlohmann/json.hpp>

#include "app/caution_text.h"
#include "app/check_report.h"
#include "core/checks/cautions.h"

namespace jw {
namespace {

using Json = nlohmann::ordered_json;

/// JSON has no NaN and no infinity: null.
Json number(double value) { return std::isfinite(value) ? Json(value) : Json(nullptr); }

Json inUnit(double value, std::string_view unit, Quantity quantity) {
  return number(std::isfinite(value) ? fromInternal(value, unit, quantity) : value);
}

Json stageNumber(const Check& check) {
  return check.stage < 0 ? Json(nullptr) : Json(check.stage + 1);
}

Json acceptedObject(const Check& check) {
  if (!check.accepted) return nullptr;
  const AcceptedVerdict& accepted = *check.accepted;
  return Json{{"date", accepted.date}, {"note", accepted.note}, {"stands", accepted.stands}};
}

Json checkObject(const Check& check) {
  Json object;
  object["id"] = check.id;
  object["stage"] = stageNumber(check);
  object["title"] = check.title;
  object["demand"] = inUnit(check.demand, check.unit, check.quantity);
  object["capacity"] = inUnit(check.capacity, check.unit, check.quantity);
  object["unit"] = check.unit;
  object["margin"] = number(check.margin);
  object["unlimited"] = std::isinf(check.margin) && check.margin > 0;
  object["state"] = stateName(check.state);
  object["missing"] = check.missing;
  object["accepted"] = acceptedObject(check);
  return object;
}

Json quantityObject(const NamedQuantity& q) {
  return Json{{"value", inUnit(q.value, q.unit, q.quantity)}, {"unit", q.unit}, {"label", q.label}};
}

Json remark(const InputError& error) {
  return Json{{"what", error.what}, {"where", error.where}, {"remedy", error.remedy}};
}

Json worstObject(const std::vector<Check>& checks) {
  if (checks.empty()) return nullptr;
  const Check& worst = *worstFirst(checks).front();
  return Json{{"id", worst.id},
              {"stage", stageNumber(worst)},
              {"state", stateName(worst.state)},
              {"margin", number(worst.margin)}};
}

}  // namespace

std::string checkJson(const CheckReport& report) {
  Json document{{"format", "jointwright check"}, {"version", 1}, {"file", report.fileName}};
  document["project"] = report.project.title;
  document["variant"] = report.project.active().name;
  Json& checks = document["checks"] = Json::array();
  for (const Check* check : worstFirst(report.evaluation.checks)) {
    checks.push_back(checkObject(*check));
  }
  Json& quantities = document["quantities"] = Json::object();
  for (const NamedQuantity& q : report.evaluation.quantities) {
    quantities[std::string(q.id)] = quantityObject(q);
  }
  Json& missing = document["missing"] = Json::array();
  for (const InputError& error : report.evaluation.missing) missing.push_back(remark(error));
  Json& notices = document["notices"] = Json::array();
  for (const Notice& notice : report.evaluation.notices) notices.push_back(remark(notice.text));
  for (const InputError& note : report.notes) notices.push_back(remark(note));
  document["worst"] = worstObject(report.evaluation.checks);
  document["caution"] = kCaution;
  document["cautions"] = cautionsBeside(idsOf(report.evaluation.checks));
  return document.dump(2, ' ', false, Json::error_handler_t::replace) + "\n";
}

}  // namespace jw

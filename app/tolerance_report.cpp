#include "app/tolerance_report.h"

#include <algorithm>
#include <cmath>

#include <fmt/format.h>
#include <nlohmann/json.hpp>

#include "app/caution_text.h"
#include "app/text_table.h"
#include "core/checks/cautions.h"

namespace jw {
namespace {

using Json = nlohmann::ordered_json;

Json number(double value) { return std::isfinite(value) ? Json(value) : Json(nullptr); }

/// A width in the input's unit; of a temperature in K.
double width(const BandedInput& input, double internal) {
  if (input.quantity == Quantity::Temperature) return internal;
  return fromInternal(internal, input.unit, input.quantity) -
         fromInternal(0, input.unit, input.quantity);
}

Json inputObject(const BandedInput& input) {
  Json object{{"path", input.path}, {"label", input.label}, {"unit", input.unit}};
  object["nominal"] = number(fromInternal(input.nominal, input.unit, input.quantity));
  object["half_width"] = number(width(input, input.band.halfWidth(input.nominal)));
  object["shape"] = bandShapeName(input.band.shape);
  object["deviation"] = number(width(input, input.deviation));
  object["out_of_range"] = input.outOfRange;
  return object;
}

Json byPath(const std::vector<BandedInput>& inputs, const std::vector<double>& values) {
  Json object = Json::object();
  for (std::size_t k = 0; k < inputs.size(); ++k) object[inputs[k].path] = number(values[k]);
  return object;
}

void addSpread(Json& object, const MarginSpread& spread, const std::vector<BandedInput>& inputs) {
  object["nominal"] = number(spread.nominal);
  object["mean"] = number(spread.drawn.mean);
  object["deviation"] = number(spread.drawn.deviation);
  object["low"] = number(spread.drawn.low);
  object["median"] = number(spread.drawn.median);
  object["high"] = number(spread.drawn.high);
  object["chance"] = number(spread.holds.share);
  object["chance_low"] = number(spread.holds.low);
  object["chance_high"] = number(spread.holds.high);
  object["open"] = spread.open;
  object["rank_correlation"] = byPath(inputs, spread.correlation);
  object["linear"] = {{"deviation", number(spread.linearDeviation)},
                      {"chance", number(spread.linearHolds)},
                      {"shares", byPath(inputs, spread.share)}};
}

std::string percent(double share, int digits = 3) {
  return std::isfinite(share) ? formatNumber(100 * share, digits) + " %" : "–";
}

std::string chanceText(const Proportion& p) {
  if (!isSet(p.share)) return "–";
  return fmt::format("{} ({} to {})", percent(p.share, 4), percent(p.low, 4), percent(p.high, 4));
}

/// The input that matters most to this margin.
std::string strongest(const MarginSpread& spread, const std::vector<BandedInput>& inputs) {
  std::size_t best = 0;
  for (std::size_t k = 1; k < inputs.size(); ++k) {
    if (std::abs(spread.correlation[k]) > std::abs(spread.correlation[best])) best = k;
  }
  if (spread.correlation[best] == 0) return {};
  return fmt::format("{} ({:+.2f})", inputs[best].path, spread.correlation[best]);
}

std::vector<std::string> row(const MarginSpread& s, const std::vector<BandedInput>& inputs) {
  return {s.title,
          chanceText(s.holds),
          percent(s.nominal),
          percent(s.drawn.low),
          percent(s.drawn.high),
          (s.id.empty() ? "≤ " : "") + percent(s.linearHolds, 4),
          strongest(s, inputs)};
}

/// Checks that no draw could tell.
std::size_t openOf(const Tolerance& result) {
  return static_cast<std::size_t>(
      std::count_if(result.checks.begin(), result.checks.end(),
                    [](const MarginSpread& one) { return one.drawn.count == 0; }));
}

}  // namespace

std::string toleranceJson(const std::string& fileName, const Project& project,
                          const Tolerance& result) {
  Json document{{"format", "jointwright tolerance"}, {"version", 1}, {"file", fileName}};
  document["project"] = project.title;
  document["variant"] = project.active().name;
  document["draws"] = result.draws;
  document["seed"] = result.seed;
  Json& inputs = document["inputs"] = Json::array();
  for (const BandedInput& input : result.inputs) inputs.push_back(inputObject(input));
  addSpread(document["all"], result.worst, result.inputs);
  Json& checks = document["checks"] = Json::array();
  for (const MarginSpread& check : result.checks) {
    Json object{{"id", check.id}};
    object["stage"] = check.stage < 0 ? Json(nullptr) : Json(check.stage + 1);
    object["title"] = check.title;
    addSpread(object, check, result.inputs);
    checks.push_back(std::move(object));
  }
  document["open"] = openOf(result);
  document["caution"] = kCaution;
  document["cautions"] = cautionsBeside(idsOf(result.checks));
  return document.dump(2, ' ', false, Json::error_handler_t::replace) + "\n";
}

std::string toleranceText(const Tolerance& result) {
  std::string text = fmt::format("{} draws, seed {}\n\n", result.draws, result.seed);
  TextTable inputs("lrrl");
  for (const BandedInput& input : result.inputs) {
    inputs.addRow({input.path, formatQuantity(input.nominal, input.quantity, input.unit),
                   "± " + formatNumber(width(input, input.band.halfWidth(input.nominal)), 3),
                   std::string(bandShapeName(input.band.shape))});
  }
  text += inputs.text() + "\n";
  TextTable table("lrrrrrl");
  table.addRow({"check", "chance that it holds (95 %)", "margin", "2.5 %", "97.5 %", "linear",
                "matters most (rank correlation)"});
  table.addRow(row(result.worst, result.inputs));
  std::vector<const MarginSpread*> order;
  for (const MarginSpread& check : result.checks) {
    if (check.drawn.count > 0) order.push_back(&check);
  }
  std::stable_sort(order.begin(), order.end(), [](const MarginSpread* a, const MarginSpread* b) {
    return a->holds.share < b->holds.share;
  });
  std::vector<std::string_view> named;
  for (const MarginSpread* check : order) {
    table.addRow(row(*check, result.inputs));
    named.push_back(check->id);
  }
  return text + table.text() + cautionText(named);
}

}  // namespace jw

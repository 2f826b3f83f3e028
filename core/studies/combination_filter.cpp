#include "core/studies/combination_filter.h"

#include <algorithm>
#include <cmath>

#include <fmt/format.h>

#include "core/checks/check_writer.h"
#include "core/checks/headline_quantities.h"

namespace jw {
namespace {

constexpr std::string_view kMargin = "margin";
constexpr std::string_view kOpen = "open";

std::string_view trimmed(std::string_view text) {
  const auto first = text.find_first_not_of(' ');
  if (first == text.npos) return {};
  return text.substr(first, text.find_last_not_of(' ') - first + 1);
}

/// The headline figures without values.
const std::vector<NamedQuantity>& headlines() {
  static const std::vector<NamedQuantity> kAll = headlineQuantities({}, {});
  return kAll;
}

bool isCheck(std::string_view id) {
  const auto& kinds = checkKinds();
  return std::any_of(kinds.begin(), kinds.end(), [&](const CheckKind& k) { return k.id == id; });
}

double marginOf(const DesignPoint& point, std::string_view check) {
  double least = kUnset;
  for (const PointMargin& one : point.margins) {
    if (one.id == check && !(one.margin >= least)) least = one.margin;
  }
  return least;
}

InputError badFilter(std::string what, std::string_view text) {
  return {
      std::move(what), std::string(text.substr(0, 80)),
      "write FIGURE<=VALUE or FIGURE>=VALUE, e.g. \"mass<=4 kg\" or \"margin drive.life>=20 %\""};
}

}  // namespace

Properties propertiesOf(const Variant& variant) {
  const Motor& motor = variant.motor;
  Properties sum{motor.mass, motor.length, motor.diameter};
  for (const Stage& stage : variant.transmission) {
    sum.mass += stage.mass;
    sum.length += stage.length;
    sum.diameter = isSet(sum.diameter) && isSet(stage.diameter)
                       ? std::max(sum.diameter, stage.diameter)
                       : kUnset;
  }
  return sum;
}

double DesignFigure::of(const DesignPoint& point, const Properties& properties) const {
  if (headline >= 0) {
    const auto at = static_cast<std::size_t>(headline);
    return at < point.quantities.size() ? point.quantities[at] : kUnset;
  }
  if (!check.empty()) return marginOf(point, check);
  if (name == "mass") return properties.mass;
  if (name == "length") return properties.length;
  if (name == "diameter") return properties.diameter;
  if (name == kOpen) return point.opened;
  return name == "loss" ? point.lossMean : point.worst;
}

std::string figureLabel(const DesignFigure& figure) {
  if (figure.headline >= 0) {
    return std::string(headlines()[static_cast<std::size_t>(figure.headline)].label);
  }
  if (figure.name == "loss") return "mean loss";
  if (figure.name == kMargin) return "smallest margin";
  if (figure.name == kOpen) return "verdicts left open";
  if (figure.check.empty()) return figure.name;
  for (const CheckKind& kind : checkKinds()) {
    if (kind.id != figure.check) continue;
    return fmt::format("margin: {}{}", kind.perStage ? "a stage's " : "", kind.title);
  }
  return figure.name;
}

std::vector<std::string> figureList() {
  std::vector<std::string> names{
      "mass", "length", "diameter", "loss", std::string(kMargin), std::string(kOpen)};
  for (const CheckKind& kind : checkKinds()) names.push_back(fmt::format("margin {}", kind.id));
  for (const NamedQuantity& headline : headlines()) names.emplace_back(headline.id);
  return names;
}

tl::expected<DesignFigure, InputError> findFigure(std::string_view name) {
  name = trimmed(name);
  const std::string own(name);
  if (name == "mass") return DesignFigure{own, Quantity::Mass, "kg", {}, -1};
  if (name == "length" || name == "diameter")
    return DesignFigure{own, Quantity::Length, "mm", {}, -1};
  if (name == "loss") return DesignFigure{own, Quantity::Power, "W", {}, -1};
  if (name == kMargin) return DesignFigure{own, Quantity::Fraction, "%", {}, -1};
  if (name == kOpen) return DesignFigure{own, Quantity::Number, "1", {}, -1};
  if (name.starts_with("margin ")) {
    const std::string_view id = trimmed(name.substr(kMargin.size()));
    if (isCheck(id)) return DesignFigure{own, Quantity::Fraction, "%", std::string(id), -1};
  }
  for (std::size_t k = 0; k < headlines().size(); ++k) {
    const NamedQuantity& one = headlines()[k];
    if (one.id == name) return DesignFigure{own, one.quantity, one.unit, {}, static_cast<int>(k)};
  }
  return tl::unexpected(InputError{
      "no such figure", own.substr(0, 80),
      "use mass, length, diameter, loss, margin, \"margin CHECK\" or an id that 'check --json' "
      "lists"});
}

bool CombinationFilter::passes(const DesignPoint& point, const Properties& properties) const {
  const double value = figure.of(point, properties);
  return atMost ? value <= bound : value >= bound;
}

tl::expected<CombinationFilter, InputError> readFilter(std::string_view text) {
  const auto sign = std::min(text.find("<="), text.find(">="));
  if (sign == text.npos) return tl::unexpected(badFilter("there is no <= and no >=", text));
  const auto figure = findFigure(text.substr(0, sign));
  if (!figure) return tl::unexpected(figure.error());
  const auto bound = parseQuantity(text.substr(sign + 2), figure->quantity,
                                   figure->quantity == Quantity::Fraction ? "1" : figure->unit);
  if (!bound) return tl::unexpected(badFilter(bound.error().what, text));
  return CombinationFilter{*figure, text[sign] == '<', bound->value};
}

}  // namespace jw

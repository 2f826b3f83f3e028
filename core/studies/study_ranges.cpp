#include "core/studies/study_ranges.h"

#include <algorithm>
#include <cmath>

#include "core/model/family_rule.h"

namespace jw {
namespace {

/// Two significant digits, down or up.
double twoDigits(double value, bool up) {
  const double step = std::pow(10, std::floor(std::log10(value)) - 1);
  const double steps = up ? std::ceil(value / step - 1e-9) : std::floor(value / step + 1e-9);
  return steps * step;
}

double within(const Range& range, double value) { return std::clamp(value, range.low, range.high); }

bool isSweepable(const FieldRef& field) {
  const FieldInfo& info = *field.info;
  if (info.kind != FieldKind::Number && info.kind != FieldKind::Integer) return false;
  return std::isfinite(field.number()) && (info.applies == nullptr || info.applies(field.owner));
}

StudyRange aroundTemperature(double value) { return {value - 30, value + 30}; }

}  // namespace

double presentRatio(const Evaluation& evaluation, int stage) {
  if (!evaluation.stages) return kUnset;
  if (stage < 0) {
    double whole = 1;
    for (const StageData& data : *evaluation.stages) whole *= data.stage.ratio;
    return whole;
  }
  const auto at = static_cast<std::size_t>(stage);
  return at < evaluation.stages->size() ? (*evaluation.stages)[at].stage.ratio : kUnset;
}

std::optional<StudyRange> usualRatioRange(const Project& project, const Evaluation& evaluation,
                                          int stage) {
  const double present = presentRatio(evaluation, stage);
  const auto leading = stage < 0 ? leadingStage(project) : stage;
  if (!(present > 0) || !leading) return std::nullopt;
  StudyRange range{present / 4, present * 4};
  const StageFamily family =
      project.active().transmission[static_cast<std::size_t>(*leading)].family;
  if (const FamilyRule* rule = ruleOf(defaultFamilyRules(), family)) {
    const double others = present / presentRatio(evaluation, *leading);
    range.from = std::min(std::max(range.from, rule->ratioLow * others), present / 1.25);
    range.to = std::max(std::min(range.to, rule->ratioHigh * others), present * 1.25);
  }
  return StudyRange{twoDigits(range.from, false), twoDigits(range.to, true)};
}

std::vector<double> ratiosBetween(const StudyRange& range, std::size_t count) {
  std::vector<double> ratios;
  const double factor = std::log(range.to / range.from);
  for (std::size_t k = 0; k < count; ++k) {
    const double share = static_cast<double>(k) / static_cast<double>(count - 1);
    ratios.push_back(k + 1 == count ? range.to : range.from * std::exp(share * factor));
  }
  return ratios;
}

std::optional<RatioSweepRequest> usualRatioSweep(const Project& project,
                                                 const Evaluation& evaluation) {
  const auto range = usualRatioRange(project, evaluation, -1);
  if (!range) return std::nullopt;
  return RatioSweepRequest{-1, ratiosBetween(*range), false};
}

std::vector<FieldRef> sweepFields(const Project& project) {
  std::vector<FieldRef> fields = allFields(project);
  std::erase_if(fields, [](const FieldRef& field) { return !isSweepable(field); });
  return fields;
}

StudyRange usualFieldRange(const FieldRef& field) {
  const FieldInfo& info = *field.info;
  const double value = field.number();
  StudyRange range{std::min(value / 2, value * 2), std::max(value / 2, value * 2)};
  if (info.quantity == Quantity::Temperature) range = aroundTemperature(value);
  if (value == 0 && info.quantity != Quantity::Temperature)
    range = {0, toInternal(1, info.unit, info.quantity)};
  if (info.kind == FieldKind::Integer) range = {std::floor(range.from), std::ceil(range.to)};
  return {within(info.range, range.from), within(info.range, range.to)};
}

SweepAxis axisBetween(const FieldRef& field, const StudyRange& range, std::size_t count) {
  SweepAxis axis{field.path, field.info, {}};
  for (std::size_t k = 0; k < count; ++k) {
    const double share = static_cast<double>(k) / static_cast<double>(count - 1);
    double value = k + 1 == count ? range.to : range.from + share * (range.to - range.from);
    if (field.info->kind == FieldKind::Integer) value = std::round(value);
    if (axis.value.empty() || value > axis.value.back()) axis.value.push_back(value);
  }
  return axis;
}

std::optional<SweepAxis> usualAxis(const Project& project, std::size_t count,
                                   const std::string& other) {
  constexpr const char* kFirst[] = {"load.payloadMass", "load.payloadDistance", "load.inertia"};
  std::vector<FieldRef> fields = sweepFields(project);
  std::erase_if(fields, [&](const FieldRef& field) {
    return field.path == other || !usualFieldRange(field).rises();
  });
  if (fields.empty()) return std::nullopt;
  const FieldRef* chosen = &fields.front();
  for (const char* path : kFirst) {
    const auto found = std::find_if(fields.begin(), fields.end(), [&](const FieldRef& field) {
      return field.path == path && field.number() > 0;
    });
    if (found == fields.end()) continue;
    chosen = &*found;
    break;
  }
  return axisBetween(*chosen, usualFieldRange(*chosen), count);
}

}  // namespace jw

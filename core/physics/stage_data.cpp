#include "core/physics/stage_data.h"

#include <algorithm>
#include <cmath>

#include <fmt/format.h>

#include "core/model/unset.h"
#include "core/physics/grease_table.h"
#include "core/physics/stage_parts.h"

namespace jw {
namespace {

/// [N·m] no-load torque at the input in the conditions of the data sheet.
double ratedDrag(const Stage& stage) {
  const double rise = isSet(stage.dragDamping) ? stage.dragDamping * stage.ratedSpeed : 0;
  return stage.dragTorque + rise;
}

bool drags(const Stage& stage) {
  return stage.dragTorque != 0 || (isSet(stage.dragDamping) && stage.dragDamping != 0);
}

/// What the data sheet's efficiency needs before the drag can be taken out of it.
std::optional<InputError> missingRating(const Stage& stage, const std::string& path) {
  if (!isSet(stage.ratedTorque)) {
    return InputError{"with a no-load torque the rated torque is needed", path + ".ratedTorque",
                      "give the output torque for which the efficiency is stated"};
  }
  if (isSet(stage.dragDamping) && !isSet(stage.ratedSpeed)) {
    return InputError{"with a no-load torque that rises with speed the rated speed is needed",
                      path + ".ratedSpeed",
                      "give the input speed for which the efficiency is stated"};
  }
  return std::nullopt;
}

tl::expected<double, InputError> meshFromDataSheet(const Stage& stage, const std::string& path) {
  if (!drags(stage)) return stage.efficiency;
  if (const auto missing = missingRating(stage, path)) return tl::unexpected(*missing);
  const double ideal = stage.ratedTorque / stage.ratio;
  const double mesh = ideal / (ideal / stage.efficiency - ratedDrag(stage));
  if (mesh > 0 && mesh <= 1) return mesh;
  return tl::unexpected(InputError{
      fmt::format("the no-load torque alone loses more than an efficiency of {:.4g} does",
                  stage.efficiency),
      path + ".dragTorque",
      fmt::format(
          "at rated torque the whole loss is {:.4g} N·m at the input; give less, or a lower "
          "efficiency",
          ideal / stage.efficiency - ideal)});
}

/// Says so where the data sheet's ratio and that of the parts differ.
void compareRatio(const PartsData& parts, const std::string& path, StageData& data) {
  constexpr double kApart = 0.002;
  const Stage& stage = data.stage;
  if (!parts.ratio || std::abs(*parts.ratio / stage.ratio - 1) < kApart) return;
  data.contradictions.push_back(
      {fmt::format("a ratio of {:.6g} is given, but the parts make {:.6g}", stage.ratio,
                   *parts.ratio),
       path + ".ratio", "leave the ratio empty to take it from the parts, or correct the parts"});
}

/// Fills in what the parts tell and the data sheet leaves open.
void fillFromParts(const PartsData& parts, const std::string& path, StageData& data) {
  Stage& stage = data.stage;
  if (!isSet(stage.ratio) && parts.ratio) {
    stage.ratio = *parts.ratio;
    stage.reverses = parts.reverses;
  } else if (isSet(stage.ratio)) {
    compareRatio(parts, path, data);
  }
  if (!isSet(stage.inertia)) stage.inertia = parts.inertia.value_or(0);
  if (!isSet(stage.stiffness.first) && parts.stiffness) stage.stiffness.first = *parts.stiffness;
  if (parts.slipTorque) data.slipTorque = *parts.slipTorque;
  data.creepAtSlip = parts.creepAtSlip;
}

tl::expected<double, InputError> dragFactor(const Stage& stage, double ambient,
                                            const std::string& path) {
  const auto table = readGreaseTable(stage.greaseTable);
  if (!table) {
    return tl::unexpected(
        InputError{table.error().what, path + ".greaseTable", table.error().remedy});
  }
  return table->factorAt(isSet(stage.greaseTemperature) ? stage.greaseTemperature : ambient);
}

}  // namespace

double StageData::drag(double inputSpeed) const {
  const double rise = isSet(stage.dragDamping) ? stage.dragDamping * inputSpeed : 0;
  return dragFactor * (stage.dragTorque + rise);
}

double StageData::starting() const {
  const double loose = isSet(stage.startingTorque) ? stage.startingTorque : 0;
  return std::max(dragFactor * loose, drag(0));
}

double StageData::creep(double outputTorque) const {
  return creepAtSlip * std::clamp(outputTorque / slipTorque, -1.0, 1.0);
}

tl::expected<StageEfficiency, InputError> stageEfficiency(const Stage& stage,
                                                          const std::string& path) {
  StageEfficiency efficiency;
  if (isSet(stage.efficiency)) {
    const auto mesh = meshFromDataSheet(stage, path);
    if (!mesh) return tl::unexpected(mesh.error());
    efficiency.driving = *mesh;
    efficiency.backdriving = 2 - 1 / *mesh;
    efficiency.backdrivingEstimated = true;
  } else if (const auto parts = partsEfficiency(stage)) {
    efficiency = *parts;
  } else {
    return tl::unexpected(InputError{"the efficiency is not given", path + ".efficiency",
                                     "take it from the data sheet; 1 if there is no loss"});
  }
  if (isSet(stage.backdrivingEfficiency)) {
    efficiency.backdriving = stage.backdrivingEfficiency;
    efficiency.backdrivingEstimated = false;
  }
  return efficiency;
}

tl::expected<StageData, InputError> completeStage(const Stage& stage, double ambient,
                                                  const std::string& path) {
  StageData data;
  data.stage = stage;
  const auto factor = dragFactor(stage, ambient, path);
  if (!factor) return tl::unexpected(factor.error());
  data.dragFactor = *factor;
  fillFromParts(partsData(stage), path, data);
  if (!isSet(data.stage.ratio)) {
    return tl::unexpected(InputError{"the ratio is not given", path + ".ratio",
                                     "input speed over output speed, e.g. 100"});
  }
  const auto efficiency = stageEfficiency(data.stage, path);
  if (!efficiency) return tl::unexpected(efficiency.error());
  data.efficiency = *efficiency;
  if (data.creepAtSlip > 0 && isSet(stage.efficiency) && isSet(stage.ratedTorque)) {
    // The data sheet's figure contains the creep, which the speeds tell.
    const double kept = 1 - data.creep(stage.ratedTorque);
    data.efficiency.driving = std::min(1.0, data.efficiency.driving / kept);
  }
  return data;
}

tl::expected<std::vector<StageData>, InputError> completeStages(const std::vector<Stage>& stages,
                                                                double ambient) {
  std::vector<StageData> all;
  for (std::size_t k = 0; k < stages.size(); ++k) {
    auto one = completeStage(stages[k], ambient, fmt::format("transmission[{}]", k));
    if (!one) return tl::unexpected(one.error());
    all.push_back(std::move(*one));
  }
  return all;
}

double torquePerMass(const Stage& stage) {
  const double torque = isSet(stage.peakTorque) ? stage.peakTorque : stage.ratedTorque;
  return stage.mass > 0 ? torque / stage.mass : kUnset;
}

}  // namespace jw

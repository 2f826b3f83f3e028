#include "core/physics/stage_chain.h"

#include <cmath>

#include <fmt/format.h>

#include "core/model/unset.h"

namespace jw {
namespace {

using Eigen::ArrayXd;
using Eigen::Index;

tl::expected<double, InputError> meshEfficiency(const Stage& stage, const std::string& path) {
  if (!isSet(stage.efficiency)) {
    return tl::unexpected(InputError{"the efficiency is not given", path + ".efficiency",
                                     "take it from the data sheet; 1 if there is no loss"});
  }
  if (stage.dragTorque == 0) return stage.efficiency;
  if (!isSet(stage.ratedTorque)) {
    return tl::unexpected(InputError{"with a no-load torque the rated torque is needed",
                                     path + ".ratedTorque",
                                     "give the output torque for which the efficiency is stated"});
  }
  const double ideal = stage.ratedTorque / stage.ratio;
  const double mesh = ideal / (ideal / stage.efficiency - stage.dragTorque);
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

/// Torque at the input that the load asks for, by the direction of power.
double reflected(double torque, double power, double ratio, const StageEfficiency& efficiency) {
  const double ideal = torque / ratio;
  if (power > 0) return ideal / efficiency.driving;
  return power < 0 ? ideal * efficiency.backdriving : ideal;
}

StageLoad stageLoad(const Stage& stage, const StageEfficiency& efficiency, ArrayXd outputTorque,
                    ArrayXd outputSpeed) {
  StageLoad load;
  load.efficiency = efficiency;
  load.ratio = stage.reverses ? -stage.ratio : stage.ratio;
  load.outputTorque = std::move(outputTorque);
  load.outputSpeed = std::move(outputSpeed);
  load.inputSpeed = load.ratio * load.outputSpeed;
  const Index n = load.outputTorque.size();
  load.inputTorque.resize(n);
  for (Index i = 0; i < n; ++i) {
    const double power = load.outputTorque[i] * load.outputSpeed[i];
    load.inputTorque[i] = reflected(load.outputTorque[i], power, load.ratio, efficiency);
  }
  load.inputTorque += stage.dragTorque * load.inputSpeed.sign();
  load.loss = load.inputTorque * load.inputSpeed - load.outputTorque * load.outputSpeed;
  return load;
}

InputError missingRatio(const std::string& path) {
  return {"the ratio is not given", path + ".ratio", "input speed over output speed, e.g. 100"};
}

/// Ratio and efficiencies of every stage, or the first that is missing.
tl::expected<std::vector<StageEfficiency>, InputError> efficiencies(
    const std::vector<Stage>& transmission) {
  std::vector<StageEfficiency> all;
  for (std::size_t k = 0; k < transmission.size(); ++k) {
    const std::string path = fmt::format("transmission[{}]", k);
    if (!isSet(transmission[k].ratio)) return tl::unexpected(missingRatio(path));
    auto one = stageEfficiency(transmission[k], path);
    if (!one) return tl::unexpected(one.error());
    all.push_back(*one);
  }
  return all;
}

}  // namespace

tl::expected<StageEfficiency, InputError> stageEfficiency(const Stage& stage,
                                                          const std::string& path) {
  const auto driving = meshEfficiency(stage, path);
  if (!driving) return tl::unexpected(driving.error());
  StageEfficiency efficiency;
  efficiency.driving = *driving;
  efficiency.backdrivingEstimated = !isSet(stage.backdrivingEfficiency);
  efficiency.backdriving =
      efficiency.backdrivingEstimated ? 2 - 1 / *driving : stage.backdrivingEfficiency;
  return efficiency;
}

tl::expected<StageChain, InputError> reflectThroughChain(const std::vector<Stage>& transmission,
                                                         const SampledCycle& cycle,
                                                         const ArrayXd& jointTorque,
                                                         double largestLoadInertia) {
  const auto all = efficiencies(transmission);
  if (!all) return tl::unexpected(all.error());
  StageChain chain;
  chain.stages.resize(transmission.size());
  chain.inertiaAtMotor = largestLoadInertia;
  chain.motorSpeed = cycle.speed;
  chain.motorAcceleration = cycle.acceleration;
  chain.motorTorque = jointTorque;
  for (std::size_t k = transmission.size(); k-- > 0;) {
    const Stage& stage = transmission[k];
    const double inertia = isSet(stage.inertia) ? stage.inertia : 0;
    ArrayXd torque = chain.motorTorque + stage.outputInertia * chain.motorAcceleration;
    StageLoad load = stageLoad(stage, (*all)[k], std::move(torque), std::move(chain.motorSpeed));
    chain.ratio *= load.ratio;
    chain.motorSpeed = load.inputSpeed;
    chain.motorAcceleration *= load.ratio;
    chain.motorTorque = load.inputTorque + inertia * chain.motorAcceleration;
    chain.inertiaAtMotor =
        (chain.inertiaAtMotor + stage.outputInertia) / (stage.ratio * stage.ratio) + inertia;
    chain.stages[k] = std::move(load);
  }
  return chain;
}

}  // namespace jw

#include "core/physics/stage_chain.h"

#include <cmath>

namespace jw {
namespace {

using Eigen::ArrayXd;
using Eigen::Index;

/// Torque at the input that the load asks for, by the direction of power.
double reflected(double torque, double power, double ratio, const StageEfficiency& efficiency) {
  const double ideal = torque / ratio;
  if (power > 0) return ideal / efficiency.driving;
  return power < 0 ? ideal * efficiency.backdriving : ideal;
}

/// Torque that keeps the unloaded stage turning, signed; at rest the one that breaks it loose where
/// a motion starts with the next sample.
ArrayXd dragTorque(const StageData& data, const ArrayXd& speed) {
  const Index n = speed.size();
  ArrayXd drag(n);
  const double starting = data.starting();
  for (Index i = 0; i < n; ++i) {
    drag[i] = speed[i] == 0 ? 0 : std::copysign(data.drag(std::abs(speed[i])), speed[i]);
    const bool starts = speed[i] == 0 && i + 1 < n && speed[i + 1] != 0;
    if (starts && isSet(data.stage.startingTorque)) {
      drag[i] = std::copysign(starting, speed[i + 1]);
    }
  }
  return drag;
}

StageLoad stageLoad(const StageData& data, ArrayXd outputTorque, ArrayXd outputSpeed) {
  StageLoad load;
  load.efficiency = data.efficiency;
  load.ratio = data.signedRatio();
  load.outputTorque = std::move(outputTorque);
  load.outputSpeed = std::move(outputSpeed);
  load.inputSpeed = load.ratio * load.outputSpeed;
  const Index n = load.outputTorque.size();
  load.inputTorque.resize(n);
  for (Index i = 0; i < n; ++i) {
    const double torque = load.outputTorque[i];
    const double power = torque * load.outputSpeed[i];
    load.inputTorque[i] = reflected(torque, power, load.ratio, data.efficiency);
    if (data.creepAtSlip > 0) {
      load.inputSpeed[i] += load.ratio * std::abs(load.outputSpeed[i]) * data.creep(torque);
    }
  }
  load.inputTorque += dragTorque(data, load.inputSpeed);
  load.loss = load.inputTorque * load.inputSpeed - load.outputTorque * load.outputSpeed;
  return load;
}

}  // namespace

StageChain reflectThroughChain(const std::vector<StageData>& stages, const SampledCycle& cycle,
                               const ArrayXd& jointTorque, double largestLoadInertia) {
  StageChain chain;
  chain.stages.resize(stages.size());
  chain.inertiaAtMotor = largestLoadInertia;
  chain.motorSpeed = cycle.speed;
  chain.motorAcceleration = cycle.acceleration;
  chain.motorTorque = jointTorque;
  for (std::size_t k = stages.size(); k-- > 0;) {
    const Stage& stage = stages[k].stage;
    ArrayXd torque = chain.motorTorque + stage.outputInertia * chain.motorAcceleration;
    StageLoad load = stageLoad(stages[k], std::move(torque), std::move(chain.motorSpeed));
    chain.ratio *= load.ratio;
    chain.motorSpeed = load.inputSpeed;
    chain.motorAcceleration *= load.ratio;
    chain.motorTorque = load.inputTorque + stage.inertia * chain.motorAcceleration;
    chain.inertiaAtMotor =
        (chain.inertiaAtMotor + stage.outputInertia) / (stage.ratio * stage.ratio) + stage.inertia;
    chain.stages[k] = std::move(load);
  }
  return chain;
}

tl::expected<StageChain, InputError> reflectThroughChain(const std::vector<Stage>& transmission,
                                                         const SampledCycle& cycle,
                                                         const ArrayXd& jointTorque,
                                                         double largestLoadInertia) {
  constexpr double kRoom = 20;  // [°C]
  return completeStages(transmission, kRoom).map([&](const std::vector<StageData>& stages) {
    return reflectThroughChain(stages, cycle, jointTorque, largestLoadInertia);
  });
}

}  // namespace jw

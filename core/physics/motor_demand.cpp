#include "core/physics/motor_demand.h"

#include <cmath>

#include "core/physics/controller_overload.h"

namespace jw {
namespace {

double rootMeanSquare(const SampledCycle& cycle, const Eigen::ArrayXd& values) {
  return std::sqrt((cycle.weight * values.square()).sum() / cycle.period);
}

/// Currents sample by sample, weakening the field where the voltage asks for it.
void weakenedCurrents(const EnvelopeLimits& limits, const Eigen::ArrayXd& speed,
                      MotorDemand& demand) {
  const Eigen::Index n = speed.size();
  demand.weakening.resize(n);
  for (Eigen::Index i = 0; i < n; ++i) {
    const DqCurrent point = limits.operatingPoint(speed[i], demand.torque[i]);
    demand.weakening[i] = point.d;
    demand.current[i] = std::copysign(point.amplitude(), point.q);
  }
}

}  // namespace

MotorDemand motorDemand(const SampledCycle& cycle, const StageChain& chain, const Motor& motor,
                        const MotorConstants& constants, const Controller& controller,
                        const EnvelopeLimits* limits) {
  MotorDemand demand;
  const double ownInertia = motor.rotorInertia + motor.brakeInertia;
  const Eigen::ArrayXd drag =
      constants.dragTorque * chain.motorSpeed.sign() + constants.dragDamping * chain.motorSpeed;
  demand.torque = chain.motorTorque + ownInertia * chain.motorAcceleration;
  demand.current = (demand.torque + drag) / constants.torquePerAmp;
  if (limits && limits->weakening) weakenedCurrents(*limits, chain.motorSpeed, demand);
  demand.copperLoss = constants.copperLoss(1) * demand.current.square();
  demand.dragLoss = drag * chain.motorSpeed;
  demand.shaftPower = chain.motorTorque * chain.motorSpeed;
  demand.motorPower = demand.torque * chain.motorSpeed + demand.dragLoss + demand.copperLoss;
  const Eigen::ArrayXd rmsCurrent = demand.current.abs() * constants.rmsFactor();
  demand.controllerLoss = controllerLoss(controller, rmsCurrent);
  demand.supplyPower = demand.motorPower + demand.controllerLoss;
  demand.torqueRms = rootMeanSquare(cycle, demand.torque);
  demand.currentRms = rootMeanSquare(cycle, rmsCurrent);
  demand.speedRms = rootMeanSquare(cycle, chain.motorSpeed);
  return demand;
}

}  // namespace jw

#include "core/physics/motor_demand.h"

#include <cmath>

namespace jw {
namespace {

double rootMeanSquare(const SampledCycle& cycle, const Eigen::ArrayXd& values) {
  return std::sqrt((cycle.weight * values.square()).sum() / cycle.period);
}

Eigen::ArrayXd controllerLoss(const Controller& controller, const Eigen::ArrayXd& rmsCurrent) {
  return controller.idlePower + controller.lossPerAmpere * rmsCurrent +
         controller.lossResistance * rmsCurrent.square();
}

}  // namespace

MotorDemand motorDemand(const SampledCycle& cycle, const StageChain& chain, const Motor& motor,
                        const MotorConstants& constants, const Controller& controller) {
  MotorDemand demand;
  const double ownInertia = motor.rotorInertia + motor.brakeInertia;
  const Eigen::ArrayXd drag =
      constants.dragTorque * chain.motorSpeed.sign() + constants.dragDamping * chain.motorSpeed;
  demand.torque = chain.motorTorque + ownInertia * chain.motorAcceleration;
  demand.current = (demand.torque + drag) / constants.torquePerAmp;
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

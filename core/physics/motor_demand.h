#pragma once

#include <Eigen/Core>

#include "core/model/motor.h"
#include "core/model/supply.h"
#include "core/physics/motor_constants.h"
#include "core/physics/stage_chain.h"
#include "core/physics/torque_envelope.h"

namespace jw {

/// What the cycle asks of motor, controller and supply; n samples each.
struct MotorDemand {
  Eigen::ArrayXd torque;      ///< [N·m] at the shaft including rotor and brake inertia
  Eigen::ArrayXd current;     ///< [A] amplitude, signed like the torque it makes (drag included)
  Eigen::ArrayXd weakening;   ///< [A] i_d; empty when the field is not weakened
  Eigen::ArrayXd copperLoss;  ///< [W]
  Eigen::ArrayXd dragLoss;    ///< [W]
  Eigen::ArrayXd shaftPower;  ///< [W] torque given to the chain times speed (rotor inertia apart)
  Eigen::ArrayXd motorPower;  ///< [W] electrical, at the motor terminals
  Eigen::ArrayXd controllerLoss;  ///< [W]
  Eigen::ArrayXd supplyPower;     ///< [W] from the bus; negative = returned
  double torqueRms = 0;           ///< [N·m]
  double currentRms = 0;          ///< [A] rms of the rms phase current (direct: of the current)
  double speedRms = 0;            ///< [rad/s]
};

/// `limits` (may be null) decides on field weakening.
MotorDemand motorDemand(const SampledCycle& cycle, const StageChain& chain, const Motor& motor,
                        const MotorConstants& constants, const Controller& controller,
                        const EnvelopeLimits* limits = nullptr);

}  // namespace jw

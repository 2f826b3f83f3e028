#pragma once

#include <vector>

#include <Eigen/Core>

#include "core/motion/sampled_cycle.h"
#include "core/physics/load_torque.h"
#include "core/physics/motor_demand.h"
#include "core/physics/stage_chain.h"

namespace jw {

enum class StationKind { Supply, Controller, Motor, Stage, Joint };

/// Power [W] through one station of the actuator over the cycle; n samples each. Positive runs
/// from the supply to the joint. in = out + loss + stored.
struct PowerStation {
  StationKind kind = StationKind::Supply;
  int stage = -1;  ///< index into the transmission for a Stage
  Eigen::ArrayXd in;
  Eigen::ArrayXd out;
  Eigen::ArrayXd loss;    ///< turned to heat; never negative
  Eigen::ArrayXd stored;  ///< taken up by turning masses; its mean over a closed cycle is zero
};

/// The stations in order: supply, controller, motor, each stage, joint. What leaves one enters the
/// next.
std::vector<PowerStation> powerFlow(const SampledCycle& cycle, const LoadTorque& load,
                                    const StageChain& chain, const MotorDemand& demand);

/// Powers [W] of one station at an instant or as means.
struct StationPower {
  double in = 0;
  double out = 0;
  double loss = 0;
  double stored = 0;
};

/// Means [W] over the cycle.
StationPower meanPower(const SampledCycle& cycle, const PowerStation& station);

/// Powers [W] at `time` [s].
StationPower powerAt(const SampledCycle& cycle, const PowerStation& station, double time);

}  // namespace jw

#pragma once

#include <vector>

#include <Eigen/Core>
#include <tl/expected.hpp>

#include "core/model/stage.h"
#include "core/motion/sampled_cycle.h"
#include "core/physics/stage_data.h"
#include "core/quantity/quantity.h"

namespace jw {

/// What one stage sees over the cycle; n samples each.
struct StageLoad {
  double ratio = 1;  ///< signed: negative when the stage reverses
  StageEfficiency efficiency;
  Eigen::ArrayXd outputTorque;  ///< [N·m] asked of the stage at its output
  Eigen::ArrayXd outputSpeed;   ///< [rad/s]
  Eigen::ArrayXd inputTorque;   ///< [N·m] asked of what drives it
  Eigen::ArrayXd inputSpeed;    ///< [rad/s]
  Eigen::ArrayXd loss;          ///< [W] friction of mesh and drag; never negative
};

/// The chain from motor to joint.
struct StageChain {
  std::vector<StageLoad> stages;  ///< motor first
  double ratio = 1;               ///< signed product
  double inertiaAtMotor = 0;  ///< [kg·m²] stages and load at the motor shaft, without the motor
  Eigen::ArrayXd motorSpeed;  ///< [rad/s]
  Eigen::ArrayXd motorAcceleration;  ///< [rad/s²]
  Eigen::ArrayXd motorTorque;  ///< [N·m] asked at the motor shaft, without the motor's own inertia
};

/// Reflects joint torque and motion to the motor, four quadrants. P = T_out w_out > 0:
/// T_in = T_out/(N eta) + drag; P < 0: T_in = T_out eta_back / N + drag; at rest T_in = T_out/N,
/// where a motion is about to start plus the starting torque. Rollers creep: w_in = N (w_out +
/// |w_out| creep(T_out)); the creep's own acceleration is left out. Inertias of each stage add
/// J alpha at their own shaft. `largestLoadInertia` [kg·m²] is for inertiaAtMotor.
StageChain reflectThroughChain(const std::vector<StageData>& stages, const SampledCycle& cycle,
                               const Eigen::ArrayXd& jointTorque, double largestLoadInertia);

/// The same for stages as given, with their grease at 20 °C; fails where one cannot be completed.
tl::expected<StageChain, InputError> reflectThroughChain(const std::vector<Stage>& transmission,
                                                         const SampledCycle& cycle,
                                                         const Eigen::ArrayXd& jointTorque,
                                                         double largestLoadInertia);

}  // namespace jw

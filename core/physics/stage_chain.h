#pragma once

#include <vector>

#include <Eigen/Core>
#include <tl/expected.hpp>

#include "core/model/stage.h"
#include "core/motion/sampled_cycle.h"
#include "core/quantity/quantity.h"

namespace jw {

/// Load-dependent efficiency both ways, split from the data sheet's one figure.
struct StageEfficiency {
  double driving = 1;                 ///< mesh efficiency, motor drives
  double backdriving = 1;             ///< mesh efficiency, load drives; <= 0 = self-locking
  bool backdrivingEstimated = false;  ///< 2 - 1/eta, not given
  bool selfLocking() const { return backdriving <= 0; }
};

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

/// Mesh efficiencies of a stage. The data sheet's efficiency holds at rated torque and speed and
/// contains the drag: eta_mesh = (T_r/N) / (T_r/(N eta) - T_drag). Fails naming the path
/// (prefix + field) if the efficiency or, with drag, the rated torque is missing, or if the drag
/// alone exceeds the loss that the efficiency states.
tl::expected<StageEfficiency, InputError> stageEfficiency(const Stage& stage,
                                                          const std::string& path);

/// Reflects joint torque and motion to the motor, four quadrants. P = T_out w_out > 0:
/// T_in = T_out/(N eta) + drag; P < 0: T_in = T_out eta_back / N + drag; at rest T_in = T_out/N.
/// Inertias of each stage add J alpha at their own shaft. `largestLoadInertia` [kg·m²] is for
/// inertiaAtMotor.
tl::expected<StageChain, InputError> reflectThroughChain(const std::vector<Stage>& transmission,
                                                         const SampledCycle& cycle,
                                                         const Eigen::ArrayXd& jointTorque,
                                                         double largestLoadInertia);

}  // namespace jw

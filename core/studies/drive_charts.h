#pragma once

#include <optional>
#include <vector>

#include <Eigen/Core>

#include "core/checks/evaluation.h"
#include "core/physics/wind_up.h"

namespace jw {

/// Efficiency of the whole chain at one joint speed, steady, over the joint torque.
struct EfficiencyCurve {
  double speed = 0;            ///< [rad/s] at the joint
  Eigen::ArrayXd torque;       ///< [N·m] at the joint, rising from 0
  Eigen::ArrayXd driving;      ///< joint power over motor power
  Eigen::ArrayXd backdriving;  ///< motor power over joint power; 0 where the motor has to help
};

/// Charts of the transmission.
struct DriveCharts {
  std::optional<ChainWindUp> windUp;  ///< over the range below
  double windUpRange = 0;             ///< [N·m] at the joint
  double operatingLow = 0;            ///< [N·m] least torque of the cycle
  double operatingHigh = 0;           ///< [N·m] largest
  double lostMotionTorque = 0;  ///< [N·m] 3 % of the last stage's rated torque; 0 if not given
  double lostMotion = kUnset;   ///< [rad] between plus and minus that torque
  double stiffness = kUnset;    ///< [N·m/rad] at the joint, at the cycle's largest torque
  std::vector<EfficiencyCurve>
      efficiency;                  ///< at 100 %, 50 %, 10 % of peak speed, or one if all are alike
  Eigen::ArrayXd pointTorque;      ///< [N·m] sizes of joint torques of the cycle, motor driving
  Eigen::ArrayXd pointEfficiency;  ///< of the chain there, without what turning masses take up
};

/// Empty without stages or where the evaluation lacks the chain.
std::optional<DriveCharts> driveCharts(const Project& project, const Evaluation& evaluation);

}  // namespace jw

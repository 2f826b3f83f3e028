#pragma once

#include <Eigen/Core>

#include "core/motion/sampled_cycle.h"

namespace jw {

/// [N·m] T_av = (sum |n| dt |T|^p / sum |n| dt)^(1/p), the load-weighted mean that does the same
/// damage; 0 if the stage never turns. `torque` [N·m] and `speed` [rad/s] have the cycle's samples.
/// ISO 281 mean load, with exponent p = 3 for ball and 10/3 for roller contact (from memory).
double averageTorque(const SampledCycle& cycle, const Eigen::ArrayXd& torque,
                     const Eigen::ArrayXd& speed, double exponent);

/// [rad/s] mean of |n| over the cycle, standstill included.
double averageSpeed(const SampledCycle& cycle, const Eigen::ArrayXd& speed);

/// [s] L = L_r (T_r / T_av)^p n_r / n_av; +inf if nothing turns or nothing loads. Counted in time
/// of the whole cycle, dwells included, since n_av is.
double driveLife(double ratedLife, double ratedTorque, double ratedSpeed, double exponent,
                 double averageTorque, double averageSpeed);

}  // namespace jw

#pragma once

#include <Eigen/Core>

#include "core/motion/sampled_cycle.h"

namespace jw {

/// A sampled cycle for tests, sample by sample: speed [rad/s], acceleration [rad/s²] and the time
/// [s] that each sample stands for.
inline SampledCycle handCycle(const Eigen::ArrayXd& speed, const Eigen::ArrayXd& acceleration,
                              const Eigen::ArrayXd& weight) {
  SampledCycle cycle;
  cycle.speed = speed;
  cycle.acceleration = acceleration;
  cycle.weight = weight;
  cycle.period = weight.sum();
  cycle.angle = Eigen::ArrayXd::Zero(speed.size());
  cycle.segment = Eigen::ArrayXi::Zero(speed.size());
  cycle.time = Eigen::ArrayXd::LinSpaced(speed.size(), 0, cycle.period);
  return cycle;
}

/// One sample that lasts 1 s.
inline SampledCycle oneInstant(double speed, double acceleration) {
  return handCycle(Eigen::ArrayXd::Constant(1, speed), Eigen::ArrayXd::Constant(1, acceleration),
                   Eigen::ArrayXd::Constant(1, 1.0));
}

}  // namespace jw

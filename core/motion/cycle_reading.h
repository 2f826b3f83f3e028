#pragma once

#include <Eigen/Core>

#include "core/motion/sampled_cycle.h"

namespace jw {

/// Mean of `values` over the cycle, in their unit: sum(weight v) / period.
double cycleMean(const SampledCycle& cycle, const Eigen::ArrayXd& values);

/// Root mean square of `values` over the cycle, in their unit.
double cycleRms(const SampledCycle& cycle, const Eigen::ArrayXd& values);

/// The last sample at or before `time` [s]; times outside the cycle give its ends. The cycle must
/// not be empty.
Eigen::Index sampleAt(const SampledCycle& cycle, double time);

/// `values` at `time` [s], in their unit, linear between samples; of a jump the value after it.
double valueAt(const SampledCycle& cycle, const Eigen::ArrayXd& values, double time);

}  // namespace jw

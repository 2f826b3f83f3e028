#pragma once

#include <string>
#include <vector>

#include <Eigen/Core>

#include "core/model/cycle.h"
#include "core/quantity/quantity.h"

namespace jw {

/// One run of a move within the samples; it ends where the next begins.
struct MoveRun {
  int segment = 0;         ///< index into Cycle::segments
  Eigen::Index first = 0;  ///< its first sample
};

/// The cycle as arrays of n samples. Each smooth piece of each segment is sampled with both of its
/// ends, so a jump in acceleration is two samples at one time. `weight` holds quadrature weights:
/// sum(weight * f) = ∫ f dt over the cycle (Simpson per piece; trapezoid for tables), and
/// sum(weight) = period.
struct SampledCycle {
  Eigen::ArrayXd time;          ///< [s], never falling
  Eigen::ArrayXd angle;         ///< [rad]
  Eigen::ArrayXd speed;         ///< [rad/s]
  Eigen::ArrayXd acceleration;  ///< [rad/s²]
  Eigen::ArrayXd weight;        ///< [s]
  Eigen::ArrayXi segment;       ///< index into Cycle::segments
  double period = 0;            ///< [s]
  std::vector<MoveRun> runs;    ///< in order, with repeats
  /// Broken joins (speed or angle jumps, cycle not closed) and values that cannot be used.
  std::vector<InputError> warnings;
  Eigen::Index size() const { return time.size(); }
};

/// Samples the cycle's moves as they run (resolveMoves) with about `cycle.samples` samples (at
/// least 3 per smooth piece; every row of a table). Velocity and acceleration come from the law in
/// closed form. Fails, naming the path
/// ("cycle.segments[2].duration"), if a value that is needed is unset, not finite or out of range.
tl::expected<SampledCycle, InputError> sampleCycle(const Cycle& cycle);

}  // namespace jw

#pragma once

#include <vector>

#include <tl/expected.hpp>

#include "core/model/cycle.h"
#include "core/model/measured_log.h"
#include "core/motion/log_motion.h"
#include "core/quantity/quantity.h"

namespace jw {

/// How the end of a stretch is led back to its start.
enum class CycleClosing {
  LeaveOpen,   ///< not at all
  Blend,       ///< a polynomial added over the last share of the stretch: meets in position, speed
               ///< and acceleration
  LinearDrift  ///< a straight line taken off the position: meets in position only
};

struct ClosingOptions {
  CycleClosing closing = CycleClosing::Blend;
  double blendShare = 0.1;  ///< share of the stretch over which the blend works, 0 to 1
  bool wholeTurns = false;  ///< the joint turns on and on: ends that differ by turns meet
  double restSpeed = 0;  ///< [rad/s] smaller speeds become 0, so that noise at rest has no friction
  bool keepDerivatives = true;  ///< whether the table gets columns of speed and acceleration
};

/// Position [rad], speed [rad/s] and acceleration [rad/s²].
struct MotionState {
  double position = 0, speed = 0, acceleration = 0;
};

/// A stretch of a log as a segment of a cycle.
struct ClosedCycle {
  Segment segment;                ///< law Table with every row of the stretch
  double startAngle = 0;          ///< [rad] for Cycle::startAngle
  std::size_t firstRow = 0;       ///< of the log
  std::size_t lastRow = 0;        ///< of the log, included
  std::size_t restRows = 0;       ///< rows whose speed was set to 0
  MotionState mismatch;           ///< end less start before the mend
  MotionState left;               ///< end less start after it
  MotionState largestMend;        ///< largest value that was added anywhere
  std::vector<InputError> notes;  ///< what a person should know: a mend that changes the load much
};

/// Cuts the rows between `from` and `to` [s of the log, both included] out of a log and closes them
/// into a cycle. With s the share of the blend that has passed and P, V, A the mismatch of
/// position, speed times, and acceleration times squared length of the blend, the blend takes off
/// (10P - 4V + A/2) s³ - (15P - 7V + A) s⁴ + (6P - 3V + A/2) s⁵: the one polynomial of fifth degree
/// that is 0 with its two derivatives at s = 0 and takes off all of the mismatch at s = 1. Fails on
/// a stretch of fewer than 5 rows or more than kMostTablePoints, and on a share outside 0 to 1.
tl::expected<ClosedCycle, InputError> closeIntoCycle(const MeasuredLog& log,
                                                     const LogMotion& motion, double from,
                                                     double to, const ClosingOptions& options = {});

/// [s] of the row within `reach` [s] of `to` at which the motion is most like at `from`: least sum
/// of squared differences of position, speed and acceleration, each over its largest value in the
/// log. A stretch that ends there needs the least mend. `to` itself if no row is within reach
/// behind `from`.
double closingEnd(const MeasuredLog& log, const LogMotion& motion, double from, double to,
                  double reach);

}  // namespace jw

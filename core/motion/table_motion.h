#pragma once

#include "core/model/cycle.h"

namespace jw {

/// Speed and acceleration at every row of a motion table, and what smoothing did.
struct TableMotion {
  SharedColumn speed;         ///< shared with the table where it is given; [rad/s]
  SharedColumn acceleration;  ///< [rad/s²] likewise
  double window = 0;          ///< [s] smoothing window used, 0 if the table has both columns
  double angleResidual = 0;   ///< [rad] rms of angle − smoothed angle, 0 if speed was given
  double speedResidual = 0;   ///< [rad/s] rms of speed − smoothed speed, 0 unless differentiated
};

/// The smoothing window [s]: `smoothing` if set, else 8 mean steps (9 rows) or 2 % of the table's
/// time, whichever is longer (common practice, no source).
double smoothingWindow(const MotionTable& table, double smoothing);

/// Supplies what `table` lacks by local cubic fits (smoothByLocalCubic): speed and acceleration
/// from the angle, or the acceleration alone from a given speed. Given columns are kept as they
/// are; so is the angle. Needs a table without tableInputError.
TableMotion tableMotion(const MotionTable& table, double smoothing);

}  // namespace jw

#pragma once

#include <limits>

#include "core/model/cycle.h"

namespace jw {

/// What a move may not exceed; infinity = no limit.
struct MotionLimits {
  double speed = std::numeric_limits<double>::infinity();         ///< [rad/s]
  double acceleration = std::numeric_limits<double>::infinity();  ///< [rad/s²]
  double jerk = std::numeric_limits<double>::infinity();          ///< [rad/s³]
};

/// Peaks of a law of one fixed shape [1]: over travel h and duration T its peak speed is
/// speed·h/T, its peak acceleration acceleration·h/T² and its peak jerk jerk·h/T³.
struct LawPeaks {
  double speed = 0;
  double acceleration = 0;
  double jerk = 0;  ///< infinity if the acceleration jumps
};

/// The peak coefficients of a law of fixed shape (cam handbooks, from memory): 3-4-5 polynomial
/// 15/8, 10/√3, 60; 4-5-6-7 polynomial 35/16, 84√5/25, 52.5; sine acceleration 2, 2π, 4π²; harmonic
/// π/2, π²/2, endless; modified trapezoid 2, 8π/(2+π), 32π²/(2+π); modified sine 4π/(4+π),
/// 4π²/(4+π), 16π³/(4+π); sinusoid of `periods` n: powers of 2πn. Zeros for the other laws, whose
/// shape is free or given by points.
LawPeaks lawPeaks(MotionLaw law, double periods = 1);

/// Whether the acceleration of a law never jumps, so that a jerk limit can be kept.
bool hasBoundedJerk(MotionLaw law);

/// A move that takes the least time, with the shares that make it so.
struct LeastTime {
  double duration = 0;     ///< [s]
  double rampShare = 0;    ///< of the duration, spent speeding up and as much slowing down
  double jerkShare = 0.5;  ///< of each speed change, spent in each of its jerk phases
};

/// Duration [s] and shares of the fastest move over `distance` [rad, above 0] from rest to rest
/// within `limits` [above 0].
/// Trapezoidal: with v the speed limit and a the acceleration limit, h/v + v/a if h >= v²/a, else a
/// triangle of 2√(h/a). Jerk-limited: seven phases of constant jerk, of which those that speed or
/// acceleration limit do not call for vanish (L. Biagiotti, C. Melchiorri, Trajectory Planning for
/// Automatic Machines and Robots, 2008, sections 3.2 and 3.4; from memory). Other laws: largest of
/// C_v h/v, √(C_a h/a) and ∛(C_j h/j); the jerk limit counts only for a law of bounded jerk.
/// Trapezoidal needs an acceleration limit, jerk-limited a jerk limit, others one that counts:
/// without it the duration is 0. The sinusoid is taken as running, and dwell and table take no
/// time.
LeastTime leastTime(MotionLaw law, double distance, const MotionLimits& limits, double periods = 1);

}  // namespace jw

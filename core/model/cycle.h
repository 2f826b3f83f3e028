#pragma once

#include <cstddef>
#include <string>
#include <vector>

#include "core/model/as_written.h"
#include "core/model/shared_column.h"
#include "core/model/unset.h"

namespace jw {

/// How a move gets from its start to its end (VDI 2143 and the cam handbooks name most of them).
enum class MotionLaw {
  Trapezoidal,        ///< constant acceleration, cruise, constant deceleration
  JerkLimited,        ///< seven phases of constant jerk
  Polynomial345,      ///< 3-4-5 polynomial
  Polynomial4567,     ///< 4-5-6-7 polynomial
  SineAcceleration,   ///< cycloidal motion: acceleration is one full sine
  Harmonic,           ///< simple harmonic: acceleration is half a cosine
  ModifiedTrapezoid,  ///< modified trapezoidal acceleration
  ModifiedSine,       ///< modified sine acceleration
  Sinusoid,           ///< steady sinusoid about the start angle; travel is its amplitude
  Dwell,              ///< stands still
  Table,              ///< imported points
};

/// What a move's size says.
enum class MoveAim {
  By,  ///< travel: end minus start
  To   ///< target: the end itself
};

/// What sets a move's duration.
enum class MoveTiming {
  Duration,  ///< as typed
  Limits     ///< as fast as the limits of speed, acceleration and jerk allow
};

/// How often a cycle runs within the daily mix.
enum class MixUse { NotUsed, PerHour, Share };

/// Most points of a motion table in a project.
inline constexpr std::size_t kMostTablePoints = 1'000'000;

/// Imported motion points. `angle` is relative to the segment's start; `speed` and `acceleration`
/// are empty when the source has none (then a smoother supplies them). `torque` comes from outside
/// the joint, such as from the motion of other joints; empty = none. Copies share their numbers.
struct MotionTable {
  SharedColumn time;          ///< [s], strictly rising, first 0
  SharedColumn angle;         ///< [rad]
  SharedColumn speed;         ///< [rad/s]
  SharedColumn acceleration;  ///< [rad/s²]
  SharedColumn torque = {};   ///< [N·m] external, positive opposes positive motion
  bool operator==(const MotionTable&) const = default;
};

/// One stretch of the duty cycle.
struct Segment {
  std::string name;
  MotionLaw law = MotionLaw::Trapezoidal;
  bool disabled = false;   ///< left out of the cycle
  std::string block = {};  ///< neighbours of one name repeat together
  int repeats = 1;         ///< times that the move runs; of a block, its first move's count
  MoveAim aim = MoveAim::By;
  double target = kUnset;  ///< [rad] joint angle at the end, for MoveAim::To
  MoveTiming timing = MoveTiming::Duration;
  double speedLimit = kUnset;         ///< [rad/s]; unset = the cycle's
  double accelerationLimit = kUnset;  ///< [rad/s²]; unset = the cycle's
  double jerkLimit = kUnset;          ///< [rad/s³]; unset = the cycle's
  double travel = kUnset;             ///< [rad] end minus start; amplitude for Sinusoid
  double duration = kUnset;           ///< [s]
  double accelShare = 1.0 / 3;        ///< share of the duration spent speeding up
  double decelShare = 1.0 / 3;        ///< share of the duration spent slowing down
  double jerkShare =
      0.5;             ///< JerkLimited: share of each speed change spent in each jerk phase, 0..0.5
  double periods = 1;  ///< Sinusoid: full periods in the duration
  double smoothing = kUnset;    ///< Table without derivatives: smoothing window [s]
  double payloadMass = kUnset;  ///< [kg] carried in this segment; unset = the load's payload
  double externalTorque = 0;    ///< [N·m] added to the load's, positive opposes positive motion
  MotionTable table;            ///< Table only
  AsWritten asWritten;
};

/// The repeated motion of the joint.
struct Cycle {
  std::string name = {};
  MixUse use = MixUse::NotUsed;
  double perHour = kUnset;            ///< runs per hour of the day's duty, for MixUse::PerHour
  double dayShare = kUnset;           ///< share of the day's duty, for MixUse::Share
  double speedLimit = kUnset;         ///< [rad/s] of its moves by limits
  double accelerationLimit = kUnset;  ///< [rad/s²]
  double jerkLimit = kUnset;          ///< [rad/s³]
  double startAngle = 0;              ///< [rad] joint angle at the start; 0 = link horizontal
  int samples = 1000;                 ///< wanted samples over the cycle
  std::vector<Segment> segments;
  AsWritten asWritten;
};

}  // namespace jw

#include "core/motion/least_time.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace jw {
namespace {

constexpr double kPi = std::numbers::pi;
constexpr double kEndless = std::numeric_limits<double>::infinity();

/// A change of speed from rest: its time and that of each of its jerk phases [s].
struct SpeedChange {
  double time = 0;
  double jerkTime = 0;
};

/// The fastest change to `speed`: constant acceleration where the limit is reached, else none.
SpeedChange changeTo(double speed, double acceleration, double jerk) {
  if (std::isinf(jerk)) return {speed / acceleration, 0};
  const double jerkTime = std::sqrt(speed / jerk);
  if (jerkTime * jerk <= acceleration) return {2 * jerkTime, jerkTime};
  return {speed / acceleration + acceleration / jerk, acceleration / jerk};
}

/// [rad/s] that two speed changes without a cruise between them reach over `distance`.
double speedWithoutCruise(double distance, double acceleration, double jerk) {
  if (std::isinf(jerk)) return std::sqrt(acceleration * distance);
  const double jerkTime = std::cbrt(distance / (2 * jerk));
  if (jerkTime * jerk <= acceleration) return distance / (2 * jerkTime);
  // h = v t with t = v/a + a/j
  const double rest = acceleration * acceleration / jerk;
  return 2 * acceleration * distance /
         (rest + std::sqrt(rest * rest + 4 * acceleration * distance));
}

/// Trapezoid of speed with rounded (or, with endless jerk, sharp) corners.
LeastTime rampedMove(double distance, const MotionLimits& limits) {
  const double reached = speedWithoutCruise(distance, limits.acceleration, limits.jerk);
  const bool cruises = limits.speed < reached;
  const double speed = cruises ? limits.speed : reached;
  const SpeedChange change = changeTo(speed, limits.acceleration, limits.jerk);
  const double duration = cruises ? change.time + distance / speed : 2 * change.time;
  return {duration, cruises ? change.time / duration : 0.5, change.jerkTime / change.time};
}

LeastTime shapedMove(const LawPeaks& peaks, double distance, const MotionLimits& limits) {
  const double bySpeed = peaks.speed * distance / limits.speed;
  const double byAcceleration = std::sqrt(peaks.acceleration * distance / limits.acceleration);
  const double byJerk = std::isinf(peaks.jerk) ? 0 : std::cbrt(peaks.jerk * distance / limits.jerk);
  return {std::max({bySpeed, byAcceleration, byJerk}), 0, 0};
}

}  // namespace

LawPeaks lawPeaks(MotionLaw law, double periods) {
  const double turn = 2 * kPi * periods;
  switch (law) {
    case MotionLaw::Polynomial345: return {15.0 / 8, 10 / std::sqrt(3.0), 60};
    case MotionLaw::Polynomial4567: return {35.0 / 16, 84 * std::sqrt(5.0) / 25, 52.5};
    case MotionLaw::SineAcceleration: return {2, 2 * kPi, 4 * kPi * kPi};
    case MotionLaw::Harmonic: return {kPi / 2, kPi * kPi / 2, kEndless};
    case MotionLaw::ModifiedTrapezoid: return {2, 8 * kPi / (2 + kPi), 32 * kPi * kPi / (2 + kPi)};
    case MotionLaw::ModifiedSine:
      return {4 * kPi / (4 + kPi), 4 * kPi * kPi / (4 + kPi), 16 * kPi * kPi * kPi / (4 + kPi)};
    case MotionLaw::Sinusoid: return {turn, turn * turn, turn * turn * turn};
    case MotionLaw::Trapezoidal:
    case MotionLaw::JerkLimited:
    case MotionLaw::Dwell:
    case MotionLaw::Table: break;
  }
  return {};
}

bool hasBoundedJerk(MotionLaw law) {
  return law != MotionLaw::Trapezoidal && law != MotionLaw::Harmonic;
}

LeastTime leastTime(MotionLaw law, double distance, const MotionLimits& limits, double periods) {
  switch (law) {
    case MotionLaw::Trapezoidal:
      return rampedMove(distance, {limits.speed, limits.acceleration, kEndless});
    case MotionLaw::JerkLimited: return rampedMove(distance, limits);
    default: return shapedMove(lawPeaks(law, periods), distance, limits);
  }
}

}  // namespace jw

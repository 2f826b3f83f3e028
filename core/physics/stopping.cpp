#include "core/physics/stopping.h"

#include <limits>

namespace jw {

Stop stopUnderSteadyTorques(const StopCase& about) {
  constexpr double kInfinity = std::numeric_limits<double>::infinity();
  const double rise = about.driving / about.inertia;
  Stop stop;
  stop.speed = about.speed + rise * about.delay;
  stop.deceleration = (about.braking - about.driving) / about.inertia;
  if (stop.speed == 0) return stop;
  if (!(stop.deceleration > 0)) {
    stop.time = stop.angle = stop.energy = kInfinity;
    return stop;
  }
  const double braked = stop.speed * stop.speed / (2 * stop.deceleration);
  stop.time = about.delay + stop.speed / stop.deceleration;
  stop.angle = about.delay * (about.speed + stop.speed) / 2 + braked;
  stop.energy = about.braking * braked;
  return stop;
}

}  // namespace jw

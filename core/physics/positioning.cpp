#include "core/physics/positioning.h"

#include <cmath>
#include <numbers>

#include "core/model/unset.h"

namespace jw {

double ErrorBudget::worst() const { return play + hysteresis + windUp + transmission + encoder; }

double ErrorBudget::rootSumSquare() const {
  return std::hypot(std::hypot(play, hysteresis, windUp), transmission, encoder);
}

double encoderStep(int steps, double ratio) {
  return steps > 0 ? 2 * std::numbers::pi / (steps * ratio) : kUnset;
}

}  // namespace jw

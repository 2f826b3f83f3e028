#include "core/physics/holding.h"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <vector>

#include "core/physics/load_torque.h"

namespace jw {
namespace {

constexpr double kTurn = 2 * std::numbers::pi;

/// `angle` moved by whole turns to the first place in [low, ...] and the last in [..., high]. With
/// a spring the extremes of a long travel lie in its first or last turn.
void addWithin(std::vector<double>& angles, double angle, double low, double high) {
  const double first = angle + std::ceil((low - angle) / kTurn) * kTurn;
  const double last = angle + std::floor((high - angle) / kTurn) * kTurn;
  if (first <= high) angles.push_back(first);
  if (last >= low) angles.push_back(last);
}

std::vector<double> candidates(const Load& load, double payloadMass, double low, double high) {
  std::vector<double> angles{low, high};
  Load masses = load;
  masses.springStiffness = 0;
  masses.balanceTorque = 0;
  const double x = staticTorque(masses, 0, payloadMass);
  const double y = staticTorque(masses, -std::numbers::pi / 2, payloadMass);
  const double moment = std::hypot(x, y);  // torque = moment cos(q + phase)
  const double phase = std::atan2(y, x);
  if (moment == 0 || std::abs(load.springStiffness) > moment) return angles;
  const double lean = std::asin(load.springStiffness / moment);
  addWithin(angles, lean - phase, low, high);
  addWithin(angles, std::numbers::pi - lean - phase, low, high);
  return angles;
}

}  // namespace

StaticPose worstStaticPose(const Load& load, double payloadMass, double low, double high) {
  StaticPose worst{low, staticTorque(load, low, payloadMass)};
  for (const double angle : candidates(load, payloadMass, low, high)) {
    const double torque = staticTorque(load, angle, payloadMass);
    if (std::abs(torque) > std::abs(worst.torque)) worst = {angle, torque};
  }
  return worst;
}

}  // namespace jw

#include "core/physics/holding.h"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <vector>

#include "core/physics/extension_spring.h"
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
  const GravityMoment masses = gravityMoment(carriedMasses(load, payloadMass), gravityVector(load));
  const double moment = std::hypot(masses.x, masses.y);  // torque = moment cos(q + phase)
  const double phase = std::atan2(masses.y, masses.x);
  if (moment == 0 || std::abs(load.springStiffness) > moment) return angles;
  const double lean = std::asin(load.springStiffness / moment);
  addWithin(angles, lean - phase, low, high);
  addWithin(angles, std::numbers::pi - lean - phase, low, high);
  return angles;
}

/// The place of the largest |torque| between a and b, where it has one hump, by golden section.
double summit(const Load& load, double payloadMass, double a, double b) {
  const double share = (std::sqrt(5.0) - 1) / 2;
  const auto size = [&](double q) { return std::abs(staticTorque(load, q, payloadMass)); };
  double left = b - share * (b - a), right = a + share * (b - a);
  double atLeft = size(left), atRight = size(right);
  for (int i = 0; i < 40; ++i) {  // 0.618^40: to 4e-9 of the step
    if (atLeft < atRight) {
      a = left, left = right, atLeft = atRight;
      right = a + share * (b - a), atRight = size(right);
    } else {
      b = right, right = left, atRight = atLeft;
      left = b - share * (b - a), atLeft = size(left);
    }
  }
  return (a + b) / 2;
}

/// Humps of |torque| found by steps of a degree, then narrowed down.
void addHumps(std::vector<double>& angles, const Load& load, double payloadMass, double low,
              double high) {
  constexpr double kStep = kTurn / 360;
  const int steps = std::max(2, static_cast<int>(std::ceil((high - low) / kStep)));
  const auto place = [&](int k) { return low + (high - low) * k / steps; };
  std::vector<double> size;
  for (int k = 0; k <= steps; ++k) {
    size.push_back(std::abs(staticTorque(load, place(k), payloadMass)));
  }
  for (std::size_t k = 1; k + 1 < size.size(); ++k) {
    if (size[k] < size[k - 1] || size[k] < size[k + 1]) continue;
    const int at = static_cast<int>(k);
    angles.push_back(summit(load, payloadMass, place(at - 1), place(at + 1)));
  }
}

}  // namespace

StaticPose worstStaticPose(const Load& load, double payloadMass, double low, double high) {
  std::vector<double> angles = candidates(load, payloadMass, low, high);
  if (extensionSpring(load).given()) {
    const double first = std::min(high, low + kTurn), last = std::max(low, high - kTurn);
    addHumps(angles, load, payloadMass, low, first);
    if (last > low) addHumps(angles, load, payloadMass, last, high);
  }
  StaticPose worst{low, staticTorque(load, low, payloadMass)};
  for (const double angle : angles) {
    const double torque = staticTorque(load, angle, payloadMass);
    if (std::abs(torque) > std::abs(worst.torque)) worst = {angle, torque};
  }
  return worst;
}

}  // namespace jw

#pragma once

#include <cmath>
#include <utility>
#include <vector>

#include <Eigen/Core>
#include <boost/math/special_functions/fpclassify.hpp>

#include <boost/math/interpolators/pchip.hpp>  // needs the one above

#include "core/physics/torque_envelope.h"

namespace jw {

inline constexpr Eigen::Index kQuarter = 64;  ///< points between standstill, knee and end

/// The upper edge over one quarter of the speeds, from `first` on: every fifth point and a smooth
/// curve that does not overshoot (Fritsch and Carlson) through them.
template <class UpperTorque>
bool smoothQuarter(const Eigen::ArrayXd& speeds, Eigen::Index first, const UpperTorque& upper,
                   Eigen::ArrayXd& torque) {
  std::vector<double> x;
  std::vector<double> y;
  for (Eigen::Index k = 0; k < kQuarter; k += k + 3 == kQuarter - 1 ? 3 : 5) {
    x.push_back(speeds[first + k]);
    y.push_back(upper(first + k));
    if (!std::isfinite(y.back()) || (k > 0 && !(x.back() > x[x.size() - 2]))) return false;
  }
  const boost::math::interpolators::pchip<std::vector<double>> curve(std::move(x), std::move(y));
  for (Eigen::Index k = 0; k < kQuarter; ++k) torque[first + k] = curve(speeds[first + k]);
  return true;
}

/// Closed loop: the upper edge from left to right, the lower one (its mirror image) back. `upper`
/// gives the torque at the speed of an index; where it is `costly`, at every fifth only.
template <class UpperTorque>
EnvelopeCurve closedCurve(const Eigen::ArrayXd& speeds, bool costly, const UpperTorque& upper) {
  const Eigen::Index n = speeds.size();
  EnvelopeCurve curve{Eigen::ArrayXd(2 * n + 1), Eigen::ArrayXd(2 * n + 1)};
  curve.speed.head(n) = speeds;
  for (Eigen::Index first = 0; first < n; first += kQuarter) {
    if (costly && smoothQuarter(speeds, first, upper, curve.torque)) continue;
    for (Eigen::Index i = first; i < first + kQuarter; ++i) curve.torque[i] = upper(i);
  }
  curve.speed.segment(n, n) = -curve.speed.head(n);
  curve.torque.segment(n, n) = -curve.torque.head(n);
  curve.speed[2 * n] = curve.speed[0];
  curve.torque[2 * n] = curve.torque[0];
  return curve;
}

}  // namespace jw

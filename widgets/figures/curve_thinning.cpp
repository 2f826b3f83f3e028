#include "widgets/figures/curve_thinning.h"

#include <algorithm>
#include <cmath>
#include <tuple>
#include <utility>
#include <vector>

namespace jw {
namespace {

struct Extent {
  double low = 0;
  double high = 0;
};

Extent extentOf(const QVector<double>& values) {
  Extent e{INFINITY, -INFINITY};
  for (const double v : values) {
    if (std::isnan(v)) continue;
    e.low = std::min(e.low, v);
    e.high = std::max(e.high, v);
  }
  return e;
}

QVector<double> normalised(const QVector<double>& values) {
  const Extent e = extentOf(values);
  const double size = e.high > e.low ? e.high - e.low : 1;
  QVector<double> out = values;
  for (double& v : out) v = (v - e.low) / size;
  return out;
}

double distanceToSegment(double px, double py, double ax, double ay, double bx, double by) {
  const double dx = bx - ax;
  const double dy = by - ay;
  const double length2 = dx * dx + dy * dy;
  const double share =
      length2 > 0 ? std::clamp(((px - ax) * dx + (py - ay) * dy) / length2, 0.0, 1.0) : 0;
  return std::hypot(px - ax - share * dx, py - ay - share * dy);
}

// Marks which points between `first` and `last` (both without NaN between) have to stay.
void keepBetween(const PlaneCurve& c, qsizetype first, qsizetype last, double tolerance,
                 std::vector<bool>& keep) {
  std::vector<std::pair<qsizetype, qsizetype>> open{{first, last}};
  while (!open.empty()) {
    const auto [a, b] = open.back();
    open.pop_back();
    double farthest = tolerance;
    qsizetype at = -1;
    for (qsizetype i = a + 1; i < b; ++i) {
      const double d = distanceToSegment(c.speed[i], c.torque[i], c.speed[a], c.torque[a],
                                         c.speed[b], c.torque[b]);
      if (d > farthest) std::tie(farthest, at) = std::pair(d, i);
    }
    if (at < 0) continue;
    keep[std::size_t(at)] = true;
    open.emplace_back(a, at);
    open.emplace_back(at, b);
  }
}

bool isGap(const PlaneCurve& c, qsizetype i) {
  return std::isnan(c.speed[i]) || std::isnan(c.torque[i]);
}

}  // namespace

PlaneCurve thinned(const PlaneCurve& curve, double tolerance) {
  const qsizetype n = curve.speed.size();
  const PlaneCurve unit{normalised(curve.speed), normalised(curve.torque)};
  std::vector<bool> keep(std::size_t(n), false);
  for (qsizetype i = 0; i < n;) {
    qsizetype end = i;
    while (end + 1 < n && !isGap(unit, i) && !isGap(unit, end + 1)) ++end;
    keep[std::size_t(i)] = keep[std::size_t(end)] = true;
    keepBetween(unit, i, end, tolerance, keep);
    i = end + 1;
  }
  PlaneCurve out;
  for (qsizetype i = 0; i < n; ++i) {
    if (!keep[std::size_t(i)]) continue;
    out.speed << curve.speed[i];
    out.torque << curve.torque[i];
  }
  return out;
}

}  // namespace jw

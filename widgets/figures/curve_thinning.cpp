#include "widgets/figures/curve_thinning.h"

#include <algorithm>
#include <cmath>
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

// A stretch of the line, with what its distances need worked out once.
struct Chord {
  double x;
  double y;
  double dx;
  double dy;
  double perLength2;

  Chord(const Polyline& line, qsizetype a, qsizetype b)
      : x(line.x[a]), y(line.y[a]), dx(line.x[b] - x), dy(line.y[b] - y) {
    const double length2 = dx * dx + dy * dy;
    perLength2 = length2 > 0 ? 1 / length2 : 0;
  }
  // Square of the distance; roots are not needed to compare.
  double distance2(double px, double py) const {
    const double rx = px - x;
    const double ry = py - y;
    const double share = std::clamp((rx * dx + ry * dy) * perLength2, 0.0, 1.0);
    const double ex = rx - share * dx;
    const double ey = ry - share * dy;
    return ex * ex + ey * ey;
  }
};

// The point farthest from the chord of a and b, -1 if none is farther than the tolerance.
qsizetype farthestFrom(const Polyline& line, qsizetype a, qsizetype b, double tolerance2) {
  const Chord chord(line, a, b);
  const double* x = line.x.constData();
  const double* y = line.y.constData();
  double farthest = tolerance2;
  qsizetype at = -1;
  for (qsizetype i = a + 1; i < b; ++i) {
    const double d = chord.distance2(x[i], y[i]);
    if (d <= farthest) continue;
    farthest = d;
    at = i;
  }
  return at;
}

// Marks which points between `first` and `last` (none of them NaN) have to stay.
void keepBetween(const Polyline& line, qsizetype first, qsizetype last, double tolerance,
                 std::vector<bool>& keep) {
  std::vector<std::pair<qsizetype, qsizetype>> open{{first, last}};
  while (!open.empty()) {
    const auto [a, b] = open.back();
    open.pop_back();
    const qsizetype at = farthestFrom(line, a, b, tolerance * tolerance);
    if (at < 0) continue;
    keep[std::size_t(at)] = true;
    open.emplace_back(a, at);
    open.emplace_back(at, b);
  }
}

bool isGap(const Polyline& c, qsizetype i) { return std::isnan(c.x[i]) || std::isnan(c.y[i]); }

}  // namespace

Polyline thinned(const QVector<double>& x, const QVector<double>& y, double tolerance) {
  const qsizetype n = x.size();
  const Polyline unit{normalised(x), normalised(y)};
  std::vector<bool> keep(std::size_t(n), false);
  for (qsizetype i = 0; i < n;) {
    qsizetype end = i;
    while (end + 1 < n && !isGap(unit, i) && !isGap(unit, end + 1)) ++end;
    keep[std::size_t(i)] = keep[std::size_t(end)] = true;
    keepBetween(unit, i, end, tolerance, keep);
    i = end + 1;
  }
  Polyline out;
  for (qsizetype i = 0; i < n; ++i) {
    if (!keep[std::size_t(i)]) continue;
    out.x << x[i];
    out.y << y[i];
  }
  return out;
}

QPolygonF polygonOf(const Polyline& line) {
  QPolygonF polygon;
  for (qsizetype i = 0; i < line.x.size(); ++i)
    if (!std::isnan(line.x[i]) && !std::isnan(line.y[i])) polygon << QPointF(line.x[i], line.y[i]);
  return polygon;
}

}  // namespace jw

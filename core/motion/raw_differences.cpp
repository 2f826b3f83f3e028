#include "core/motion/raw_differences.h"

#include <algorithm>
#include <cassert>

namespace jw {
namespace {

/// The parabola through three neighbours by divided differences: slope of its first side, and
/// curvature / 2.
struct Parabola {
  double start, firstSlope, half, firstStep;

  Parabola(const std::vector<double>& t, const std::vector<double>& y, std::size_t i)
      : start(t[i]), firstSlope((y[i + 1] - y[i]) / (t[i + 1] - t[i])), firstStep(t[i + 1] - t[i]) {
    const double second = (y[i + 2] - y[i + 1]) / (t[i + 2] - t[i + 1]);
    half = (second - firstSlope) / (t[i + 2] - t[i]);
  }
  double slopeAt(double time) const { return firstSlope + half * (2 * (time - start) - firstStep); }
};

template <class Value>
std::vector<double> atEachPoint(const std::vector<double>& time, const std::vector<double>& values,
                                Value value) {
  assert(time.size() == values.size() && time.size() >= 3);
  std::vector<double> result(time.size());
  for (std::size_t i = 0; i < time.size(); ++i) {
    const std::size_t first = std::clamp<std::size_t>(i, 1, time.size() - 2) - 1;
    result[i] = value(Parabola(time, values, first), time[i]);
  }
  return result;
}

}  // namespace

std::vector<double> rawSlope(const std::vector<double>& time, const std::vector<double>& values) {
  return atEachPoint(time, values, [](const Parabola& p, double t) { return p.slopeAt(t); });
}

std::vector<double> rawCurvature(const std::vector<double>& time,
                                 const std::vector<double>& values) {
  return atEachPoint(time, values, [](const Parabola& p, double) { return 2 * p.half; });
}

}  // namespace jw

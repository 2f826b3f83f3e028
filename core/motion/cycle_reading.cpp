#include "core/motion/cycle_reading.h"

#include <algorithm>
#include <cmath>

namespace jw {

double cycleMean(const SampledCycle& cycle, const Eigen::ArrayXd& values) {
  return (cycle.weight * values).sum() / cycle.period;
}

double cycleRms(const SampledCycle& cycle, const Eigen::ArrayXd& values) {
  return std::sqrt(std::max(cycleMean(cycle, values.square()), 0.0));
}

Eigen::Index sampleAt(const SampledCycle& cycle, double time) {
  const double* first = cycle.time.data();
  const double* after = std::upper_bound(first, first + cycle.size(), time);
  return std::max<Eigen::Index>(after - first - 1, 0);
}

double valueAt(const SampledCycle& cycle, const Eigen::ArrayXd& values, double time) {
  const Eigen::Index i = sampleAt(cycle, time);
  if (i + 1 >= cycle.size() || time <= cycle.time[i]) return values[i];
  const double share = (time - cycle.time[i]) / (cycle.time[i + 1] - cycle.time[i]);
  return values[i] + share * (values[i + 1] - values[i]);
}

}  // namespace jw

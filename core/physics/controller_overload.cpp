#include "core/physics/controller_overload.h"

#include <algorithm>
#include <cmath>
#include <limits>

namespace jw {

double deratedContinuousCurrent(const Controller& c) {
  if (!isSet(c.heatSink) || !isSet(c.deratingStart) || !isSet(c.deratingEnd)) {
    return c.currentContinuous;
  }
  if (c.heatSink <= c.deratingStart) return c.currentContinuous;
  if (c.heatSink >= c.deratingEnd) return 0;
  return c.currentContinuous * (c.deratingEnd - c.heatSink) / (c.deratingEnd - c.deratingStart);
}

double overloadShare(const SampledCycle& cycle, const Eigen::ArrayXd& current, double continuous,
                     double peak, double peakTime) {
  const double infinity = std::numeric_limits<double>::infinity();
  const double rest = continuous * continuous;
  const double meanSquare = (cycle.weight * current.square()).sum() / cycle.period;
  const double most = current.abs().maxCoeff();
  if (most <= continuous) return 0;
  if (meanSquare > rest || peak <= continuous) return infinity;
  double gathered = 0;
  double highest = 0;
  for (int pass = 0; pass < 2; ++pass) {  // the second starts as the cycle repeats
    for (Eigen::Index i = 0; i + 1 < cycle.size(); ++i) {
      const double square = (current[i] * current[i] + current[i + 1] * current[i + 1]) / 2;
      gathered = std::max(0.0, gathered + (square - rest) * (cycle.time[i + 1] - cycle.time[i]));
      highest = std::max(highest, gathered);
    }
  }
  return highest / ((peak * peak - rest) * peakTime);
}

}  // namespace jw

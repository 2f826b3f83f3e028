#include "core/studies/heat_charts.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <vector>

#include <Eigen/LU>

#include "core/physics/bracketed_root.h"

namespace jw {
namespace {

using Eigen::Index;
using Eigen::Vector2d;

constexpr double kInfinity = std::numeric_limits<double>::infinity();

HeatMap power(HeatMap base, std::uint64_t exponent) {
  HeatMap result;
  for (; exponent > 0; exponent >>= 1) {
    if (exponent & 1) result = result.then(base);
    base = base.then(base);
  }
  return result;
}

/// Maps from the start of the cycle to its hottest and coolest instants.
struct Ripple {
  HeatMap cycle, hottest, coolest;
};

Ripple rippleOf(const HeatNetwork& network, const HeatLoad& load, const Vector2d& start) {
  Ripple ripple;
  HeatMap toHere;
  double high = start[0];
  double low = start[0];
  for (Index i = 0; i < load.duration.size(); ++i) {
    toHere = toHere.then(heatStep(network, load.copper20[i], load.housing[i], load.duration[i]));
    const double winding = toHere(start)[0];
    if (!(winding <= high)) high = winding, ripple.hottest = toHere;
    if (winding < low) low = winding, ripple.coolest = toHere;
  }
  ripple.cycle = toHere;
  return ripple;
}

/// First cycle whose hottest instant is over the limit, by bisection on rising temperatures.
double firstOver(const Ripple& ripple, const Vector2d& cold, double limit, double period,
                 double horizon) {
  const auto over = [&](std::uint64_t n) {  // a runaway ends beyond all numbers
    return !(ripple.hottest(power(ripple.cycle, n)(cold))[0] < limit);
  };
  auto high = static_cast<std::uint64_t>(std::ceil(horizon / period));
  if (over(0)) return 0;
  if (!over(high)) return kInfinity;
  std::uint64_t low = 0;
  while (high - low > 1) {
    const std::uint64_t middle = low + (high - low) / 2;
    (over(middle) ? high : low) = middle;
  }
  return static_cast<double>(high) * period;
}

}  // namespace

double slowTimeConstant(const HeatNetwork& n) {
  const double between = 1 / n.windingToHousing;
  const double a = between / n.windingCapacity;
  const double d = (between + 1 / n.housingToAmbient) / n.housingCapacity;
  const double coupling = between * between / (n.windingCapacity * n.housingCapacity);
  const double half = (a + d) / 2;
  return 1 / (half - std::sqrt((a - d) * (a - d) / 4 + coupling));
}

WarmUp warmUp(const HeatNetwork& network, const HeatLoad& load, double limit, double duration,
              int points) {
  const double period = load.duration.sum();
  const Vector2d cold = Vector2d::Constant(network.ambient);
  const PeriodicHeat periodic = periodicHeat(network, load);
  const Ripple ripple = rippleOf(network, load, periodic.runaway ? cold : periodic.start);
  const auto cycles = static_cast<std::uint64_t>(std::max(1.0, std::ceil(duration / period)));
  const std::uint64_t stride =
      std::max<std::uint64_t>(1, cycles / static_cast<std::uint64_t>(std::max(points, 1)));
  const HeatMap leap = power(ripple.cycle, stride);
  const auto count = static_cast<Index>(cycles / stride + 1);
  WarmUp result{Eigen::ArrayXd(count), Eigen::ArrayXd(count), Eigen::ArrayXd(count),
                Eigen::ArrayXd(count), 0};
  Vector2d at = cold;
  for (Index k = 0; k < count; ++k) {
    result.time[k] = static_cast<double>(stride) * period * static_cast<double>(k);
    result.windingLow[k] = std::min(at[0], ripple.coolest(at)[0]);
    result.windingHigh[k] = std::max(at[0], ripple.hottest(at)[0]);
    result.housing[k] = at[1];
    at = leap(at);
  }
  result.timeToLimit =
      firstOver(ripple, cold, limit, period, 60 * slowTimeConstant(network) + period);
  return result;
}

double lastingCopper20(const HeatNetwork& n, double housing, double limit) {
  const double rise = limit - n.ambient - housing * n.housingToAmbient;
  if (!(rise > 0)) return 0;
  const double lossAtLimit = rise / (n.windingToHousing + n.housingToAmbient);
  return lossAtLimit / (1 + n.copperCoefficient * (limit - 20));
}

double timeToLimit(const HeatNetwork& network, double copper20, double housing,
                   const Vector2d& from, double limit) {
  if (from[0] >= limit) return 0;
  const auto room = [&](double logTime) {  // a runaway ends beyond all numbers
    const double end = heatStep(network, copper20, housing, std::exp(logTime))(from)[0];
    return std::isfinite(end) ? std::max(-1.0, (limit - end) / (limit - from[0])) : -1.0;
  };
  const double last = std::log(50 * slowTimeConstant(network));
  if (room(last) > 0) return kInfinity;
  double first = std::log(1e-6 * slowTimeConstant(network));
  while (room(first) <= 0 && first > -50) first -= 5;
  return std::exp(bracketedRoot(room, first, last));
}

double allowedAtDuty(const HeatNetwork& network, double housing, double idleHousing, double limit,
                     double duty, double period) {
  const double lasting = lastingCopper20(network, housing, limit);
  if (lasting == 0) return 0;
  const auto room = [&](double multiple) {
    const HeatMap on = heatStep(network, multiple * multiple * lasting, housing, duty * period);
    const HeatMap off = heatStep(network, 0, idleHousing, (1 - duty) * period);
    const HeatMap cycle = off.then(on);  // starts and ends at the hottest instant
    const Eigen::Matrix2d gap = Eigen::Matrix2d::Identity() - cycle.gain;
    if (!(gap.determinant() > 0) || !(cycle.gain.determinant() < 1)) return -1.0;  // runaway
    const Vector2d hottest = gap.partialPivLu().solve(cycle.offset);
    return std::clamp((limit - hottest[0]) / (limit - network.ambient), -1.0, 1.0);
  };
  double high = 1;
  while (room(high) > 0 && high < 1e6) high *= 2;
  return room(0) <= 0 ? 0 : bracketedRoot(room, 0, high);
}

double allowedOnce(const HeatNetwork& network, double housing, double limit, double duration) {
  const double lasting = lastingCopper20(network, housing, limit);
  if (lasting == 0) return 0;
  const Vector2d cold = Vector2d::Constant(network.ambient);
  const auto room = [&](double multiple) {
    const double end = heatStep(network, multiple * multiple * lasting, housing, duration)(cold)[0];
    return std::isfinite(end) ? std::max(-1.0, (limit - end) / (limit - network.ambient)) : -1.0;
  };
  double high = 1;
  while (room(high) > 0 && high < 1e6) high *= 2;
  return bracketedRoot(room, 0, high);
}

}  // namespace jw

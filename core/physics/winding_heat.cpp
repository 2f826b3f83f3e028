#include "core/physics/winding_heat.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <vector>

#include <Eigen/LU>

namespace jw {
namespace {

using Eigen::Index;
using Eigen::Matrix2d;
using Eigen::Vector2d;

/// x' = rate x + drive.
struct LinearHeat {
  Matrix2d rate;
  Vector2d drive;
};

LinearHeat linearHeat(const HeatNetwork& n, double copper20, double housing) {
  const double between = 1 / n.windingToHousing;
  const double outward = 1 / n.housingToAmbient;
  const double feedback = copper20 * n.copperCoefficient;
  LinearHeat system;
  system.rate << (feedback - between) / n.windingCapacity, between / n.windingCapacity,
      between / n.housingCapacity, -(between + outward) / n.housingCapacity;
  system.drive << (copper20 - 20 * feedback) / n.windingCapacity,
      (housing + n.ambient * outward) / n.housingCapacity;
  return system;
}

/// Largest row sum of sizes: bounds every eigenvalue.
double sizeOf(const Matrix2d& m) {
  return std::max(std::abs(m(0, 0)) + std::abs(m(0, 1)), std::abs(m(1, 0)) + std::abs(m(1, 1)));
}

/// integral of exp(rate s) ds from 0 to h = h sum (rate h)^k / (k+1)!, for `size` = |rate h| small,
/// by Horner's rule with as many terms as `size` asks for.
Matrix2d integralOfExponential(const Matrix2d& rate, double h, double size) {
  int terms = 1;
  for (double next = size / 2; next > 1e-18 && terms < 30; next *= size / (terms + 1)) ++terms;
  const Matrix2d step = rate * h;
  Matrix2d sum = Matrix2d::Identity();
  for (int k = terms; k >= 2; --k) {
    sum = (step * sum) * (1.0 / k);
    sum(0, 0) += 1;
    sum(1, 1) += 1;
  }
  return sum * h;
}

/// Integral of the temperatures over a step, [K·s]. From the differential equation itself where the
/// step is long; the trapezoid is as good where it is short.
Vector2d integralOver(const LinearHeat& system, double h, const Vector2d& from,
                      const Vector2d& to) {
  const double determinant = system.rate.determinant();
  if (sizeOf(system.rate) * h < 1e-3 || determinant == 0) return h * (from + to) / 2;
  return system.rate.inverse() * (to - from - h * system.drive);
}

double spectralRadiusOf(const Matrix2d& m) {
  const double half = m.trace() / 2;
  const double square = half * half - m.determinant();
  return square >= 0 ? std::abs(half) + std::sqrt(square) : std::sqrt(m.determinant());
}

/// The steps of a cycle. Those of a long one are worked out at each pass: kept, they would take
/// more room than the whole load.
class HeatSteps {
 public:
  HeatSteps(const HeatNetwork& network, const HeatLoad& load, double copperDivisor)
      : network_(network), load_(load), divisor_(copperDivisor) {
    constexpr Index kMostKept = 100'000;
    if (count() > kMostKept) return;
    kept_.reserve(static_cast<std::size_t>(count()));
    for (Index i = 0; i < count(); ++i) kept_.push_back(workedOut(i));
  }

  Index count() const { return load_.duration.size(); }
  double copper20(Index i) const { return load_.copper20[i] / divisor_; }
  HeatMap at(Index i) const {
    return kept_.empty() ? workedOut(i) : kept_[static_cast<std::size_t>(i)];
  }
  LinearHeat system(Index i) const { return linearHeat(network_, copper20(i), load_.housing[i]); }
  double duration(Index i) const { return load_.duration[i]; }
  double period() const { return load_.duration.sum(); }

 private:
  HeatMap workedOut(Index i) const {
    return heatStep(network_, copper20(i), load_.housing[i], load_.duration[i]);
  }

  const HeatNetwork& network_;
  const HeatLoad& load_;
  double divisor_;
  std::vector<HeatMap> kept_;
};

/// Winding and housing at the start and after each step.
void follow(const HeatSteps& steps, PeriodicHeat& result) {
  const Index n = steps.count();
  result.winding.resize(n + 1);
  result.housing.resize(n + 1);
  Vector2d at = result.start;
  Vector2d area = Vector2d::Zero();
  for (Index i = 0; i <= n; ++i) {
    result.winding[i] = at[0];
    result.housing[i] = at[1];
    if (i == n) break;
    const Vector2d next = steps.at(i)(at);
    area += integralOver(steps.system(i), steps.duration(i), at, next);
    at = next;
  }
  const double period = steps.period();
  result.windingMean = area[0] / period;
  result.housingMean = area[1] / period;
  result.windingPeak = result.winding.maxCoeff();
  result.housingPeak = result.housing.maxCoeff();
}

}  // namespace

HeatMap heatStep(const HeatNetwork& network, double copper20, double housing, double duration) {
  if (duration == 0) return {};
  const LinearHeat system = linearHeat(network, copper20, housing);
  const double size = sizeOf(system.rate) * duration;
  const int doublings = size > 0.5 ? static_cast<int>(std::ceil(std::log2(size / 0.5))) : 0;
  Matrix2d integral = integralOfExponential(system.rate, std::ldexp(duration, -doublings),
                                            std::ldexp(size, -doublings));
  Matrix2d gain = Matrix2d::Identity() + system.rate * integral;
  for (int k = 0; k < doublings; ++k) {
    integral += gain * integral;
    gain = gain * gain;
  }
  return {gain, integral * system.drive};
}

Vector2d steadyHeat(const HeatNetwork& network, double copper20, double housing) {
  const LinearHeat system = linearHeat(network, copper20, housing);
  // Stable only while the rate's determinant is positive (its trace is then negative).
  if (!(system.rate.determinant() > 0) || !(system.rate.trace() < 0)) {
    return Vector2d::Constant(std::numeric_limits<double>::infinity());
  }
  return -system.rate.inverse() * system.drive;
}

PeriodicHeat periodicHeat(const HeatNetwork& network, const HeatLoad& load, double copperDivisor) {
  const HeatSteps steps(network, load, copperDivisor);
  PeriodicHeat result;
  for (Index i = 0; i < steps.count(); ++i) result.cycleMap = result.cycleMap.then(steps.at(i));
  result.spectralRadius = spectralRadiusOf(result.cycleMap.gain);
  result.runaway = !(result.spectralRadius < 1);
  if (result.runaway) return result;
  result.start = (Matrix2d::Identity() - result.cycleMap.gain).inverse() * result.cycleMap.offset;
  follow(steps, result);
  return result;
}

}  // namespace jw

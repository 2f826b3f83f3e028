#include "core/studies/ratio_marks.h"

#include <algorithm>
#include <cmath>

#include "core/studies/textbook_ratio.h"

namespace jw {
namespace {

/// The lowest point of a curve: of the parabola through its smallest value and both neighbours.
/// None where it falls up to a gap: what lies in the gap might be lower.
BestRatio lowest(const std::vector<double>& x, const std::vector<double>& y) {
  std::size_t best = y.size();
  for (std::size_t k = 0; k < y.size(); ++k) {
    if (isSet(y[k]) && (best == y.size() || y[k] < y[best])) best = k;
  }
  if (best == y.size()) return {};
  const BestRatio plain{x[best], y[best]};
  const bool afterGap = best > 0 && !isSet(y[best - 1]);
  const bool beforeGap = best + 1 < y.size() && !isSet(y[best + 1]);
  if (afterGap || beforeGap) return {};
  if (best == 0 || best + 1 == y.size()) return plain;
  const double h = x[best] - x[best - 1], k = x[best + 1] - x[best];
  const double rise = (y[best + 1] - y[best]) / k, fall = (y[best] - y[best - 1]) / h;
  const double curvature = (rise - fall) / (h + k);
  if (!(curvature > 0)) return plain;
  const double slope = (fall * k + rise * h) / (h + k);
  const double step = std::clamp(-slope / (2 * curvature), -h, k);
  return {x[best] + step, y[best] + step * (slope + curvature * step)};
}

std::vector<double> quantityOf(const RatioSweep& sweep, std::string_view id) {
  for (const QuantityColumn& column : sweep.quantities) {
    if (column.id == id) return column.value;
  }
  return {};
}

void markMatches(const Project& project, const Evaluation& base, RatioSweep& sweep) {
  const Motor& motor = project.active().motor;
  if (!base.load || !isSet(motor.rotorInertia) || !base.chain) return;
  const double onAxis = sweep.present / std::abs(base.chain->ratio);
  const double own = motor.rotorInertia + motor.brakeInertia;
  const double inertia = base.load->largestInertia;
  sweep.inertiaMatched = onAxis * inertiaMatch(inertia, own);
  Eigen::Index at = 0;
  if (!(base.load->inertia.abs().maxCoeff(&at) > 0)) return;
  const double alpha = base.cycle->acceleration[at];
  const double other = base.load->total[at] - base.load->inertia[at];
  sweep.torqueMatched = onAxis * inertiaMatch(base.load->inertia[at] / alpha, own, other, alpha);
}

}  // namespace

void markRatios(const Project& project, const Evaluation& base, RatioSweep& sweep) {
  std::vector<double> loss;
  for (const DesignPoint& point : sweep.points) loss.push_back(point.lossMean);
  std::vector<double> peak = quantityOf(sweep, "motor.temperature_winding_peak");
  for (std::size_t k = 0; k < peak.size(); ++k) {
    if (sweep.points[k].openAt >= 0) loss[k] = peak[k] = kUnset;
  }
  sweep.leastLoss = lowest(sweep.ratio, loss);
  sweep.coolest = lowest(sweep.ratio, peak);
  markMatches(project, base, sweep);
}

}  // namespace jw

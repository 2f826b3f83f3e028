#include "core/studies/shown_samples.h"

#include <algorithm>

namespace jw {
namespace {

using Eigen::ArrayXd;
using Eigen::Index;

constexpr Index kFew = 32;  // samples of a part that are all drawn

/// Every curve over the cycle that a figure draws, of as many values as samples.
std::vector<const ArrayXd*> curvesOf(const Evaluation& e) {
  std::vector<const ArrayXd*> curves{&e.cycle->angle, &e.cycle->speed};
  const auto add = [&](std::initializer_list<const ArrayXd*> more) {
    for (const ArrayXd* curve : more)
      if (curve->size() == e.cycle->size()) curves.push_back(curve);
  };
  if (e.load)
    add({&e.load->total, &e.load->gravity, &e.load->inertia, &e.load->friction, &e.load->spring,
         &e.load->external});
  if (e.chain) {
    add({&e.chain->motorSpeed});
    for (const StageLoad& stage : e.chain->stages) add({&stage.loss});
  }
  if (e.demand)
    add({&e.demand->torque, &e.demand->current, &e.demand->shaftPower, &e.demand->supplyPower,
         &e.demand->copperLoss, &e.demand->dragLoss, &e.demand->controllerLoss});
  if (e.heat) add({&e.heat->periodic.winding, &e.heat->periodic.housing});
  if (e.supply) add({&e.supply->energy.voltage});
  return curves;
}

/// Takes what the part [first, last) needs.
void takePart(const std::vector<const ArrayXd*>& curves, Index first, Index last,
              std::vector<Index>& samples) {
  const auto begin = samples.size();
  if (last - first <= kFew) {
    for (Index i = first; i < last; ++i) samples.push_back(i);
    return;
  }
  samples.insert(samples.end(), {first, last - 1});
  for (const ArrayXd* curve : curves) {
    Index low = 0, high = 0;
    curve->segment(first, last - first).minCoeff(&low);
    curve->segment(first, last - first).maxCoeff(&high);
    samples.insert(samples.end(), {first + low, first + high});
  }
  const auto from = samples.begin() + static_cast<std::ptrdiff_t>(begin);
  std::sort(from, samples.end());
  samples.erase(std::unique(from, samples.end()), samples.end());
}

}  // namespace

std::vector<Index> shownSamples(const Evaluation& evaluation, int columns) {
  std::vector<Index> samples;
  if (!evaluation.cycle || evaluation.cycle->size() <= kMostDrawnSamples) return samples;
  const ArrayXd& time = evaluation.cycle->time;
  const std::vector<const ArrayXd*> curves = curvesOf(evaluation);
  Index first = 0;
  for (int k = 1; k <= columns; ++k) {
    const double edge = evaluation.cycle->period * k / columns;
    const Index last =
        k == columns ? time.size()
                     : std::upper_bound(time.begin() + first, time.end(), edge) - time.begin();
    takePart(curves, first, last, samples);
    first = last;
  }
  return samples;
}

ArrayXd picked(const ArrayXd& values, const std::vector<Index>& samples) {
  if (samples.empty()) return values;
  return values(samples);
}

}  // namespace jw

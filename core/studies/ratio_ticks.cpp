// Ratios that can be built, as ticks on an axis.
#include <algorithm>
#include <cmath>

#include "core/studies/ratio_sweep.h"

namespace jw {
namespace {

/// Of each slot of the range the ratio of the smallest parts.
std::vector<double> smallestOfSlots(const std::vector<RealizableRatio>& all, double from, double to,
                                    std::size_t slots) {
  std::vector<const RealizableRatio*> best(slots, nullptr);
  for (const RealizableRatio& one : all) {
    const double share = (one.ratio - from) / (to - from);
    const auto slot =
        std::min(slots - 1, static_cast<std::size_t>(share * static_cast<double>(slots)));
    if (best[slot] == nullptr || one.size < best[slot]->size) best[slot] = &one;
  }
  std::vector<double> ticks;
  for (const RealizableRatio* one : best) {
    if (one != nullptr) ticks.push_back(one->ratio);
  }
  return ticks;
}

}  // namespace

std::vector<double> realizableTicks(StageFamily family, double from, double to,
                                    const SizeLimits& limits, std::size_t most) {
  // Of planet sets and rollers there are so many that the nearest to some ratios will do.
  const bool dense = family == StageFamily::Planetary || family == StageFamily::Traction;
  const std::size_t places = dense ? 12 : 1;
  std::vector<std::vector<RealizableRatio>> found(places);
  forEachPoint(places, {}, [&](std::size_t k) {
    const double share = (static_cast<double>(k) + 0.5) / static_cast<double>(places);
    found[k] = realizableRatios(family, from + share * (to - from), limits, dense ? 16 : 4000);
  });
  std::vector<RealizableRatio> all;
  for (std::vector<RealizableRatio>& some : found) {
    for (RealizableRatio& one : some) {
      if (one.ratio >= from && one.ratio <= to) all.push_back(std::move(one));
    }
  }
  std::sort(all.begin(), all.end(), [](const auto& a, const auto& b) { return a.ratio < b.ratio; });
  const auto same = [](const auto& a, const auto& b) { return b.ratio - a.ratio < 1e-9 * a.ratio; };
  all.erase(std::unique(all.begin(), all.end(), same), all.end());
  if (all.size() > most) return smallestOfSlots(all, from, to, most);
  std::vector<double> ticks;
  for (const RealizableRatio& one : all) ticks.push_back(one.ratio);
  return ticks;
}

}  // namespace jw

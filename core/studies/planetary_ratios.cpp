// Sets one by one first; then the last set of a row is looked up in their sorted list, so that
// three sets cost the square of the list's length and not its cube.
#include "core/studies/planetary_ratios.h"

#include <algorithm>
#include <cmath>

#include "core/physics/planetary_gear.h"

namespace jw {
namespace {

struct OneSet {
  double ratio = 0;
  double teeth = 0;  ///< of sun, planets and ring
  std::array<int, 3> counts{};
};

bool holds(const PlanetSet& set) {
  PlanetaryGeometry geometry;
  geometry.first = set;
  const auto conditions = planetaryConditions(geometry, {}, {}, kUnset);
  return std::all_of(conditions.begin(), conditions.end(),
                     [](const GeometryCondition& one) { return one.holds(); });
}

/// The fewest planets that fit evenly; the conditions of the set have the last word. 0 if none.
int fittingPlanets(int sun, int ring, const SizeLimits& limits) {
  for (int planets = limits.leastPlanets; planets <= limits.mostPlanets; ++planets) {
    if ((sun + ring) % planets == 0 && holds({static_cast<double>(sun), static_cast<double>(ring),
                                              static_cast<double>(planets)})) {
      return planets;
    }
  }
  return 0;
}

/// Every ratio of one set once, with the fewest teeth, in rising order.
std::vector<OneSet> singleSets(const SizeLimits& limits) {
  std::vector<OneSet> all;
  const int most = mostRingTeeth(limits, limits.mostTeeth);
  for (int sun = limits.leastTeeth; sun <= most; ++sun) {
    for (int ring = sun + 2 * limits.leastTeeth; ring <= most; ring += 2) {
      const int planets = fittingPlanets(sun, ring, limits);
      if (planets == 0) continue;
      all.push_back({1.0 + static_cast<double>(ring) / sun,
                     static_cast<double>(sun + ring + planets * (ring - sun) / 2),
                     {sun, ring, planets}});
    }
  }
  std::sort(all.begin(), all.end(), [](const OneSet& a, const OneSet& b) {
    return a.ratio != b.ratio ? a.ratio < b.ratio : a.teeth < b.teeth;
  });
  const auto same = [](const OneSet& a, const OneSet& b) { return a.ratio == b.ratio; };
  all.erase(std::unique(all.begin(), all.end(), same), all.end());
  return all;
}

RatioCandidate inARow(std::vector<const OneSet*> sets) {
  RatioCandidate candidate{1, 0, static_cast<int>(sets.size()), {}, 0};
  std::size_t next = 0;
  std::reverse(sets.begin(), sets.end());  // largest ratio first
  for (const OneSet* set : sets) {
    candidate.ratio *= set->ratio;
    candidate.size += set->teeth;
    for (const int count : set->counts) candidate.counts[next++] = count;
  }
  return candidate;
}

using Row = std::vector<const OneSet*>;

/// Completes a row with the sets around the one at `target`, from `first` on, as long as they bring
/// it near enough.
void addAround(const Row& row, double ratio, const std::vector<OneSet>& sets, std::size_t first,
               std::size_t target, NearestRatios& nearest) {
  const auto tryOne = [&](const OneSet& set) {
    if (!nearest.mayTake(ratio * set.ratio)) return false;
    Row whole = row;
    whole.push_back(&set);
    nearest.add(inARow(std::move(whole)));
    return true;
  };
  std::size_t left = nearest.most();
  for (std::size_t k = target; k < sets.size() && left-- > 0 && tryOne(sets[k]);) ++k;
  left = nearest.most();
  for (std::size_t k = target; k > first && left-- > 0 && tryOne(sets[k - 1]);) --k;
}

/// Completes a row with two sets in rising order of ratio: while the one rises, the place where the
/// other would meet the wanted ratio falls.
void addLastTwo(const Row& row, double ratio, const std::vector<OneSet>& sets, std::size_t first,
                NearestRatios& nearest) {
  std::size_t target = sets.size();
  for (std::size_t j = first; j < sets.size(); ++j) {
    const double with = ratio * sets[j].ratio;
    if (with * sets[j].ratio > nearest.wanted() * (1 + nearest.bound())) break;
    while (target > j && with * sets[target - 1].ratio >= nearest.wanted()) --target;
    target = std::max(target, j);
    const bool above = target < sets.size() && nearest.mayTake(with * sets[target].ratio);
    const bool below = target > j && nearest.mayTake(with * sets[target - 1].ratio);
    if (!above && !below) continue;
    Row longer = row;
    longer.push_back(&sets[j]);
    addAround(longer, with, sets, j, target, nearest);
  }
}

void addRows(int count, const std::vector<OneSet>& sets, NearestRatios& nearest) {
  if (count == 1) {
    for (const OneSet& set : sets) nearest.add(inARow({&set}));
  } else if (count == 2) {
    addLastTwo({}, 1, sets, 0, nearest);
  } else {
    for (std::size_t k = 0; k < sets.size(); ++k) {
      addLastTwo({&sets[k]}, sets[k].ratio, sets, k, nearest);
    }
  }
}

}  // namespace

int mostRingTeeth(const SizeLimits& limits, int most) {
  if (!isSet(limits.outsideDiameter) || !isSet(limits.module)) return most;
  const double fitting = std::floor(limits.outsideDiameter / limits.module - 7.5 + 1e-9);
  return static_cast<int>(std::min<double>(most, std::max(fitting, 0.0)));
}

void addPlanetaryRatios(const SizeLimits& limits, NearestRatios& nearest) {
  const std::vector<OneSet> sets = singleSets(limits);
  if (sets.empty()) return;
  for (int count = std::max(limits.leastSets, 1); count <= std::min(limits.mostSets, 3); ++count) {
    addRows(count, sets, nearest);
  }
}

}  // namespace jw

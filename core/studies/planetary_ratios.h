#pragma once

#include "core/studies/nearest_ratios.h"
#include "core/studies/realizable_ratios.h"

namespace jw {

/// Adds the planet sets in a row, limits.leastSets to limits.mostSets of them, that come near the
/// wanted ratio. Counts are sun, ring and planets of each set, the largest ratio first; the variant
/// is the number of sets.
void addPlanetaryRatios(const SizeLimits& limits, NearestRatios& nearest);

/// Most teeth of a ring within the outside diameter: m (z + 7.5), a root of 1.25 m and a rim of
/// 2.5 m outside the pitch circle; common practice, no source.
int mostRingTeeth(const SizeLimits& limits, int most);

}  // namespace jw

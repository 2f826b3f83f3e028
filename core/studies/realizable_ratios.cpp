#include "core/studies/realizable_ratios.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include <fmt/format.h>

#include "core/physics/traction_rollers.h"
#include "core/studies/nearest_ratios.h"
#include "core/studies/planetary_ratios.h"

namespace jw {
namespace {

using Counts = std::array<int, 9>;

/// Most whole numbers of something `each` [m] wide in `room` [m], or `most`.
int fitting(double room, double each, int most) {
  if (!isSet(room) || !isSet(each)) return most;
  return std::min(most, static_cast<int>(std::floor(room / each + 1e-9)));
}

/// Every pair of wheels.
void addPairs(int least, int most, NearestRatios& nearest) {
  for (int first = least; first <= most; ++first) {
    for (int second = least; second <= most; ++second) {
      nearest.add({1.0 * second / first, 1.0 * first + second, 0, {first, second}, 0});
    }
  }
}

void addGearPairs(const SizeLimits& limits, NearestRatios& nearest) {
  // Tip circle: two modules more than the pitch circle.
  const double room = limits.outsideDiameter - 2 * limits.module;
  addPairs(limits.leastTeeth, fitting(room, limits.module, limits.mostTeeth), nearest);
}

void addBelts(const SizeLimits& limits, NearestRatios& nearest) {
  const int most =
      fitting(limits.outsideDiameter, limits.beltPitch / std::numbers::pi, limits.mostTeeth);
  addPairs(limits.leastPulleyTeeth, most, nearest);
}

/// One lobe less than pins: ratio lobes with the ring pins held, pins with the output pins held.
void addCycloids(const SizeLimits& limits, NearestRatios& nearest) {
  for (int pins = limits.leastPins; pins <= limits.mostPins; ++pins) {
    const double size = 2 * pins - 1;
    nearest.add({pins - 1.0, size, static_cast<int>(CycloidHeld::Pins), {pins}, 0});
    nearest.add({1.0 * pins, size, static_cast<int>(CycloidHeld::OutputPins), {pins}, 0});
  }
}

void addStrainWaves(const SizeLimits& limits, NearestRatios& nearest) {
  const int most = mostRingTeeth(limits, limits.mostFlexTeeth + 2) - 2;
  for (int flex = limits.leastFlexTeeth; flex <= most; ++flex) {
    const double size = 2 * flex + 2;
    nearest.add({flex / 2.0, size, static_cast<int>(StrainWaveHeld::CircularSpline), {flex}, 0});
    nearest.add({flex / 2.0 + 1, size, static_cast<int>(StrainWaveHeld::Flexspline), {flex}, 0});
  }
}

/// Fewest rollers within the limits whose conditions hold; 0 if none.
int fittingRollers(double sun, double ring, const SizeLimits& limits) {
  TractionGeometry geometry;
  geometry.sunDiameter = sun;
  geometry.ringDiameter = ring;
  if (!rollerDiameter(geometry)) return 0;
  for (int rollers = limits.leastPlanets; rollers <= limits.mostPlanets; ++rollers) {
    geometry.rollers = rollers;
    const auto all = tractionConditions(geometry, {});
    if (std::all_of(all.begin(), all.end(), [](const auto& one) { return one.holds(); })) {
      return rollers;
    }
  }
  return 0;
}

/// Diameters in steps.
void addRollers(const SizeLimits& limits, NearestRatios& nearest) {
  const double step = limits.diameterStep;
  const double room = isSet(limits.outsideDiameter) ? limits.outsideDiameter : 0.15;
  const int most = static_cast<int>(std::floor(room / step + 1e-9));
  const int least = static_cast<int>(std::ceil(limits.leastDiameter / step - 1e-9));
  for (int sun = std::max(least, 1); sun <= most; ++sun) {
    for (int ring = sun + 1; ring <= most; ++ring) {
      const double ratio = 1 + 1.0 * ring / sun;
      if (!nearest.mayTake(ratio)) continue;
      const int rollers = fittingRollers(sun * step, ring * step, limits);
      if (rollers > 0) nearest.add({ratio, ring * step * 1e3, 0, {sun, ring, rollers}, 0});
    }
  }
}

void addRatios(StageFamily family, const SizeLimits& limits, NearestRatios& nearest) {
  switch (family) {
    case StageFamily::Planetary: return addPlanetaryRatios(limits, nearest);
    case StageFamily::Cycloidal: return addCycloids(limits, nearest);
    case StageFamily::StrainWave: return addStrainWaves(limits, nearest);
    case StageFamily::Traction: return addRollers(limits, nearest);
    case StageFamily::Belt: return addBelts(limits, nearest);
    case StageFamily::ParallelShaft: return addGearPairs(limits, nearest);
    case StageFamily::Coupling:
    case StageFamily::GivenRatio: return;
  }
}

std::string whole(int count) { return fmt::format("{}", count); }

std::vector<StageEdit> planetaryEdits(const RatioCandidate& candidate) {
  std::vector<StageEdit> edits{{"planetSets", whole(candidate.variant)}};
  const char* suffixes[] = {"", "2", "3"};
  for (std::size_t k = 0; k < static_cast<std::size_t>(candidate.variant); ++k) {
    const std::string suffix = suffixes[k];
    edits.push_back({"sunTeeth" + suffix, whole(candidate.counts[3 * k])});
    edits.push_back({"ringTeeth" + suffix, whole(candidate.counts[3 * k + 1])});
    edits.push_back({"planets" + suffix, whole(candidate.counts[3 * k + 2])});
  }
  return edits;
}

std::vector<StageEdit> edits(StageFamily family, const RatioCandidate& candidate, double step) {
  const Counts& n = candidate.counts;
  const bool firstHeld = candidate.variant == 0;
  switch (family) {
    case StageFamily::Planetary: return planetaryEdits(candidate);
    case StageFamily::Cycloidal:
      return {{"cycloidHeld", firstHeld ? "pins" : "outputPins"},
              {"pins", whole(n[0])},
              {"lobes", whole(n[0] - 1)}};
    case StageFamily::StrainWave:
      return {{"strainWaveHeld", firstHeld ? "circularSpline" : "flexspline"},
              {"flexTeeth", whole(n[0])},
              {"circularTeeth", whole(n[0] + 2)}};
    case StageFamily::Traction:
      return {{"sunDiameter", fmt::format("{:.9g} mm", n[0] * step * 1e3)},
              {"ringDiameter", fmt::format("{:.9g} mm", n[1] * step * 1e3)},
              {"rollers", whole(n[2])}};
    case StageFamily::Belt:
      return {{"motorPulleyTeeth", whole(n[0])}, {"jointPulleyTeeth", whole(n[1])}};
    case StageFamily::ParallelShaft:
      return {{"pinionTeeth", whole(n[0])}, {"gearTeeth", whole(n[1])}};
    case StageFamily::Coupling:
    case StageFamily::GivenRatio: break;
  }
  return {};
}

}  // namespace

std::vector<RealizableRatio> realizableRatios(StageFamily family, double wantedRatio,
                                              const SizeLimits& limits, std::size_t most) {
  if (!(wantedRatio > 0) || !std::isfinite(wantedRatio) || most == 0) return {};
  NearestRatios nearest(wantedRatio, limits.tolerance, most);
  addRatios(family, limits, nearest);
  std::vector<RealizableRatio> all;
  for (const RatioCandidate& candidate : nearest.sorted()) {
    RealizableRatio one{candidate.ratio, candidate.error, candidate.size,
                        edits(family, candidate, limits.diameterStep)};
    one.edits.push_back({"ratio", ""});
    all.push_back(std::move(one));
  }
  return all;
}

}  // namespace jw

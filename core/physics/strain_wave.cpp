#include "core/physics/strain_wave.h"

#include <cmath>
#include <numbers>

#include "core/physics/if_given.h"
#include "core/physics/whole_number_condition.h"
#include "core/physics/willis.h"

namespace jw {

std::optional<double> strainWaveRatio(const StrainWaveGeometry& geometry) {
  const double difference = geometry.circularTeeth - geometry.flexTeeth;
  if (!(difference > 0)) return std::nullopt;
  return ifGiven((strainWaveReverses(geometry) ? geometry.flexTeeth : geometry.circularTeeth) /
                 difference);
}

bool strainWaveReverses(const StrainWaveGeometry& geometry) {
  return geometry.held == StrainWaveHeld::CircularSpline;
}

std::optional<StrainWaveSpeeds> strainWaveSpeeds(const StrainWaveGeometry& geometry,
                                                 double generatorSpeed) {
  if (!strainWaveRatio(geometry)) return std::nullopt;
  // The generator is the carrier of an epicyclic train of the two splines.
  EpicyclicSpeeds known{0, kUnset, generatorSpeed};
  if (geometry.held == StrainWaveHeld::CircularSpline) known = {kUnset, 0, generatorSpeed};
  const auto speeds = willisSpeeds(geometry.circularTeeth / geometry.flexTeeth, known);
  if (!speeds) return std::nullopt;
  return StrainWaveSpeeds{speeds->carrier, speeds->first, speeds->second};
}

std::optional<double> flexsplineBendings(const StrainWaveGeometry& geometry,
                                         double generatorSpeed) {
  const auto speeds = strainWaveSpeeds(geometry, generatorSpeed);
  if (!speeds) return std::nullopt;
  return std::abs(speeds->generator - speeds->flexspline) / std::numbers::pi;
}

GeometryConditions strainWaveConditions(const StrainWaveGeometry& geometry) {
  const double difference = geometry.circularTeeth - geometry.flexTeeth;
  if (!isSet(difference)) return {};
  return {{"teeth by which the circular spline exceeds the flexspline", 2, difference,
           Quantity::Number, "1", "circularTeeth", "two lobes; common practice, no source"},
          wholeNumberCondition("they differ by a multiple of two, for a generator with two lobes",
                               difference / 2, "circularTeeth", "common practice, no source")};
}

}  // namespace jw

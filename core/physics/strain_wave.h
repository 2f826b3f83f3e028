#pragma once

#include <optional>

#include "core/model/stage_geometry.h"
#include "core/physics/geometry_condition.h"

namespace jw {

// A strain-wave stage: generator driven, one spline held, the other the output. Its teeth do not
// creep. What is not given, or no more teeth on the circular spline than on the flexspline, yields
// nothing.

/// Ratio, generator over output: z_f/(z_c - z_f) with the circular spline held, z_c/(z_c - z_f)
/// with the flexspline held. From Willis's formula with i0 = z_c/z_f.
std::optional<double> strainWaveRatio(const StrainWaveGeometry& geometry);

/// Whether the output turns against the generator: with the circular spline held it does.
bool strainWaveReverses(const StrainWaveGeometry& geometry);

/// Speeds [rad/s] of the three parts.
struct StrainWaveSpeeds {
  double generator = 0;
  double flexspline = 0;
  double circularSpline = 0;
};

/// Speeds for one [rad/s] of the generator.
std::optional<StrainWaveSpeeds> strainWaveSpeeds(const StrainWaveGeometry& geometry,
                                                 double generatorSpeed);

/// Bendings of the flexspline in a second [1/s]: two lobes pass a place of it in each turn of the
/// generator against it, |w_g - w_f|/pi.
std::optional<double> flexsplineBendings(const StrainWaveGeometry& geometry, double generatorSpeed);

/// More teeth on the circular spline, by a multiple of two: the generator has two lobes.
GeometryConditions strainWaveConditions(const StrainWaveGeometry& geometry);

}  // namespace jw

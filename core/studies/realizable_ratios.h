#pragma once

#include <string>
#include <vector>

#include "core/model/stage.h"
#include "core/model/unset.h"

namespace jw {

/// What may be built. The defaults are wide and common practice, no source.
struct SizeLimits {
  double outsideDiameter = kUnset;  ///< [m]; needs module or pitch, rollers take 0.15 m if unset
  double module = kUnset;           ///< [m] of gears and splines
  double beltPitch = kUnset;        ///< [m]
  int leastTeeth = 18;        ///< on wheels with outside teeth, 20 deg not undercut (ISO 21771)
  int mostTeeth = 150;        ///< on ring, wheel or pulley
  int leastPulleyTeeth = 12;  ///< on belt pulleys
  int leastPlanets = 3;       ///< and rollers; the fewest that fit are taken
  int mostPlanets = 5;        ///< and rollers
  int leastSets = 1;          ///< of sun, planets and ring in a row
  int mostSets = 3;           ///< 3 at most
  int leastPins = 6;          ///< of a cycloidal ring
  int mostPins = 120;
  int leastFlexTeeth = 60;
  int mostFlexTeeth = 400;
  double leastDiameter = 10e-3;  ///< [m] of a sun roller
  double diameterStep = 0.5e-3;  ///< [m] in which sun roller and ring are made
  double tolerance = 1e-9;       ///< errors up to this count as none
};

/// A value for a field of a stage, "sunTeeth" and "18".
struct StageEdit {
  std::string key;
  std::string text;
};

/// A ratio that can be built.
struct RealizableRatio {
  double ratio = 0;
  double error = 0;              ///< ratio / wanted - 1
  double size = 0;               ///< teeth, pins and lobes in all; for rollers ring diameter [mm]
  std::vector<StageEdit> edits;  ///< adopt it: counts or diameters, and the ratio left open
};

/// The `most` ratios nearest to the wanted one that a stage of this family can have, best first: by
/// size of the error, then by size. Of several ways to the same ratio with as many sets the
/// smallest is listed. Every planet set is coaxial, evenly spread, clear of its neighbours and not
/// undercut; cycloidal stages have one lobe less than pins, splines differ by two teeth, rollers
/// clear each other. Conditions of load are not looked at. Exact within the limits. Empty for a
/// ratio that is not above 0 and for families without parts.
std::vector<RealizableRatio> realizableRatios(StageFamily family, double wantedRatio,
                                              const SizeLimits& limits, std::size_t most);

}  // namespace jw

#pragma once

#include <optional>
#include <vector>

#include "core/model/stage_geometry.h"
#include "core/physics/geometry_condition.h"
#include "core/physics/stage_data.h"

namespace jw {

// Sets of sun (driven), planets on a carrier (output) and held ring, one behind the other. What is
// not given yields nothing.

/// The sets in use, the motor's first.
std::vector<PlanetSet> planetSets(const PlanetaryGeometry& geometry);

/// Teeth of a planet, (z_r - z_s)/2; a half where sun and ring are not coaxial.
std::optional<double> planetTeeth(const PlanetSet& set);

/// Ratio of one set, sun over carrier: 1 + z_r/z_s.
std::optional<double> planetSetRatio(const PlanetSet& set);

/// Ratio of all sets, their product. Output turns with the input.
std::optional<double> planetaryRatio(const PlanetaryGeometry& geometry);

/// Efficiencies of one set for the efficiency of one mesh, 0 to 1. With i0 = -z_r/z_s and
/// eta0 = eta_m² for the path sun, planet, ring: driving (1 - i0 eta0)/(1 - i0), driven back
/// (1 - i0)/(1 - i0/eta0). VDI 2157, from memory.
std::optional<StageEfficiency> planetSetEfficiency(const PlanetSet& set, double meshEfficiency);

/// Efficiencies of all sets, their products.
std::optional<StageEfficiency> planetaryEfficiency(const PlanetaryGeometry& geometry,
                                                   double meshEfficiency);

/// Speeds [rad/s] in one set.
struct PlanetSetSpeeds {
  double sun = 0;
  double carrier = 0;
  double planet = 0;           ///< spin seen from the housing
  double planetOnCarrier = 0;  ///< spin seen from the carrier, -(w_s - w_c) z_s/z_p
};

/// Speeds of each set for a speed [rad/s] of the first sun; empty where teeth are not given.
std::vector<PlanetSetSpeeds> planetarySpeeds(const PlanetaryGeometry& geometry, double inputSpeed);

/// Torque [N·m] on each set's sun for one at the output, through the mesh efficiency where that is
/// given (driving); empty where teeth are not given.
std::vector<double> sunTorques(const PlanetaryGeometry& geometry, const Toothing& toothing,
                               double outputTorque);

/// Tangential force [N] in the mesh of the sun with the most loaded planet:
/// K_gamma 2 T_s/(n_p m z_s).
std::optional<double> planetMeshForce(const PlanetSet& set, const Toothing& toothing,
                                      double loadSharing, double sunTorque);

/// Hertz pressure [Pa] at the pitch point of that mesh, see flankPressure.
std::optional<double> planetFlankPressure(const PlanetSet& set, const Toothing& toothing,
                                          const ContactMaterial& material, double loadSharing,
                                          double sunTorque);

/// What every set has to satisfy: coaxial, planets evenly spread, neighbours clear, no undercut,
/// and with module, width and allowed pressure given, the flanks' pressure for an output torque
/// [N·m] (may be unset).
GeometryConditions planetaryConditions(const PlanetaryGeometry& geometry, const Toothing& toothing,
                                       const ContactMaterial& material, double outputTorque);

/// Inertia [kg·m²] at the first sun: suns and planets as full steel wheels of pitch diameter and
/// face width, the planets with orbit and spin as seen from the housing. Carriers, shafts and
/// bearings are not counted.
std::optional<double> planetaryInertia(const PlanetaryGeometry& geometry, const Toothing& toothing);

}  // namespace jw

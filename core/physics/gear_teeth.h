#pragma once

#include "core/model/stage_geometry.h"
#include "core/model/unset.h"

namespace jw {

/// Density [kg/m³] of the steel that wheels are taken to be of; common practice, no source.
inline constexpr double kSteelDensity = 7850;

/// Normal pressure angle [rad]; 20 deg where it is not given (ISO 53).
double normalPressureAngle(const Toothing& toothing);

/// Transverse pressure angle [rad], tan a_t = tan a_n / cos beta; ISO 21771, from memory.
double transversePressureAngle(const Toothing& toothing, double helixAngle);

/// Least teeth of a wheel with outside teeth, full depth and no profile shift, that a rack does not
/// undercut: 2 cos beta / sin² a_t, not rounded (17.097 for 20 deg, spur); ISO 21771, from memory.
double leastTeeth(const Toothing& toothing, double helixAngle = 0);

/// Two wheels with outside teeth in mesh.
struct ExternalMesh {
  double firstTeeth = kUnset;
  double secondTeeth = kUnset;
  double helixAngle = 0;  ///< [rad]
};

/// Hertz pressure [Pa] on the flanks at the pitch point for a torque [N·m] on the first wheel,
/// carried by one pair of teeth on the whole face width: Z_H Z_E sqrt(F_t/(d1 b) (u + 1)/u) of
/// ISO 6336-2 with all further factors 1 (from memory). NaN where something is not given.
double flankPressure(const ExternalMesh& mesh, const Toothing& toothing,
                     const ContactMaterial& material, double firstTorque);

/// Inertia [kg·m²] about its own axis of a full steel wheel of this pitch diameter and width [m],
/// without bore, shaft and hub: pi/32 rho b d^4.
double wheelInertia(double pitchDiameter, double faceWidth);

/// Its mass [kg].
double wheelMass(double pitchDiameter, double faceWidth);

}  // namespace jw

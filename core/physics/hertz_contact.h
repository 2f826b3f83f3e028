#pragma once

#include "core/model/stage_geometry.h"

namespace jw {

// Elastic contact of two cylinders along a line. Hertz; relations as restated by the Medusa project
// wiki, "Hertzian contact" (its half width has 2 under the root where 4 is right). Valid while the
// contact is narrow against both radii and nothing yields.

/// Two surfaces of a stage in rolling contact.
struct ContactSurfaces {
  double reducedModulus = kUnset;   ///< [Pa] E*
  double allowedPressure = kUnset;  ///< [Pa] NaN where none is given
};

/// [Pa] E* = 1 / ((1 - nu1²)/E1 + (1 - nu2²)/E2); moduli [Pa] above 0.
double reducedModulus(double e1, double nu1, double e2, double nu2);

/// Modulus of both bodies, 206 GPa and 0.3 (steel; common practice, no source) where unset.
ContactSurfaces contactSurfaces(const ContactMaterial& material);

/// [m] 1/R = 1/r1 + 1/r2; a negative radius is concave, an infinite one flat. Infinite where both
/// surfaces fit exactly, negative (no such contact) where the hollow is the tighter one.
double relativeRadius(double r1, double r2);

/// [Pa] largest pressure p0 = sqrt(F E* / (pi L R)), F >= 0 [N], L and R above 0 [m], E* [Pa].
double lineContactPressure(double force, double length, double relativeRadius,
                           double reducedModulus);

/// [m] b = sqrt(4 F R / (pi L E*)), half the width of the contact; arguments as above.
double lineContactHalfWidth(double force, double length, double relativeRadius,
                            double reducedModulus);

}  // namespace jw

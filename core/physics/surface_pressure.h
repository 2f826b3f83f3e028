#pragma once

#include "core/model/stage_geometry.h"

namespace jw {

/// Reduced modulus [Pa] of two bodies of the same material, E* = E / (2 (1 - nu²)); Hertz. Unset
/// fields mean steel, 206 GPa and 0.3.
double reducedModulus(const ContactMaterial& material);

/// Largest Hertz pressure [Pa] of a line contact between bodies of the same material: `force` [N]
/// over `length` [m], `relativeRadius` [m] = 1/(1/R1 + 1/R2). NaN where something is not given.
double linePressure(double force, double length, double relativeRadius,
                    const ContactMaterial& material);

}  // namespace jw

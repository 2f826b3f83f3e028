#pragma once

#include <optional>

#include "core/model/unset.h"

namespace jw {

/// Speeds of two coaxial central gears and of the carrier between them, in any one unit.
struct EpicyclicSpeeds {
  double first = kUnset;
  double second = kUnset;
  double carrier = kUnset;
};

/// Torques [N·m] that act on them from outside; their sum is 0.
struct EpicyclicTorques {
  double first = 0;
  double second = 0;
  double carrier = 0;
};

/// The speeds with the one that is unset filled in, from (w1 - wc) = i0 (w2 - wc); R. Willis,
/// Principles of Mechanism. `basicRatio` i0 = w1/w2 with the carrier at rest, signed: -z_r/z_s for
/// sun, simple planets and ring. Nothing unless exactly one is unset, or where the other two do not
/// settle it.
std::optional<EpicyclicSpeeds> willisSpeeds(double basicRatio, EpicyclicSpeeds known);

/// Torques for a torque [N·m] on the first gear: T2 = -i0 eta0^w T1, Tc = -(T1 + T2), with w = +1
/// where the rolling power T1 (w1 - wc) flows from the first gear to the second and -1 where it
/// flows back. `basicEfficiency` eta0 is that with the carrier at rest, 0 to 1. VDI 2157, from
/// memory.
EpicyclicTorques willisTorques(double basicRatio, double basicEfficiency, double firstTorque,
                               const EpicyclicSpeeds& speeds);

}  // namespace jw

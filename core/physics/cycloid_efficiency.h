#pragma once

#include <optional>

#include "core/model/stage_geometry.h"

namespace jw {

/// Load-dependent efficiency of a cycloidal stage from its friction.
struct CycloidEfficiency {
  double driving = 0;      ///< 0 where it jams
  double backdriving = 0;  ///< 0 where it locks itself
  // Where the input power goes while driving; all three make up 1 - driving. 0 where it jams.
  double pinShare = 0;        ///< sliding at the ring pins
  double outputPinShare = 0;  ///< sliding at the output pins
  double bearingShare = 0;    ///< the eccentric's bearing
};

/// Mean over a turn of the crank at constant output torque; the torque's size does not matter. 90
/// angles left it at most 6e-5 off at 12 and at 40 pins (measured against 3600).
/// Contacts push in proportion to their lever, as without friction; Coulomb friction at each lies
/// against its sliding; the disc's balance of forces and moments, friction included, then gives the
/// loads of the other contacts, the bearing and the crank. Sliding: ring pins |R D - r| times the
/// relative speed of disc and ring, output pins e times that of crank and disc, bearing likewise at
/// its radius. Rollers on pins count by a coefficient that much lower. Churning and seals are drag,
/// not counted here. None without a disc, three output pins, or a friction; the bearing's radius
/// may be left out where its friction is 0.
std::optional<CycloidEfficiency> cycloidEfficiency(const CycloidGeometry& geometry,
                                                   int angles = 90);

}  // namespace jw

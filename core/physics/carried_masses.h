#pragma once

#include <Eigen/Core>

#include "core/model/cycle.h"
#include "core/model/load.h"

namespace jw {

/// Sums over all that the joint carries, in the link's own axes: x along the link at joint angle 0,
/// y towards positive turning, z along the joint axis from the output bearing's middle. Link and
/// payload stand at z = overhang; the masses listed where they say.
struct CarriedMasses {
  double mass = 0;     ///< [kg] sum of m
  double x = 0;        ///< [kg·m] sum of m x
  double y = 0;        ///< [kg·m] sum of m y
  double z = 0;        ///< [kg·m] sum of m z
  double xz = 0;       ///< [kg·m²] sum of m x z
  double yz = 0;       ///< [kg·m²] sum of m y z
  double inertia = 0;  ///< [kg·m²] about the joint axis, sum of J + m r²

  /// Adds a body of `m` [kg] with inertia `own` [kg·m²] about its centre of mass.
  void add(double m, const Eigen::Vector3d& centre, double own);
};

/// Link, payload of `payloadMass` [kg] and masses listed. The link counts with its inertia about
/// the axis as given, none if it is not; a payload of no mass has no inertia of its own either.
CarriedMasses carriedMasses(const Load& load, double payloadMass);

/// [m/s²] gravity in the joint's frame at angle 0: the typed direction, at any length, or
/// g (0, -cos(tilt), -sin(tilt)). None if the direction has no length.
Eigen::Vector3d gravityVector(const Load& load);

/// [kg] payload of a segment: its own if set, else the load's.
double payloadOf(const Load& load, const Segment& segment);

}  // namespace jw

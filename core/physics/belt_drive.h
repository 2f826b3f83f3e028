#pragma once

#include <optional>

#include "core/model/stage_geometry.h"
#include "core/physics/geometry_condition.h"

namespace jw {

// Two toothed pulleys and an open belt. The output turns with the input. What is not given, or
// pulleys that overlap at this centre distance so far that no belt goes round, yields nothing.
// Geometry of the open belt: any textbook of machine elements, from memory.

/// Ratio z_2/z_1.
std::optional<double> beltRatio(const BeltGeometry& belt);

/// Pitch diameter [m] of a pulley, p z/pi; ISO 5294, from memory. NaN where not given.
double pulleyDiameter(const BeltGeometry& belt, double teeth);

/// The open belt on its pulleys.
struct BeltRun {
  double motorDiameter = 0;  ///< [m] pitch circle
  double jointDiameter = 0;  ///< [m] pitch circle
  double spanAngle = 0;      ///< [rad] of a span to the line of centres, asin(|d2 - d1|/(2a))
  double freeLength = 0;     ///< [m] of a span, a cos(span angle)
  double smallWrap = 0;      ///< [rad] on the smaller pulley, pi - 2 span angle
  double largeWrap = 0;      ///< [rad] on the larger, pi + 2 span angle
  double teethInMesh = 0;    ///< on the smaller pulley, z wrap/(2 pi)
  double length = 0;         ///< [m] of the belt at its pitch line
};

std::optional<BeltRun> beltRun(const BeltGeometry& belt);

/// The belt that can be bought: a whole number of teeth.
struct BeltLength {
  double teeth = 0;           ///< length over pitch at the given centre distance
  double wholeTeeth = 0;      ///< nearest whole number
  double centreDistance = 0;  ///< [m] that goes with it
};

std::optional<BeltLength> nearestBelt(const BeltGeometry& belt);

/// Stiffness with the other pulley held: k_span = c_b/L of each span, k_span r² about an axis.
struct BeltStiffness {
  double span = 0;        ///< [N/m]
  double inputBoth = 0;   ///< [N·m/rad] at the motor's pulley while both spans are tight
  double outputBoth = 0;  ///< [N·m/rad] at the joint's pulley while both spans are tight
  double inputOne = 0;    ///< [N·m/rad] after the slack span has gone slack
  double outputOne = 0;   ///< [N·m/rad]
};

std::optional<BeltStiffness> beltStiffness(const BeltGeometry& belt);

/// Output torque [N·m] at which the slack span goes slack, 2 F_0 r: each span takes half the pull.
std::optional<double> slackTorque(const BeltGeometry& belt);

/// Tensions [N] of the spans and what they pull the shafts with.
struct BeltForces {
  double tight = 0;
  double slack = 0;
  double shaft = 0;  ///< vector sum, sqrt(F1² + F2² + 2 F1 F2 cos(2 span angle))
};

/// Forces for an output torque [N·m] at a fixed centre distance: F_0 +- half the pull; beyond the
/// slack torque the tight span carries the whole pull. Belt's weight and speed not counted.
std::optional<BeltForces> beltForces(const BeltGeometry& belt, double outputTorque);

/// Pulleys clear each other, enough teeth in mesh on the smaller one, and for an output torque
/// [N·m] (may be unset) a pretension of at least half the pull, that no span goes slack.
GeometryConditions beltConditions(const BeltGeometry& belt, double outputTorque);

}  // namespace jw

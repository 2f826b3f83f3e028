#pragma once

#include <optional>

#include <Eigen/Core>

#include "core/model/stage_geometry.h"
#include "core/physics/geometry_condition.h"

namespace jw {

// Disc of a cycloidal stage: the parallel curve, one pin radius inside, of the path that the pins'
// centres take about the disc. With N pins, pin circle R and eccentricity e that path is
// c(t) = R exp(i t) - e exp(i N t), in the plane of complex numbers; it has N - 1 lobes. Equations
// as in the University of Waterloo student robotics team's design journal (there mirrored).

/// A disc of one lobe less than there are pins.
struct CycloidShape {
  int pins = 0;
  double pinCircleRadius = 0;  ///< [m] R
  double pinRadius = 0;        ///< [m]
  double eccentricity = 0;     ///< [m] e

  int lobes() const { return pins - 1; }
  /// K = e N / R; below 1 the profile has no cusp.
  double shortening() const { return eccentricity * pins / pinCircleRadius; }
};

/// None if a value is not given or not above 0, if the lobes are not one less than the pins, or if
/// K >= 1 (cycloidConditions says so).
std::optional<CycloidShape> cycloidShape(const CycloidGeometry& geometry);

struct CycloidRatio {
  double ratio = 1;  ///< input over output speed, above 0
  bool reverses = false;
};

/// Ring pins held: lobes/(pins - lobes), reversed. Output pins held: pins/(pins - lobes). (Willis
/// with the disc as planet in a ring of pins.) None if the pins are not given or not more than the
/// lobes.
std::optional<CycloidRatio> cycloidRatio(const CycloidGeometry& geometry);

/// [m] radius of curvature of the path of the pins' centres at t [rad]: above 0 where the disc is
/// convex. R (1 - 2 K cos s + K²)^(3/2) / (1 - (N + 1) K cos s + N K²), s = (N - 1) t. Infinite at
/// an inflection.
double pinPathRadius(const CycloidShape& shape, double t);

/// [m] the least convex one: R sqrt(27 (1 - K²) (N - 1) / (N + 1)³) while (N - 2)/(2N - 1) < K < 1,
/// else R (1 + K)²/(1 + N K) at the tip of the lobe. Pins must stay below it, or the
/// profile is undercut. (First form from memory, both checked by brute force.)
double leastConvexRadius(const CycloidShape& shape);

/// The profile in the disc's own axes, counter-clockwise from a valley, the first point once more
/// at the end.
struct CycloidProfile {
  Eigen::ArrayXd x, y;              ///< [m]
  Eigen::ArrayXd normalX, normalY;  ///< unit, out of the disc
  Eigen::ArrayXd radius;            ///< [m] of curvature, below 0 where hollow
};

CycloidProfile cycloidProfile(const CycloidShape& shape, int pointsPerLobe = 60);

/// Where the disc is when the crank is at `crankAngle` [rad], in axes fixed to the ring pins, pin j
/// at the angle 2 pi j / N.
struct DiscPose {
  double x = 0, y = 0;  ///< [m] centre
  double turn = 0;      ///< [rad] of the disc, -crankAngle / (N - 1)
};

DiscPose discPose(const CycloidShape& shape, double crankAngle);

/// What can be built: one lobe less than pins, no cusp, no undercut, pins and holes clear. Those
/// whose values are not given are left out.
GeometryConditions cycloidConditions(const CycloidGeometry& geometry);

}  // namespace jw

#pragma once

#include <cmath>
#include <numbers>
#include <optional>
#include <vector>

#include <Eigen/Core>

#include "core/physics/cycloid_forces.h"

namespace jw {

/// A cycloidal stage whose disc is known, for the forces and losses of its parts.
struct CycloidDrive {
  CycloidShape shape;
  CycloidHeld held = CycloidHeld::Pins;
  int discs = 2;
  int outputPins = 0;                                     ///< 0 where they are not all given
  double outputPinCircleRadius = 0, outputPinRadius = 0;  ///< [m]
  double discWidth = kUnset;                              ///< [m]
  std::vector<Eigen::Vector2d> pinDirections;             ///< from the ring's centre, unit
  std::vector<Eigen::Vector2d> outputPinDirections;       ///< likewise, the crank at 0

  /// [N·m] moment of the ring pins about one disc's centre under the stage's output torque. With
  /// the ring as the output the pins' normals pass e N from its centre, e (N - 1) from the disc's.
  double discTorque(double outputTorque) const {
    const double share = outputTorque / discs;
    return held == CycloidHeld::Pins ? share : share * shape.lobes() / shape.pins;
  }
  /// [rad] of output pin k in the ring's axes.
  double outputPinAngle(double crankAngle, Eigen::Index k) const {
    return 2 * std::numbers::pi * static_cast<double>(k) / outputPins - crankAngle / shape.lobes();
  }
  PinContact ringPin(const Eigen::Vector2d& crank, Eigen::Index j) const;
};

/// None without a disc.
std::optional<CycloidDrive> cycloidDrive(const CycloidGeometry& geometry);

/// pinContact with both directions as unit vectors.
PinContact pinContactOf(const CycloidShape& shape, const Eigen::Vector2d& crank,
                        const Eigen::Vector2d& pin);

}  // namespace jw

#pragma once

#include <optional>

#include <Eigen/Core>

#include "core/physics/cycloid_profile.h"

namespace jw {

// Forces on the discs of a cycloidal stage, in axes fixed to the ring pins: ring pin j at the angle
// 2 pi j / N, output pin k at 2 pi k / n_o - crank angle / (N - 1). The crank turns
// counter-clockwise and drives.

/// One ring pin against the disc.
struct PinContact {
  double normalX = 0, normalY = 0;  ///< unit, out of the disc; the pin pushes against it
  double lever = 0;   ///< [m] moment about the disc's centre per newton, counter-clockwise
  double reach = 0;   ///< [m] from the pitch point, where every normal meets, to the contact
  double radius = 0;  ///< [m] relative radius of curvature; not above 0 where undercut
};

/// Contact of the pin at the angle `pinAngle` [rad] about the ring's centre. With s = crank angle -
/// pin angle and D² = 1 - 2 K cos s + K²: lever e (N - 1) sin s / D, reach R D - pin radius.
PinContact pinContact(const CycloidShape& shape, double crankAngle, double pinAngle);

/// [N] 4 M / (K R (N - 1)), largest ring pin force under the moment `discTorque` [N·m], many pins
/// (standard in the literature, cf. Malhotra and Parameswaran 1983; from memory).
double largestPinForceEstimate(const CycloidShape& shape, double discTorque);

/// Contact forces over one turn of the crank, without friction. Discs share the torque evenly; each
/// is rigid with elastic contacts that yield in proportion to their lever, and only those that push
/// count: F_j = M l_j / sum(l²) at ring pins, M sin / (R_o sum(sin²)) at output pins. One column
/// per angle, pins in rows, of the first disc.
struct CycloidForces {
  Eigen::ArrayXd crankAngle;       ///< [rad]
  Eigen::ArrayXXd pinForce;        ///< [N]
  Eigen::ArrayXXd pinPressure;     ///< [Pa] empty without a disc width, or undercut
  Eigen::ArrayXXd outputPinForce;  ///< [N] no rows without (three) output pins
  double discTorque = 0;           ///< [N·m] of the ring pins about the disc's centre

  // Empty without output pins.
  Eigen::ArrayXd bearingX, bearingY;  ///< [N] of the eccentric's bearing on the first disc
  Eigen::ArrayXd shaftX, shaftY;      ///< [N] of all discs on the crank; 0 where they balance
  Eigen::ArrayXd crankTorque;         ///< [N·m] that drives the crank

  double largestPinForce = 0;                ///< [N]
  double largestPinPressure = kUnset;        ///< [Pa]
  double largestOutputPinForce = kUnset;     ///< [N]
  double largestOutputPinPressure = kUnset;  ///< [Pa] pin in its hole of pin radius + e
  double largestBearingForce = kUnset;       ///< [N]
  double largestShaftForce = kUnset;         ///< [N]
};

/// At `angles` crank angles, under `outputTorque` [N·m] of the stage, its size alone. None without
/// a disc (cycloidShape) or torque. Pressures by Hertz for line contact of the disc's width.
std::optional<CycloidForces> cycloidForces(const CycloidGeometry& geometry,
                                           const ContactMaterial& contact, double outputTorque,
                                           int angles = 360);

/// Hertz pressures against the pressure allowed; empty where either is not known.
GeometryConditions cycloidPressureConditions(const CycloidForces& forces,
                                             const ContactMaterial& contact);

}  // namespace jw

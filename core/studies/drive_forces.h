#pragma once

#include <vector>

#include <Eigen/Core>

#include "core/model/stage.h"

namespace jw {

/// A force on a part of a drawing, in the plane of driveShapes.
struct DriveForce {
  Eigen::Vector2d at{0, 0};     ///< [m] where it acts
  Eigen::Vector2d force{0, 0};  ///< [N]
};

/// The forces on the front disc of a cycloidal stage.
struct DriveForces {
  std::vector<DriveForce> pins;        ///< one for each ring pin, 0 where it does not push
  std::vector<DriveForce> outputPins;  ///< one for each output pin; empty if they are not given
  DriveForce bearing;                  ///< of the eccentric, balances the others; 0 without them
  double largestPinForce = 0;          ///< [N]
};

/// Forces with the input at `inputAngle` [rad] under `outputTorque` [N·m] of the stage (its size
/// alone), as in core/physics/cycloid_forces.h. `clockwise` says which way the input pushes; then
/// the picture is that of the mirror. Without pins for any other family or a disc unknown.
DriveForces driveForces(const Stage& stage, double inputAngle, double outputTorque,
                        bool clockwise = false);

}  // namespace jw

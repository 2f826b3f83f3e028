#pragma once

#include "core/studies/drive_shapes.h"

namespace jw::drive {

/// Teeth of the basic rack of ISO 53, in the plane across the axis.
struct ToothForm {
  double teeth = 20;
  double module = 1e-3;                   ///< [m] transverse
  double pressureAngle = 0.349065850398;  ///< [rad] transverse
  double addendum = 1;                    ///< in modules
  double dedendum = 1.25;                 ///< in modules
  double play = 0.04;                     ///< taken off each tooth's thickness, in modules

  double pitchRadius() const { return module * teeth / 2; }
};

/// Outline of an external gear, closed, a tooth's middle at angle 0. Flanks are involutes, the root
/// is the path of the rack's sharp corner, undercut included: with u² = r² - r_f²,
/// half the gap = atan(u/r_f) - (u - w)/r_p (kinematics of the rolling rack). Teeth of few numbers
/// end where they come to a point.
Outline externalTeeth(const ToothForm& form);

/// Outline of the teeth of an internal gear, closed, a tooth's middle at angle 0: the involute of
/// the same number of external teeth is its gap. Tips end at the base circle at the least.
Outline internalTeeth(const ToothForm& form);

/// Radius [m] of the root circle of an internal gear.
double internalRootRadius(const ToothForm& form);

/// Radius [m] of the root circle of an external gear.
double externalRootRadius(const ToothForm& form);

/// An external gear as a body: teeth, bore and a mark along the radius.
DriveBody gearBody(const ToothForm& form, DriveRole role, const DriveMotion& motion,
                   double boreShare = 0.3);

}  // namespace jw::drive

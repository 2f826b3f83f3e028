#pragma once

#include "core/model/as_written.h"
#include "core/model/unset.h"

namespace jw {

/// What keeps the joint in place with the power off.
enum class HoldingMeans { Brake, Motor, NotNeeded };

/// What the joint moves. Angle 0 is the link lying horizontal; positive lifts.
struct Load {
  double inertia = kUnset;     ///< [kg·m²] of the link about the joint axis
  double linkMass = 0;         ///< [kg]
  double linkDistance = 0;     ///< [m] axis to the link's centre of mass
  double linkAngle = 0;        ///< [rad] of the link's centre of mass against the joint angle
  double payloadMass = 0;      ///< [kg]
  double payloadDistance = 0;  ///< [m] axis to the payload's centre of mass
  double payloadAngle = 0;     ///< [rad] of the payload against the joint angle
  double payloadInertia = 0;   ///< [kg·m²] of the payload about its own centre of mass
  double axisTilt = 0;         ///< [rad] 0 = axis horizontal (full gravity), 90° = vertical (none)
  double gravity = 9.80665;    ///< [m/s²]
  double coulombFriction = 0;  ///< [N·m]
  double viscousFriction = 0;  ///< [N·m·s/rad]
  double springStiffness = 0;  ///< [N·m/rad] counterbalance torsion spring
  double springAngle = 0;      ///< [rad] joint angle at which the spring is slack
  double balanceTorque = 0;    ///< [N·m] constant counterbalance, positive helps lifting
  double externalTorque = 0;   ///< [N·m] constant, positive opposes positive motion
  double overhang = 0;         ///< [m] output bearing to the masses, along the axis
  double radialForce = 0;      ///< [N] of the process on the output bearing
  double axialForce = 0;       ///< [N] likewise, along the axis
  double tiltingMoment = 0;    ///< [N·m] likewise, across the axis
  AsWritten asWritten;
};

}  // namespace jw

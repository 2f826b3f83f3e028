#pragma once

#include <string>
#include <vector>

#include "core/model/as_written.h"
#include "core/model/unset.h"

namespace jw {

/// What keeps the joint in place with the power off.
enum class HoldingMeans { Brake, Motor, NotNeeded };

/// How the direction of gravity is stated.
enum class Mounting {
  Tilt,      ///< by the tilt of the axis against the horizontal; angle 0 lies horizontal
  Direction  ///< by a vector in the joint's frame, for any mounting
};

/// What the torque of the external table runs over.
enum class ExternalOver { None, Time, Angle };

/// One more body that the joint carries, in the joint's frame at angle 0: x along the link, y
/// towards positive turning, z along the axis.
struct LoadMass {
  std::string name;
  double mass = kUnset;  ///< [kg]
  double x = 0;          ///< [m] centre of mass
  double y = 0;          ///< [m]
  double z = 0;          ///< [m] from the output bearing's middle, along the axis
  double inertia = 0;    ///< [kg·m²] about its own centre of mass, parallel to the joint axis
  AsWritten asWritten;
};

/// What the joint moves. Angle 0 is the link lying horizontal; positive lifts.
struct Load {
  double inertia = kUnset;     ///< [kg·m²] of the link about the joint axis; unset = masses alone
  double linkMass = 0;         ///< [kg]
  double linkDistance = 0;     ///< [m] axis to the link's centre of mass
  double linkAngle = 0;        ///< [rad] of the link's centre of mass against the joint angle
  double payloadMass = 0;      ///< [kg]
  double payloadDistance = 0;  ///< [m] axis to the payload's centre of mass
  double payloadAngle = 0;     ///< [rad] of the payload against the joint angle
  double payloadInertia = 0;   ///< [kg·m²] of the payload about its own centre of mass
  double axisTilt = 0;         ///< [rad] 0 = axis horizontal (full gravity), 90° = vertical (none)
  Mounting mounting = Mounting::Tilt;
  double downX = 0;            ///< direction of gravity in the joint's frame at angle 0; any length
  double downY = -1;           ///< likewise
  double downZ = 0;            ///< likewise, along the axis
  double gravity = 9.80665;    ///< [m/s²]
  double coulombFriction = 0;  ///< [N·m]
  double viscousFriction = 0;  ///< [N·m·s/rad]
  double breakawayFriction =
      kUnset;                     ///< [N·m] at rest, for the Stribeck curve; unset = dry friction
  double stribeckSpeed = kUnset;  ///< [rad/s] over which friction falls from it
  double springStiffness = 0;     ///< [N·m/rad] counterbalance torsion spring
  double springAngle = 0;         ///< [rad] joint angle at which the spring is slack
  double balanceTorque = 0;       ///< [N·m] constant counterbalance, positive helps lifting
  double extensionRate = 0;       ///< [N/m] counterbalance extension spring
  double extensionFreeLength = kUnset;  ///< [m] between its eyes when slack
  double extensionPreload = 0;          ///< [N] wound in: force at which it begins to stretch
  double extensionArm = kUnset;         ///< [m] joint axis to the eye on the link
  double extensionArmAngle = 0;         ///< [rad] of that eye at joint angle 0
  double extensionPost = kUnset;        ///< [m] joint axis to the fixed eye
  double extensionPostAngle = 1.5707963267948966;  ///< [rad] of the fixed eye
  ExternalOver externalOver = ExternalOver::None;
  std::string externalTable = {};     ///< times or angles and torques, added to externalTorque
  double stopLow = kUnset;            ///< [rad] lower end stop
  double stopHigh = kUnset;           ///< [rad] upper end stop
  double stopStiffness = kUnset;      ///< [N·m/rad] of a stop
  double externalTorque = 0;          ///< [N·m] constant, positive opposes positive motion
  double overhang = 0;                ///< [m] output bearing to the masses, along the axis
  double radialForce = 0;             ///< [N] of the process on the output bearing
  double axialForce = 0;              ///< [N] likewise, along the axis
  double tiltingMoment = 0;           ///< [N·m] likewise, across the axis
  std::vector<LoadMass> masses = {};  ///< beside link and payload, with inertia of their own
  AsWritten asWritten;
};

}  // namespace jw

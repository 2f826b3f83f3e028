#pragma once

namespace jw {

/// An emergency stop under steady torques, everything seen at the joint.
struct StopCase {
  double inertia = 0;  ///< [kg·m²] of all that turns
  double speed = 0;    ///< [rad/s] when the stop is asked for, >= 0
  double driving = 0;  ///< [N·m] that drives the joint on, as gravity does; >= 0
  double braking = 0;  ///< [N·m] against the motion
  double delay = 0;    ///< [s] in which nothing brakes
};

/// What comes of it. Time, angle and energy are +inf where the braking torque does not exceed what
/// drives the joint on.
struct Stop {
  double time = 0;          ///< [s] until rest
  double angle = 0;         ///< [rad] until rest
  double speed = 0;         ///< [rad/s] highest, when braking begins
  double deceleration = 0;  ///< [rad/s²] while braking
  double energy = 0;        ///< [J] that the braking torque takes up
};

/// Two stretches of steady acceleration: a = T_d / J for the delay, then -(T_b - T_d) / J. Newton's
/// second law about a fixed axis; the energy is T_b times the angle braked, which is J w²/2 plus
/// the work of what drives on. Inertia above 0; nothing at rest with nothing driving takes no time.
Stop stopUnderSteadyTorques(const StopCase& about);

}  // namespace jw

#pragma once

#include <complex>

namespace jw {

/// Motor side and load, joined by a spring with damping; everything seen at the joint.
struct TwoMass {
  double motor = 0;      ///< [kg·m²] motor side, N² (J_m + J_b + ...)
  double load = 0;       ///< [kg·m²]
  double stiffness = 0;  ///< [N·m/rad]
  double damping = 0;    ///< [N·m·s/rad] of the spring

  /// [rad/s] sqrt(K / J_L): the load swings, the motor is locked; antiresonance at the motor.
  double locked() const;
  /// [rad/s] sqrt(K (1/J_L + 1/J_M)): both swing against each other.
  double free() const;
  /// Speed of the motor side over the torque on it, 1/(N·m·s), at `frequency` [rad/s] above 0.
  std::complex<double> motorSpeedPerTorque(double frequency) const;
  /// Speed of the load over the torque on the motor side, not collocated.
  std::complex<double> loadSpeedPerTorque(double frequency) const;
};

/// [N·m] largest torque in the spring when the motor side, turning at `speed` [rad/s], is caught by
/// a locked load: its kinetic energy J w²/2 becomes T²/(2 K), so T = w sqrt(J K). Energy balance of
/// an elastic impact; damping and play left out.
double torqueOfImpact(double speed, double inertia, double stiffness);

}  // namespace jw

#pragma once

#include <cmath>
#include <limits>
#include <optional>

#include "core/physics/sagging_voltage.h"

namespace jw {

/// Currents in the rotor frame [A], amplitude-invariant: d along the magnet, q across it.
struct DqCurrent {
  double d = 0;
  double q = 0;
  double amplitude() const { return std::sqrt(d * d + q * q); }  // hypot takes far longer
};

/// A three-phase permanent-magnet machine in the rotor frame, per phase of the equivalent star.
/// v_d = R i_d - w_e L_q i_q, v_q = R i_q + w_e (L_d i_d + lambda), w_e = p w,
/// T = 1.5 p (lambda + (L_d - L_q) i_d) i_q
/// (Krause, Wasynczuk and Sudhoff, Analysis of Electric Machinery; from memory).
struct DqMachine {
  int polePairs = 1;
  double fluxLinkage = 0;  ///< [Wb] peak, > 0
  double resistance = 0;   ///< [Ohm] >= 0
  double inductanceD = 0;  ///< [H] >= 0
  double inductanceQ = 0;  ///< [H] >= 0

  bool salient() const { return inductanceD != inductanceQ; }
  double torque(const DqCurrent& i) const;                 ///< [N·m]
  double voltage(const DqCurrent& i, double speed) const;  ///< [V] amplitude of a phase
  /// [A] i_d that cancels the magnet: lambda / L_d; +inf without inductance.
  double characteristicCurrent() const;

  /// Most torque per ampere at this amplitude [A]:
  /// i_d = (lambda - sqrt(lambda² + 8 (L_q - L_d)² I²)) / (4 (L_q - L_d)); q of the sign of the
  /// torque.
  DqCurrent mostTorquePerAmp(double amplitude) const;
  /// Least current that makes `torque` [N·m].
  DqCurrent leastCurrent(double torque) const;

  /// Currents with the largest torque at `speed` [rad/s] (either sign) that stay within `voltage`
  /// and `current`; torque is positive. Empty if no current at all fits the voltage. Equal
  /// inductances: closed form of two circles; else most torque per ampere, the point where both
  /// limits meet, or most torque per volt.
  std::optional<DqCurrent> strongest(double speed, double voltage, double current) const;

  /// Least current that makes `torque` at `speed` within `voltage`, weakening the field if needed;
  /// empty if the voltage does not allow it.
  std::optional<DqCurrent> operatingPoint(double speed, double torque, double voltage) const;
  /// The same within the voltage that these currents leave of a sagging bus: the higher of the bus
  /// voltages that solve both equations.
  /// Empty too if the source cannot give the power.
  std::optional<DqCurrent> operatingPoint(double speed, double torque,
                                          const SaggingVoltage& source) const;
};

}  // namespace jw

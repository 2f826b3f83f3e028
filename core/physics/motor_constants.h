#pragma once

#include <vector>

#include <tl/expected.hpp>

#include "core/model/motor.h"
#include "core/physics/dq_machine.h"
#include "core/quantity/quantity.h"

namespace jw {

/// The motor in canonical form, per phase of the equivalent star, at one temperature of winding
/// and magnet. `i` is the phase-current amplitude; for brushed and block-commutated machines it is
/// the direct current and the machine is V = R i + K_e w (two phases in series).
struct MotorConstants {
  bool direct = false;  ///< brushed or block-commutated: one direct current
  int polePairs = 1;
  double torquePerAmp = 0;  ///< [N·m/A] per ampere of amplitude: 1.5 p lambda, or K_t
  double emfPerSpeed = 0;   ///< [V·s/rad] phase amplitude: p lambda, or K_e
  double resistance = 0;    ///< [Ohm] per star phase, or of the loop
  double inductance = 0;    ///< [H] per star phase, d axis; 0 for direct current
  double inductanceQ = 0;   ///< [H] per star phase, q axis
  double dragTorque = 0;    ///< [N·m]
  double dragDamping = 0;   ///< [N·m·s/rad]

  double fluxLinkage() const { return emfPerSpeed / polePairs; }  ///< [Wb] peak
  double rmsFactor() const {
    return direct ? 1.0 : 0.70710678118654752440;
  }                                                                      ///< rms over amplitude
  double torquePerRmsAmp() const { return torquePerAmp / rmsFactor(); }  ///< [N·m/A]
  double copperLoss(double i) const { return (direct ? 1.0 : 1.5) * resistance * i * i; }  ///< [W]
  /// The machine in the rotor frame; not for direct current.
  DqMachine dq() const { return {polePairs, fluxLinkage(), resistance, inductance, inductanceQ}; }
  double torque(const DqCurrent& i) const;                 ///< [N·m] in the air gap
  double voltage(const DqCurrent& i, double speed) const;  ///< [V] amplitude, or direct
  /// [N·m] no-load torque that opposes `speed` [rad/s], signed like it; 0 at rest.
  double drag(double speed) const;
};

/// What a data sheet says twice and differently.
struct Contradiction {
  InputError text;
};

struct MotorConversion {
  MotorConstants constants;                ///< at Motor::referenceTemperature
  std::vector<InputError> contradictions;  ///< both numbers in each
};

/// Converts data-sheet figures to canonical form. The torque constant wins over the back-EMF
/// constant, that over the speed constant, that over the flux linkage; figures that differ from the
/// one used by more than 3 % are reported. Fails naming the field if no constant, no resistance or
/// no inductance needed is given.
/// Relations: K_t = 1.5 p lambda per ampere of amplitude; K_e line-line peak = sqrt(3) p lambda;
/// delta of elements R, L, lambda = star of R/3, L/3, lambda/sqrt(3) (Krause, Wasynczuk, Sudhoff,
/// Analysis of Electric Machinery, permanent-magnet ac machine; from memory).
tl::expected<MotorConversion, InputError> convertMotor(const Motor& motor);

/// The same machine with winding and magnet at other temperatures [°C]:
/// R = R_ref (1 + a (T - 20)) / (1 + a (T_ref - 20)), lambda likewise with the magnet coefficient.
MotorConstants atTemperature(const MotorConstants& constants, const Motor& motor, double winding,
                             double magnet);

/// A current as this machine's amplitude [A], given in the measure of its data sheet.
double amplitudeOf(const MotorConstants& constants, double current, CurrentMeasure measure);

}  // namespace jw

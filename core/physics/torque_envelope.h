#pragma once

#include <optional>

#include <Eigen/Core>
#include <tl/expected.hpp>

#include "core/model/project.h"
#include "core/physics/motor_constants.h"

namespace jw {

/// The limits that make the envelope.
struct EnvelopeLimits {
  MotorConstants machine;  ///< at the temperature in use
  double voltage = 0;      ///< [V] largest voltage amplitude: of a phase, or direct
  double current = 0;      ///< [A] largest amplitude; +inf if neither motor nor controller limits
  double speed = 0;        ///< [rad/s] largest speed: mechanical limit and no-load speed
  double noLoadSpeed = 0;  ///< [rad/s] where the voltage leaves no shaft torque; +inf if never
  bool weakening = false;  ///< the controller weakens the field; else i_d = 0
  double busVoltage = 0;   ///< [V] at no load
  double sourceResistance = 0;  ///< [Ohm] the bus sags by it
  Controller controller;        ///< for its losses, which the bus feeds too; without its texts

  /// Largest current [A] that the voltage allows at `atSpeed` [rad/s] with i_d = 0; NaN if none.
  double voltageCurrent(double atSpeed) const { return currentUnder(voltage, atSpeed); }
  /// Voltage amplitude that the bus leaves to the machine while it gives `mechanicalPower` [W].
  SaggingVoltage source(double mechanicalPower) const;
  /// [V] voltage amplitude left when the controller draws for these currents, bus sag included;
  /// that of half the bus voltage where the source cannot give the power.
  double voltageUnder(const DqCurrent& i, double atSpeed) const;
  /// [W] drawn from the bus: machine and controller.
  double busPower(const DqCurrent& i, double atSpeed) const;
  /// Currents with the largest torque at `atSpeed` (either sign), the bus as far down as they pull
  /// it and no more power than its source resistance lets through; empty if no current fits.
  std::optional<DqCurrent> strongest(double atSpeed) const;
  /// Largest shaft torque [N·m] at `atSpeed` (either sign): voltage and current limit, less drag;
  /// NaN where no current fits the voltage.
  double highestTorque(double atSpeed) const;
  /// Smallest shaft torque: -highestTorque(-atSpeed).
  double lowestTorque(double atSpeed) const { return -highestTorque(-atSpeed); }
  /// Whether (atSpeed, torque) can be run, with no regard to heat.
  bool contains(double atSpeed, double torque) const;
  /// The factor by which (atSpeed, torque) can be scaled until it meets the edge; < 1 outside.
  double rayFactor(double atSpeed, double torque) const;
  /// Least currents [A] for a shaft torque [N·m] within the voltage that their own supply power
  /// leaves of the bus. Where voltage or source do not allow the torque, those that would be needed
  /// without that limit: such a point lies outside the envelope, and the checks say so.
  DqCurrent operatingPoint(double atSpeed, double torque) const;

 private:
  double currentUnder(double amplitude, double atSpeed) const;
  std::optional<DqCurrent> feasiblePoint(double atSpeed, double torque) const;
  std::optional<DqCurrent> mostFromSource(double atSpeed) const;
  std::optional<DqCurrent> strongestWeakened(double atSpeed, double stiff) const;
  double room(double atSpeed, double torque) const;
  std::optional<DqCurrent> strongestAt(double atSpeed, double amplitude, double most) const;
};

/// The lasting limit from steady heat: copper loss that holds the winding at its limit.
struct ContinuousLimit {
  MotorConstants machine;  ///< winding at its limit, magnet at its temperature when standing
  double housing = 0;      ///< [K/W] housing to ambient
  double winding = 0;      ///< [K/W] winding to housing
  double rise = 0;         ///< [K] winding limit less ambient
  double ambient = 0;      ///< [°C]

  /// Largest lasting current amplitude [A] at `speed`: P_cu (R12 + R2) + P_drag R2 = rise, with
  /// P_cu at the winding's limit temperature; 0 where drag alone is too hot.
  double current(double speed) const;
};

/// A closed loop in the speed-torque plane; equal sizes.
struct EnvelopeCurve {
  Eigen::ArrayXd speed;   ///< [rad/s]
  Eigen::ArrayXd torque;  ///< [N·m]
};

struct TorqueEnvelope {
  EnvelopeLimits limits;
  std::optional<ContinuousLimit> continuous;
  double continuousCurrent = 0;  ///< [A] amplitude the controller can last; +inf if not given
  double stallTorque = 0;        ///< [N·m] peak at standstill
  double cornerSpeed = 0;        ///< [rad/s] where the voltage begins to limit; 0 if it always does
  double noLoadSpeed = 0;  ///< [rad/s] where the voltage leaves no shaft torque; +inf if never
  EnvelopeCurve peak;
  EnvelopeCurve lasting;  ///< empty without a continuous limit
  EnvelopeLimits lowest;  ///< at the lowest bus voltage, which the verdicts count with
  EnvelopeCurve lowestPeak;

  /// Largest lasting shaft torque [N·m] at `speed` (either sign): heat, controller and voltage; 0
  /// where no lasting current reaches that speed; NaN without a continuous limit.
  double continuousTorque(double speed) const;
  /// The same with the peak torque [N·m] at `speed` known; needs a continuous limit.
  double lastingBelow(double highest, double speed) const;
};

/// Voltage amplitude that the controller can give from the bus: V/sqrt(3) space vector, V/2
/// sine-triangle, 2V/pi six-step; V for direct-current machines.
double voltageLimit(double busVoltage, Modulation modulation, bool direct);

/// Steady-heat limit of the motor, from its thermal resistances as mounted or its continuous
/// torque; the winding limit is derated for altitude. Fails naming the field that is missing.
tl::expected<ContinuousLimit, InputError> continuousLimit(const Motor& motor,
                                                          const MotorConstants& atReference,
                                                          const Requirements& requirements);

/// Limits of machine, controller and supply; the no-load speed among them.
EnvelopeLimits envelopeLimits(const Variant& variant, const MotorConstants& machine);

/// The envelope, i_d = 0 or with field weakening; `inUse` at the temperature in use. Fails naming
/// the field that is missing.
tl::expected<TorqueEnvelope, InputError> torqueEnvelope(
    const Variant& variant, const MotorConstants& inUse,
    const std::optional<ContinuousLimit>& continuous);

}  // namespace jw

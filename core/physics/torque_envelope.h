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

  /// Largest current [A] that the voltage allows at `atSpeed` [rad/s] with i_d = 0; NaN if none.
  double voltageCurrent(double atSpeed) const;
  /// Largest shaft torque [N·m] at `atSpeed` (either sign): the smaller of both limits, less drag.
  double highestTorque(double atSpeed) const;
  /// Smallest shaft torque: -highestTorque(-atSpeed).
  double lowestTorque(double atSpeed) const { return -highestTorque(-atSpeed); }
  /// Whether (atSpeed, torque) can be run, with no regard to heat.
  bool contains(double atSpeed, double torque) const;
  /// The factor by which (atSpeed, torque) can be scaled until it meets the edge; < 1 outside.
  double rayFactor(double atSpeed, double torque) const;
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
  double noLoadSpeed = 0;        ///< [rad/s] where the voltage leaves no shaft torque
  EnvelopeCurve peak;
  EnvelopeCurve lasting;  ///< empty without a continuous limit

  /// Largest lasting shaft torque [N·m] at `speed` (either sign): heat, controller and voltage; NaN
  /// without a continuous limit.
  double continuousTorque(double speed) const;
};

/// Voltage amplitude that the controller can give from the bus: V/sqrt(3) space vector, V/2
/// sine-triangle, 2V/pi six-step; V for direct-current machines.
double voltageLimit(double busVoltage, Modulation modulation, bool direct);

/// Steady-heat limit of the motor, from its thermal resistances or its continuous torque; fails
/// naming the field that is missing.
tl::expected<ContinuousLimit, InputError> continuousLimit(const Motor& motor,
                                                          const MotorConstants& atReference,
                                                          double ambient);

/// The envelope with i_d = 0; `inUse` at the temperature in use. Fails naming the field that is
/// missing.
tl::expected<TorqueEnvelope, InputError> torqueEnvelope(
    const Variant& variant, const MotorConstants& inUse,
    const std::optional<ContinuousLimit>& continuous);

}  // namespace jw

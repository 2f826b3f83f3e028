// The lasting limit of the envelope, from steady heat.
#include <cmath>

#include "core/physics/motor_heat.h"
#include "core/physics/torque_envelope.h"

namespace jw {
namespace {

/// Total thermal resistance that makes `continuousTorque` lasting at standstill and rating ambient.
double resistanceFromRating(const Motor& motor, const MotorConstants& hot) {
  const double i = motor.continuousTorque / hot.torquePerAmp;
  return (windingLimit(motor) - motor.ratingAmbient) / hot.copperLoss(i);
}

}  // namespace

double ContinuousLimit::current(double speed) const {
  const double dragLoss = machine.drag(speed) * speed;
  const double allowed = (rise - dragLoss * housing) / (winding + housing);
  return allowed > 0 ? std::sqrt(allowed / machine.copperLoss(1)) : 0;
}

tl::expected<ContinuousLimit, InputError> continuousLimit(const Motor& motor,
                                                          const MotorConstants& atReference,
                                                          const Requirements& requirements) {
  const double rated = windingLimit(motor);
  const double ambient = requirements.ambient;
  const double limit = deratedLimit(rated, ambient, requirements.altitude);
  const bool split = isSet(motor.thermalResistanceWinding) && isSet(motor.thermalResistanceHousing);
  if (!split && !isSet(motor.continuousTorque)) {
    return tl::unexpected(
        InputError{"the continuous torque (or both thermal resistances) is not given",
                   "motor.continuousTorque", "type it in"});
  }
  if (limit <= ambient || (!split && rated <= motor.ratingAmbient)) {
    return tl::unexpected(InputError{"the winding limit is not above the ambient",
                                     "motor.windingTemperatureMax",
                                     "a winding limit above the ambient, e.g. 155 °C"});
  }
  ContinuousLimit result;
  result.rise = limit - ambient;
  result.ambient = ambient;
  if (split) {
    result.winding = motor.thermalResistanceWinding;
    result.housing = mountedResistance(motor);
  } else {
    result.housing = resistanceFromRating(motor, atTemperature(atReference, motor, rated, rated));
  }
  const double share = result.housing / (result.housing + result.winding);
  result.machine = atTemperature(atReference, motor, limit, ambient + share * result.rise);
  return result;
}

}  // namespace jw

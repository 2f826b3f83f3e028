#include "core/model/catalogue_entry.h"

#include "core/model/field_catalogue.h"

namespace jw {

Motor fittedMotor(const MotorEntry& entry, const Motor& present) {
  Motor motor = entry.motor;
  for (const char* key : {"encoderSteps", "jointEncoderSteps", "mountResistance"}) {
    const FieldInfo& info = *structInfo<Motor>().find(key);
    const double stated = info.number(&motor);
    const bool isStated = isSet(stated) && stated != 0;
    if (isStated || !isSet(info.number(&present))) continue;
    info.setNumber(&motor, info.number(&present));
    motor.asWritten.from.change(key);
    const auto text = present.asWritten.typed.find(key);
    if (text != present.asWritten.typed.end()) motor.asWritten.typed.insert(*text);
  }
  return motor;
}

}  // namespace jw

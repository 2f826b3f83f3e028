#pragma once

#include <string>

#include "core/model/motor.h"
#include "core/model/stage.h"

namespace jw {

/// One motor of a catalogue. A reducer of a catalogue is a Stage, which has a name of its own.
struct MotorEntry {
  std::string name;
  Motor motor;
};

/// The motor of `entry` in the place of `present`. What the entry does not state and belongs to the
/// joint rather than to the motor stays: the encoders and the plate that the motor is screwed to.
Motor fittedMotor(const MotorEntry& entry, const Motor& present);

}  // namespace jw

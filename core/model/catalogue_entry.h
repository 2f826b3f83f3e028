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

}  // namespace jw

#pragma once

#include "core/model/as_written.h"
#include "core/model/unset.h"

namespace jw {

/// How a current is counted: root mean square, or the amplitude of the sine. Direct current is
/// both.
enum class CurrentMeasure { Rms, Amplitude };

/// How the controller makes three-phase voltage from the bus.
enum class Modulation { SpaceVector, SineTriangle, SixStep };

/// The direct-voltage source.
struct Supply {
  double voltage = kUnset;  ///< [V] bus voltage
  AsWritten asWritten;
};

/// The electronics that feed the motor.
struct Controller {
  double currentPeak = kUnset;        ///< [A] largest output current
  double currentContinuous = kUnset;  ///< [A] largest lasting output current
  CurrentMeasure currentMeasure = CurrentMeasure::Rms;
  Modulation modulation = Modulation::SpaceVector;
  double idlePower = 0;       ///< [W] drawn with no output
  double lossPerAmpere = 0;   ///< [V] loss proportional to the rms output current
  double lossResistance = 0;  ///< [Ohm] loss proportional to its square
  AsWritten asWritten;
};

}  // namespace jw

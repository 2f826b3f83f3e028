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
  double voltage = kUnset;          ///< [V] bus voltage, nominal, at no load
  double voltageMin = kUnset;       ///< [V] lowest, e.g. battery nearly empty; unset = nominal
  double voltageMax = kUnset;       ///< [V] highest; unset = nominal
  double sourceResistance = 0;      ///< [Ohm] of source and leads; the bus sags by it
  double powerPeak = kUnset;        ///< [W] what the source can give for a moment
  double powerMean = kUnset;        ///< [W] what it can give for ever
  bool takesBack = false;           ///< accepts returned power (battery, active front end)
  double busCapacitance = kUnset;   ///< [F]
  double busVoltageMax = kUnset;    ///< [V] highest that everything on the bus stands
  double brakeVoltage = kUnset;     ///< [V] brake resistor switches on
  double brakeResistance = kUnset;  ///< [Ohm]
  double brakePowerPeak = kUnset;   ///< [W] resistor and switch for a moment
  double brakePowerMean = kUnset;   ///< [W] resistor for ever
  double shift = kUnset;            ///< [s] running time between charges
  AsWritten asWritten;
};

/// The electronics that feed the motor.
struct Controller {
  double currentPeak = kUnset;        ///< [A] largest output current
  double currentContinuous = kUnset;  ///< [A] largest lasting output current
  CurrentMeasure currentMeasure = CurrentMeasure::Rms;
  Modulation modulation = Modulation::SpaceVector;
  bool fieldWeakening = false;    ///< most torque per ampere, then per volt; else i_d = 0
  double voltageReserve = 0;      ///< share of the voltage left to the current controller
  double peakTime = kUnset;       ///< [s] that currentPeak may last from rated temperature
  double heatSink = kUnset;       ///< [°C] assumed heat-sink temperature
  double deratingStart = kUnset;  ///< [°C] continuous current falls from here
  double deratingEnd = kUnset;    ///< [°C] to nothing here
  double idlePower = 0;           ///< [W] drawn with no output
  double lossPerAmpere = 0;       ///< [V] loss proportional to the rms output current
  double lossResistance = 0;      ///< [Ohm] loss proportional to its square
  AsWritten asWritten;
};

}  // namespace jw

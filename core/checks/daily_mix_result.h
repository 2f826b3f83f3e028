#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/model/unset.h"
#include "core/physics/daily_mix.h"

namespace jw {

/// Temperatures of a cycle that is repeated for hours.
struct MixedHeat {
  bool runaway = false;
  double windingPeak = kUnset, windingMean = kUnset;  ///< [°C]
  double housingPeak = kUnset, housingMean = kUnset;  ///< [°C]
};

/// One cycle of the daily mix, as means over its own period.
struct MixedCycle {
  std::string path;  ///< "cycle" or "otherCycles[1]"
  std::string title;
  double share = 0;                  ///< [1] of the day's time of duty
  double period = 0;                 ///< [s]
  std::vector<WearMeans> stages;     ///< output torque and input speed, motor first
  std::optional<WearMeans> bearing;  ///< equivalent load of the output bearing, joint speed
  double torqueRms = kUnset;         ///< [N·m] of the motor
  double currentRms = kUnset;        ///< [A] rms of the phase current
  double torquePeak = kUnset;        ///< [N·m] of the motor
  double speedPeak = kUnset;         ///< [rad/s] of the motor
  double powerMean = kUnset;         ///< [W] drawn from the source less what it takes back
  double copper20 = kUnset;          ///< [W] mean copper loss of a winding at 20 °C
  double housingLoss = kUnset;       ///< [W] mean of the other loss that heats the housing
  std::optional<MixedHeat> heat;
};

/// The day: several cycles by their shares, the rest idle.
struct DailyMix {
  std::vector<MixedCycle> cycles;
  double idle = 0;  ///< [1] share of the day in which the joint rests without current
  std::vector<WearMeans> stages;
  std::optional<WearMeans> bearing;
  double torqueRms = kUnset;   ///< [N·m] of the motor, over the day
  double currentRms = kUnset;  ///< [A]
  double powerMean = kUnset;   ///< [W]
  /// [°C] winding and housing at the day's mean losses, as if the cycles changed quickly; not
  /// finite on runaway.
  double windingMean = kUnset, housingMean = kUnset;

  /// The cycle that heats the winding most when it is repeated for hours; null without heat.
  const MixedCycle* hottest() const;
};

}  // namespace jw

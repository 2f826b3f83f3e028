#pragma once

#include <string>

#include "core/model/as_written.h"
#include "core/model/unset.h"

namespace jw {

enum class StageFamily { Planetary, Cycloidal, StrainWave, Traction, Belt, Coupling, GivenRatio };

/// One stage of the transmission, its data as a data sheet gives them.
struct Stage {
  std::string name;
  StageFamily family = StageFamily::GivenRatio;
  double ratio = kUnset;                  ///< input speed over output speed, > 0
  bool reverses = false;                  ///< output turns against the input
  double efficiency = kUnset;             ///< overall, at rated torque and rated speed, driving
  double backdrivingEfficiency = kUnset;  ///< load-dependent; unset = 2 - 1/eta (an estimate)
  double dragTorque = 0;                  ///< [N·m] no-load running torque at the input
  double heatShare = 0;                   ///< share of its loss that heats the motor's housing
  double inertia = 0;                     ///< [kg·m²] turning with the input
  double outputInertia = 0;               ///< [kg·m²] turning with the output
  double ratedTorque = kUnset;            ///< [N·m] at the output, for ratedLife at ratedSpeed
  double ratedSpeed = kUnset;             ///< [rad/s] at the input
  double ratedLife = kUnset;              ///< [s]
  double lifeExponent = 3;                ///< 3 ball, 10/3 roller
  double averageTorque = kUnset;  ///< [N·m] limit of the cubic mean at the output; unset = rated
  double peakTorque = kUnset;     ///< [N·m] repeated peak at the output
  double averageSpeed = kUnset;   ///< [rad/s] limit of the mean input speed
  double peakSpeed = kUnset;      ///< [rad/s] limit of the input speed
  AsWritten asWritten;
};

}  // namespace jw

#pragma once

#include <string>

#include "core/model/as_written.h"
#include "core/model/stage_geometry.h"
#include "core/model/unset.h"

namespace jw {

enum class StageFamily {
  Planetary,
  Cycloidal,
  StrainWave,
  Traction,
  Belt,
  Coupling,
  GivenRatio,
  ParallelShaft
};

/// One stage of the transmission, its data as a data sheet gives them and what it is built of.
/// Where the ratio, the efficiency, the inertia or the stiffness is unset, it follows from the
/// geometry if that is given (core/physics/stage_data.h).
struct Stage {
  std::string name;
  StageFamily family = StageFamily::GivenRatio;
  double ratio = kUnset;                  ///< input speed over output speed, > 0
  bool reverses = false;                  ///< output turns against the input
  double efficiency = kUnset;             ///< overall, at rated torque and rated speed, driving
  double backdrivingEfficiency = kUnset;  ///< load-dependent; unset = 2 - 1/eta (an estimate)
  double dragTorque = 0;                  ///< [N·m] no-load running torque at the input, slow
  double dragDamping = kUnset;            ///< [N·m·s/rad] its rise with the input speed
  std::string greaseTable = {};           ///< temperatures and factors on the no-load torque
  double greaseTemperature = kUnset;      ///< [°C] for the table; unset = ambient
  double startingTorque = kUnset;         ///< [N·m] breaks the unloaded stage loose, at the input
  double backdrivingTorque = kUnset;      ///< [N·m] breaks it loose from the output
  double heatShare = 0;                   ///< share of its loss that heats the motor's housing
  double inertia = kUnset;                ///< [kg·m²] turning with the input
  double outputInertia = 0;               ///< [kg·m²] turning with the output
  double ratedTorque = kUnset;            ///< [N·m] at the output, for ratedLife at ratedSpeed
  double ratedSpeed = kUnset;             ///< [rad/s] at the input
  double ratedLife = kUnset;              ///< [s]
  double lifeExponent = 3;                ///< 3 ball, 10/3 roller
  double averageTorque = kUnset;    ///< [N·m] limit of the cubic mean at the output; unset = rated
  double peakTorque = kUnset;       ///< [N·m] repeated peak at the output
  double momentaryTorque = kUnset;  ///< [N·m] at the output, a few times in its life
  double averageSpeed = kUnset;     ///< [rad/s] limit of the mean input speed
  double peakSpeed = kUnset;        ///< [rad/s] limit of the input speed
  double backlash = kUnset;         ///< [rad] whole play at the output
  double hysteresis = kUnset;       ///< [rad] width of the wind-up loop at no torque, less play
  double transmissionError = kUnset;  ///< [rad] peak to peak at the output
  PiecewiseStiffness stiffness = {};
  OutputBearing bearing = {};
  double mass = kUnset;      ///< [kg]
  double length = kUnset;    ///< [m] along the axis
  double diameter = kUnset;  ///< [m]
  PlanetaryGeometry planetary = {};
  GearPairGeometry gearPair = {};
  Toothing toothing = {};
  CycloidGeometry cycloid = {};
  StrainWaveGeometry strainWave = {};
  TractionGeometry traction = {};
  BeltGeometry belt = {};
  ContactMaterial contact = {};
  AsWritten asWritten;
};

}  // namespace jw

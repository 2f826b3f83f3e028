#pragma once

#include "core/model/as_written.h"
#include "core/model/supply.h"
#include "core/model/unset.h"

namespace jw {

enum class MotorKind {
  Sinusoidal,  ///< three-phase permanent magnet, sine currents
  Block,       ///< three-phase permanent magnet, six-step ("block") commutation, two phases carry
  BrushedDc,
};

enum class WindingConnection { Star, Delta };

/// Between which points a winding figure was measured.
enum class WindingMeasure { LineToLine, Phase };

/// Which voltage a back-EMF figure counts.
enum class VoltageMeasure { LineToLinePeak, LineToLineRms, PhasePeak, PhaseRms };

/// Highest winding temperature by insulation (IEC 60085): A 105, E 120, B 130, F 155, H 180, N 200,
/// R 220 °C; or stated.
enum class ThermalClass { Stated, A105, E120, B130, F155, H180, N200, R220 };

/// The motor as its data sheet states it, each figure with the convention it was stated in. One of
/// torqueConstant, backEmfConstant, speedConstant and fluxLinkage is enough; more must agree.
struct Motor {
  MotorKind kind = MotorKind::Sinusoidal;
  WindingConnection connection = WindingConnection::Star;
  int polePairs = 1;
  double torqueConstant = kUnset;  ///< [N·m/A]
  CurrentMeasure torqueConstantMeasure = CurrentMeasure::Rms;
  double backEmfConstant = kUnset;  ///< [V·s/rad]
  VoltageMeasure backEmfMeasure = VoltageMeasure::LineToLineRms;
  double speedConstant = kUnset;  ///< [rad/(s·V)]
  VoltageMeasure speedConstantMeasure = VoltageMeasure::LineToLinePeak;
  double fluxLinkage = kUnset;  ///< [Wb] peak, of one phase winding as connected
  double resistance = kUnset;   ///< [Ohm] at referenceTemperature
  WindingMeasure resistanceMeasure = WindingMeasure::LineToLine;
  double inductance = kUnset;   ///< [H]; of the d axis where inductanceQ differs
  double inductanceQ = kUnset;  ///< [H] of the q axis; unset = the same
  WindingMeasure inductanceMeasure = WindingMeasure::LineToLine;
  double referenceTemperature = 20;    ///< [°C] of the data-sheet figures
  double windingTemperature = kUnset;  ///< [°C] assumed in use for peak figures; unset = reference
  double copperCoefficient = 0.00393;  ///< [1/K] at 20 °C
  double magnetCoefficient = -0.0012;  ///< [1/K] at 20 °C
  double rotorInertia = kUnset;        ///< [kg·m²]
  double dragTorque = 0;               ///< [N·m] constant no-load torque
  double dragDamping = 0;              ///< [N·m·s/rad] no-load torque per speed
  double noLoadCurrent = kUnset;       ///< [A] in the measure of torqueConstant; gives the drag
  double noLoadSpeed = kUnset;         ///< [rad/s] at which it was read
  double noLoadCurrent2 = kUnset;      ///< [A] a second point
  double noLoadSpeed2 = kUnset;        ///< [rad/s]
  double maxSpeed = kUnset;            ///< [rad/s] mechanical limit
  double currentPeak = kUnset;         ///< [A] winding or demagnetization limit
  CurrentMeasure currentPeakMeasure = CurrentMeasure::Rms;
  double continuousTorque = kUnset;  ///< [N·m] at standstill and ratingAmbient
  double ratingAmbient = 40;         ///< [°C] of continuousTorque
  ThermalClass thermalClass = ThermalClass::Stated;
  double windingTemperatureMax = 155;        ///< [°C]
  double thermalResistanceWinding = kUnset;  ///< [K/W] winding to housing
  double thermalResistanceHousing = kUnset;  ///< [K/W] housing to ambient
  double mountResistance = kUnset;        ///< [K/W] housing to a plate at ambient, beside the air
  double windingCapacity = kUnset;        ///< [J/K]
  double housingCapacity = kUnset;        ///< [J/K]
  double windingTimeConstant = kUnset;    ///< [s] instead of windingCapacity
  double housingTimeConstant = kUnset;    ///< [s] instead of housingCapacity
  double housingTemperatureMax = kUnset;  ///< [°C] bearings, encoder, grease
  double demagnetizingCurrent = kUnset;   ///< [A] amplitude that begins to demagnetize
  double demagnetizingTemperature = 20;   ///< [°C] at which it is stated
  double demagnetizingCoefficient = 0;    ///< [1/K] its change with temperature
  double brakeTorque = kUnset;            ///< [N·m] holding torque of a brake on the motor shaft
  double brakeInertia = 0;                ///< [kg·m²]
  double brakeDelay = 0;                  ///< [s] until the brake grips
  double brakeStopEnergy = kUnset;        ///< [J] that it takes in one stop
  double brakePower = kUnset;             ///< [W] that it takes on and on
  int encoderSteps = 0;                   ///< of the motor's encoder, a turn; 0 = none
  int jointEncoderSteps = 0;              ///< of an encoder at the joint, a turn; 0 = none
  double mass = kUnset;                   ///< [kg] with encoder and brake
  double length = kUnset;                 ///< [m] along the axis
  double diameter = kUnset;               ///< [m]
  AsWritten asWritten;
};

}  // namespace jw

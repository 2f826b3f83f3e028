#pragma once

#include "core/model/unset.h"

namespace jw {

// What a stage is built of, family by family. All may be left out: a stage runs on its data sheet
// alone. Counts of teeth, pins and rollers are whole numbers kept as double, so that they may be
// unset.

/// One set of sun, planets and held ring; the carrier turns the output.
struct PlanetSet {
  double sunTeeth = kUnset;
  double ringTeeth = kUnset;
  double planets = kUnset;
};

/// One to three planet sets in a row, the motor's first.
struct PlanetaryGeometry {
  int sets = 1;
  PlanetSet first, second, third;
  double loadSharing = kUnset;  ///< largest planet load over the mean, >= 1; unset = 1
};

/// A pair of external gears on parallel shafts.
struct GearPairGeometry {
  double pinionTeeth = kUnset;  ///< motor side
  double gearTeeth = kUnset;    ///< joint side
  double helixAngle = 0;        ///< [rad]
};

/// Shared by planet sets and gear pairs.
struct Toothing {
  double module = kUnset;          ///< [m] normal
  double faceWidth = kUnset;       ///< [m]
  double pressureAngle = kUnset;   ///< [rad] normal; unset = 20 deg
  double meshEfficiency = kUnset;  ///< of one tooth mesh
};

/// Which part of a cycloidal stage stands still.
enum class CycloidHeld { Pins, OutputPins };

/// Discs with lobes on an eccentric inside a circle of pins, driving output pins in their holes.
struct CycloidGeometry {
  CycloidHeld held = CycloidHeld::Pins;
  double pins = kUnset;
  double lobes = kUnset;            ///< unset = pins - 1
  double eccentricity = kUnset;     ///< [m]
  double pinCircleRadius = kUnset;  ///< [m]
  double pinRadius = kUnset;        ///< [m] of pin or its roller
  double outputPins = kUnset;
  double outputPinCircleRadius = kUnset;  ///< [m]
  double outputPinRadius = kUnset;        ///< [m] of pin or its roller
  double discs = kUnset;                  ///< 1, 2 or 3, spread evenly; unset = 2
  double discWidth = kUnset;              ///< [m] of each
  double pinFriction = kUnset;            ///< coefficient at the pins
  double outputPinFriction = kUnset;      ///< coefficient at the output pins
  double bearingFriction = kUnset;        ///< coefficient at the eccentric's bearing, at its radius
  double bearingRadius = kUnset;          ///< [m] of the eccentric's bearing
};

/// Which part of a strain-wave stage stands still; the wave generator is the input.
enum class StrainWaveHeld { CircularSpline, Flexspline };

struct StrainWaveGeometry {
  StrainWaveHeld held = StrainWaveHeld::CircularSpline;
  double flexTeeth = kUnset;
  double circularTeeth = kUnset;
};

/// Rollers between a sun roller and a held ring, pressed together.
struct TractionGeometry {
  double sunDiameter = kUnset;   ///< [m]
  double ringDiameter = kUnset;  ///< [m] rolling surface of the ring
  double rollers = kUnset;
  double rollerWidth = kUnset;          ///< [m] length of the line contact
  double contactForce = kUnset;         ///< [N] normal, at each contact of sun and roller
  double tractionCoefficient = kUnset;  ///< largest, at which it slips
  double creepAtLimit = kUnset;         ///< share of speed lost just before it slips
  double contactRating = kUnset;        ///< [N] dynamic rating C of one contact, 1e6 load changes
};

/// Two toothed pulleys and a belt.
struct BeltGeometry {
  double motorPulleyTeeth = kUnset;
  double jointPulleyTeeth = kUnset;
  double pitch = kUnset;              ///< [m]
  double centreDistance = kUnset;     ///< [m]
  double spanPretension = kUnset;     ///< [N] in each span at rest
  double specificStiffness = kUnset;  ///< [N] force of the whole width per unit strain
  double teethInMeshMin = kUnset;     ///< least wanted on the smaller pulley; unset = 6
};

/// Surfaces in rolling contact.
struct ContactMaterial {
  double elasticModulus = kUnset;   ///< [Pa] of both bodies; unset = 206 GPa
  double poissonRatio = kUnset;     ///< of both bodies; unset = 0.3
  double allowedPressure = kUnset;  ///< [Pa] Hertz pressure allowed
};

/// Stiffness at the output, in up to three straight pieces.
struct PiecewiseStiffness {
  double first = kUnset;         ///< [N·m/rad] below firstTorque, or throughout
  double second = kUnset;        ///< [N·m/rad] up to secondTorque, or above firstTorque
  double third = kUnset;         ///< [N·m/rad] above secondTorque
  double firstTorque = kUnset;   ///< [N·m]
  double secondTorque = kUnset;  ///< [N·m]
};

enum class RollingElement { Ball, Roller };

/// The bearing that carries the output flange.
struct OutputBearing {
  RollingElement element = RollingElement::Roller;
  double dynamicRating = kUnset;  ///< [N] C
  double staticRating = kUnset;   ///< [N] C0
  double pitchDiameter = kUnset;  ///< [m]
  double allowedMoment = kUnset;  ///< [N·m] tilting moment allowed
  double staticFactor = kUnset;   ///< wanted static safety s0; unset = 1.5
};

}  // namespace jw

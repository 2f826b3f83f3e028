#pragma once

#include "core/model/stage_geometry.h"

namespace jw {

/// R 90, pin radius 7, 12 pins, eccentricity 4 mm: sheet based on Chen, Fang, Li and Wang, "Gear
/// geometry of cycloid drives", read second-hand.
inline CycloidGeometry sheetCycloid() {
  CycloidGeometry g;
  g.pins = 12;
  g.pinCircleRadius = 0.090;
  g.pinRadius = 0.007;
  g.eccentricity = 0.004;
  return g;
}

/// The same with invented output pins, bearing and friction.
inline CycloidGeometry wholeCycloid() {
  CycloidGeometry g = sheetCycloid();
  g.outputPins = 8;
  g.outputPinCircleRadius = 0.052;
  g.outputPinRadius = 0.006;
  g.discs = 2;
  g.discWidth = 0.012;
  g.pinFriction = 0.03;
  g.outputPinFriction = 0.05;
  g.bearingFriction = 0.002;
  g.bearingRadius = 0.030;
  return g;
}

}  // namespace jw

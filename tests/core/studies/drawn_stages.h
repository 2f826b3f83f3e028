#pragma once

#include "core/model/stage.h"

// Invented stages of every family, with all that a drawing needs.
namespace jw::drawn {

inline Stage stageOf(StageFamily family) {
  Stage stage;
  stage.family = family;
  return stage;
}

inline Stage planetaryStage(double sun, double ring, double planets, double module = 1e-3) {
  Stage stage = stageOf(StageFamily::Planetary);
  stage.planetary.first = {sun, ring, planets};
  stage.toothing.module = module;
  return stage;
}

inline Stage gearStage(double first, double second, double helix = 0) {
  Stage stage = stageOf(StageFamily::ParallelShaft);
  stage.gearPair = {first, second, helix};
  stage.toothing.module = 1e-3;
  return stage;
}

inline Stage strainStage(double flex, double circular, StrainWaveHeld held) {
  Stage stage = stageOf(StageFamily::StrainWave);
  stage.strainWave = {held, flex, circular};
  return stage;
}

inline Stage beltStage(double first, double second) {
  Stage stage = stageOf(StageFamily::Belt);
  stage.belt.motorPulleyTeeth = first;
  stage.belt.jointPulleyTeeth = second;
  stage.belt.pitch = 5e-3;
  stage.belt.centreDistance = 0.11;
  return stage;
}

inline Stage cycloidStage(CycloidHeld held) {
  Stage stage = stageOf(StageFamily::Cycloidal);
  CycloidGeometry& g = stage.cycloid;
  g.held = held;
  g.pins = 12;
  g.eccentricity = 1.5e-3;
  g.pinCircleRadius = 40e-3;
  g.pinRadius = 4e-3;
  g.outputPins = 6;
  g.outputPinCircleRadius = 22e-3;
  g.outputPinRadius = 3e-3;
  g.bearingRadius = 12e-3;
  return stage;
}

inline Stage rollerStage() {
  Stage stage = stageOf(StageFamily::Traction);
  stage.traction.sunDiameter = 20e-3;
  stage.traction.ringDiameter = 80e-3;
  stage.traction.rollers = 3;
  return stage;
}

inline Stage ratioStage(double ratio, bool reverses) {
  Stage stage = stageOf(StageFamily::GivenRatio);
  stage.ratio = ratio;
  stage.reverses = reverses;
  return stage;
}

}  // namespace jw::drawn

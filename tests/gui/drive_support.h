#pragma once

#include <cmath>
#include <vector>

#include "core/studies/drive_shapes.h"
#include "tests/gui/figures_support.h"

namespace jw::test {

/// `stage` with the ratio of its parts typed in.
inline Stage withRatio(Stage stage) {
  const auto shapes = driveShapes(stage, {});
  if (!shapes) return stage;
  stage.ratio = std::abs(shapes->ratio);
  stage.reverses = shapes->ratio < 0;
  return stage;
}

/// Invented stages of every family, with all that a drawing needs.
inline Stage planetaryStage() {
  Stage stage = stageOf(StageFamily::Planetary, kUnset, 0.96);
  stage.planetary.first = {20, 80, 4};
  stage.toothing.module = 1e-3;
  return withRatio(stage);
}

inline Stage threeSets() {
  Stage stage = planetaryStage();
  stage.planetary.sets = 3;
  stage.planetary.second = {18, 72, 4};
  stage.planetary.third = {24, 60, 4};
  return withRatio(stage);
}

inline Stage cycloidStage(CycloidHeld held = CycloidHeld::Pins) {
  Stage stage = stageOf(StageFamily::Cycloidal, kUnset, 0.85);
  CycloidGeometry& g = stage.cycloid;
  g.held = held;
  g.pins = 30;
  g.eccentricity = 0.9e-3;
  g.pinCircleRadius = 45e-3;
  g.pinRadius = 2.5e-3;
  g.outputPins = 8;
  g.outputPinCircleRadius = 28e-3;
  g.outputPinRadius = 4e-3;
  g.bearingRadius = 15e-3;
  return withRatio(stage);
}

inline Stage strainWaveStage(double flexTeeth = 198) {
  Stage stage = stageOf(StageFamily::StrainWave, kUnset, 0.74);
  stage.strainWave = {StrainWaveHeld::Flexspline, flexTeeth, flexTeeth + 2};
  return withRatio(stage);
}

inline Stage rollerStage() {
  Stage stage = stageOf(StageFamily::Traction, kUnset, 0.95);
  stage.traction.sunDiameter = 20e-3;
  stage.traction.ringDiameter = 80e-3;
  stage.traction.rollers = 4;
  return withRatio(stage);
}

inline Stage beltStage() {
  Stage stage = stageOf(StageFamily::Belt, kUnset, 0.96);
  stage.belt.motorPulleyTeeth = 20;
  stage.belt.jointPulleyTeeth = 40;
  stage.belt.pitch = 5e-3;
  stage.belt.centreDistance = 0.11;
  return withRatio(stage);
}

inline Stage gearStage(double helix = 0.3) {
  Stage stage = stageOf(StageFamily::ParallelShaft, kUnset, 0.97);
  stage.gearPair = {18, 54, helix};
  stage.toothing.module = 1e-3;
  return withRatio(stage);
}

struct NamedStage {
  const char* name;
  Stage stage;
};

inline std::vector<NamedStage> drawnStages() {
  return {{"planetary", planetaryStage()},
          {"threeSets", threeSets()},
          {"cycloid", cycloidStage()},
          {"cycloidRing", cycloidStage(CycloidHeld::OutputPins)},
          {"strainWave", strainWaveStage()},
          {"strainWaveFew", strainWaveStage(60)},
          {"rollers", rollerStage()},
          {"belt", beltStage()},
          {"gearPair", gearStage()},
          {"coupling", stageOf(StageFamily::Coupling, 1, 1)},
          {"givenRatio", stageOf(StageFamily::GivenRatio, 12, 0.9)}};
}

/// The invented shoulder with this stage alone.
inline Project shoulderWith(const Stage& stage) {
  Project project = shoulder(0);
  project.active().transmission = {stage};
  return project;
}

}  // namespace jw::test

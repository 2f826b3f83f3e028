#pragma once

#include <memory>

#include "widgets/snapshot.h"

namespace jw::test {

/// An invented shoulder joint with two stages: it lifts a load, releases it, comes back, grips.
inline Segment segmentNamed(const char* name, MotionLaw law, double travel, double duration) {
  Segment segment;
  segment.name = name;
  segment.law = law;
  segment.travel = travel;
  segment.duration = duration;
  return segment;
}

inline void giveMotor(Variant& variant) {
  variant.supply.voltage = 48;
  variant.controller.currentPeak = 23;
  variant.controller.currentContinuous = 10;
  variant.controller.idlePower = 4;
  variant.controller.lossPerAmpere = 0.5;
  Motor& motor = variant.motor;
  motor.polePairs = 7;
  motor.torqueConstant = 0.092;
  motor.resistance = 0.48;
  motor.inductance = 4e-4;
  motor.rotorInertia = 4.2e-5;
  motor.dragTorque = 0.012;
  motor.currentPeak = 18;
  motor.continuousTorque = 0.55;
  motor.thermalResistanceWinding = 0.6;
  motor.thermalResistanceHousing = 1.4;
  motor.brakeTorque = 1.2;
}

inline Stage stageOf(StageFamily family, double ratio, double efficiency) {
  Stage stage;
  stage.family = family;
  stage.ratio = ratio;
  stage.efficiency = efficiency;
  stage.inertia = 1e-5;
  stage.ratedTorque = ratio > 10 ? 54 : 3;
  stage.ratedSpeed = 209;
  stage.ratedLife = 7000 * 3600.0;
  stage.peakTorque = ratio > 10 ? 110 : 6;
  return stage;
}

inline Project shoulder(int stages = 2, int samples = 1000) {
  Project project;
  project.title = "Invented arm, shoulder";
  project.load.inertia = 0.9;
  project.load.linkMass = 4;
  project.load.linkDistance = 0.32;
  project.load.payloadMass = 6.5;
  project.load.payloadDistance = 0.74;
  project.load.coulombFriction = 1.2;
  project.cycle.startAngle = -0.6;
  project.cycle.samples = samples;
  project.cycle.segments = {segmentNamed("out", MotionLaw::ModifiedSine, 1.4, 1.6),
                            segmentNamed("release", MotionLaw::Dwell, 0, 0.3),
                            segmentNamed("back", MotionLaw::Trapezoidal, -1.4, 1.1),
                            segmentNamed("grip", MotionLaw::Dwell, 0, 0.2)};
  project.requirements.life = 7000 * 3600.0;
  giveMotor(project.active());
  for (int k = 1; k < stages; ++k)
    project.active().transmission.push_back(stageOf(StageFamily::Belt, 1.5, 0.96));
  if (stages > 0)
    project.active().transmission.push_back(stageOf(StageFamily::StrainWave, 100, 0.74));
  return project;
}

inline Snapshot snapshotOf(Project project) {
  Snapshot snapshot;
  snapshot.project = std::make_shared<const Project>(std::move(project));
  snapshot.evaluatedProject = snapshot.project;
  snapshot.evaluation = std::make_shared<const Evaluation>(evaluate(*snapshot.project));
  return snapshot;
}

}  // namespace jw::test

#pragma once

#include <numbers>

#include "core/model/project.h"

namespace jw {

/// An invented shoulder joint that has every input its checks need: belt 2 : 1 and strain wave
/// 80 : 1 behind a 48 V motor, lifting 5 kg and coming back empty. All its checks hold.
inline Project exampleProject(int samples = 1000) {
  constexpr double kRpm = std::numbers::pi / 30;
  constexpr double kHour = 3600;
  Project project;
  project.title = "Example shoulder";
  project.load = {.inertia = 1.2,
                  .linkMass = 6,
                  .linkDistance = 0.25,
                  .payloadMass = 5,
                  .payloadDistance = 0.55,
                  .payloadInertia = 0.01,
                  .coulombFriction = 0.8,
                  .viscousFriction = 0.4,
                  .stopLow = -1,
                  .stopHigh = 2,
                  .stopStiffness = 2e4,
                  .overhang = 0.1,
                  .asWritten = {}};
  const double quarter = std::numbers::pi / 2;
  project.cycle.samples = samples;
  project.cycle.startAngle = -0.3;
  project.cycle.segments = {
      {.name = "lift",
       .law = MotionLaw::JerkLimited,
       .travel = quarter,
       .duration = 1,
       .table = {},
       .asWritten = {}},
      {.name = "place", .law = MotionLaw::Dwell, .duration = 0.4, .table = {}, .asWritten = {}},
      {.name = "return",
       .law = MotionLaw::Trapezoidal,
       .travel = -quarter,
       .duration = 0.9,
       .payloadMass = 0,
       .table = {},
       .asWritten = {}},
      {.name = "pick",
       .law = MotionLaw::Dwell,
       .duration = 0.5,
       .payloadMass = 0,
       .table = {},
       .asWritten = {}}};
  project.requirements = {.life = 7000 * kHour, .inertiaRatioMax = 10, .asWritten = {}};
  project.requirements.touchContact = TouchContact::OneSecond;
  project.requirements.stopTime = 0.5;
  project.requirements.stopAngle = 1;
  project.requirements.stopsPerHour = 20;
  project.requirements.collisionSpeed = 0.5;
  project.requirements.bandwidth = 5;
  project.requirements.toolError = 5e-3;
  project.requirements.handTorque = 100;
  project.requirements.massMax = 5;
  project.requirements.lengthMax = 0.2;
  project.requirements.diameterMax = 0.15;
  Variant& variant = project.variants.front();
  variant.supply = {.voltage = 48,
                    .powerPeak = 400,
                    .powerMean = 150,
                    .busCapacitance = 2e-3,
                    .busVoltageMax = 80,
                    .brakeVoltage = 60,
                    .brakeResistance = 10,
                    .brakePowerPeak = 150,
                    .brakePowerMean = 20,
                    .asWritten = {}};
  variant.controller = {.currentPeak = 20,
                        .currentContinuous = 6,
                        .peakTime = 0.5,
                        .idlePower = 3,
                        .lossPerAmpere = 0.5,
                        .lossResistance = 0.02,
                        .asWritten = {}};
  Motor& motor = variant.motor;
  motor.polePairs = 7;
  motor.torqueConstant = 0.11;
  motor.resistance = 0.35;
  motor.inductance = 0.3e-3;
  motor.rotorInertia = 6e-5;
  motor.dragTorque = 0.01;
  motor.dragDamping = 2e-5;
  motor.maxSpeed = 6000 * kRpm;
  motor.currentPeak = 25;
  motor.thermalResistanceWinding = 0.9;
  motor.thermalResistanceHousing = 1.8;
  motor.windingCapacity = 60;
  motor.housingCapacity = 700;
  motor.housingTemperatureMax = 90;
  motor.demagnetizingCurrent = 60;
  motor.demagnetizingCoefficient = -0.004;
  motor.windingTemperature = 80;
  motor.brakeTorque = 1;
  motor.brakeInertia = 5e-6;
  motor.brakeDelay = 0.02;
  motor.brakeStopEnergy = 200;
  motor.brakePower = 5;
  motor.encoderSteps = 16384;
  motor.mass = 1.2;
  motor.length = 0.08;
  motor.diameter = 0.08;
  variant.transmission = {{.name = "belt",
                           .family = StageFamily::Belt,
                           .ratio = 2,
                           .efficiency = 0.97,
                           .inertia = 1e-5,
                           .outputInertia = 4e-5,
                           .ratedTorque = 3,
                           .peakTorque = 5,
                           .peakSpeed = 6000 * kRpm,
                           .backlash = 1e-4,
                           .mass = 0.3,
                           .length = 0.02,
                           .diameter = 0.1,
                           .belt = {.motorPulleyTeeth = 24,
                                    .jointPulleyTeeth = 48,
                                    .pitch = 3e-3,
                                    .centreDistance = 0.09,
                                    .spanPretension = 200},
                           .asWritten = {}},
                          {.name = "strain wave",
                           .family = StageFamily::StrainWave,
                           .ratio = 80,
                           .reverses = true,
                           .efficiency = 0.75,
                           .dragTorque = 0.03,
                           .inertia = 8e-6,
                           .ratedTorque = 60,
                           .ratedSpeed = 2000 * kRpm,
                           .ratedLife = 10000 * kHour,
                           .averageTorque = 80,
                           .peakTorque = 120,
                           .momentaryTorque = 250,
                           .averageSpeed = 3500 * kRpm,
                           .peakSpeed = 6000 * kRpm,
                           .backlash = 1e-4,
                           .hysteresis = 3e-4,
                           .transmissionError = 2e-4,
                           .stiffness = {.first = 3e4},
                           .bearing = {.dynamicRating = 3e3,
                                       .staticRating = 12e3,
                                       .pitchDiameter = 0.06,
                                       .allowedMoment = 200},
                           .mass = 1.1,
                           .length = 0.05,
                           .diameter = 0.11,
                           .asWritten = {}}};
  return project;
}

}  // namespace jw

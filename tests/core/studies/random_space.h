#pragma once

#include <random>

#include "core/studies/catalogue_search.h"
#include "core/studies/invented_catalogue.h"
#include "tests/core/checks/example_project.h"

namespace jw {

/// A random joint to be searched: invented, far apart in size so that every limit is met by some.
struct RandomSpace {
  Project project;
  SearchSpace space;
};

class SpaceMaker {
 public:
  explicit SpaceMaker(unsigned seed) : random_(seed) {}

  /// `kind`: 0 belt before the reducer, 1 no belt, 2 belt behind the reducer, 3 direct current.
  RandomSpace make(int kind, std::size_t motors, std::size_t reducers, std::size_t ratios,
                   int samples) {
    RandomSpace made;
    made.project = joint(kind, samples);
    for (std::size_t k = 0; k < motors; ++k) made.space.motors.push_back(motor(kind));
    for (std::size_t k = 0; k < reducers; ++k) made.space.reducers.push_back(reducer());
    made.space.reducerStage = kind == 0 || kind == 3 ? 1 : 0;
    if (kind == 1) return made;
    made.space.beltStage = kind == 2 ? 1 : 0;
    for (std::size_t k = 0; k < ratios; ++k) made.space.beltRatios.push_back(between(0.7, 5));
    return made;
  }

 private:
  double between(double low, double high) {
    return std::uniform_real_distribution<double>(low, high)(random_);
  }
  double around(double value, double factor) {
    return value * std::exp(between(-std::log(factor), std::log(factor)));
  }
  bool chance(double share) { return between(0, 1) < share; }

  Project joint(int kind, int samples) {
    Project project = exampleProject(samples);
    project.load.inertia = around(1.2, 5);
    project.load.payloadMass = around(4, 4);
    project.load.coulombFriction = chance(0.3) ? 0 : around(1, 3);
    for (Segment& segment : project.cycle.segments) {
      if (segment.law != MotionLaw::Dwell) segment.duration = around(0.9, 2);
    }
    if (chance(0.2)) addMix(project);
    if (chance(0.3)) project.requirements.inertiaRatioMax = kUnset;
    project.requirements.altitude = chance(0.2) ? 2500 : 0;
    Variant& variant = project.active();
    variant.transmission[0].dragTorque = chance(0.5) ? 0.01 : 0;
    if (chance(0.3)) variant.transmission[0].startingTorque = 0.05;
    if (kind == 1) variant.transmission.erase(variant.transmission.begin());
    if (kind == 2) std::swap(variant.transmission[0], variant.transmission[1]);
    variant.supply.voltage = chance(0.5) ? 48 : 24;
    if (chance(0.3)) variant.supply.voltageMin = 0.85 * variant.supply.voltage;
    variant.supply.sourceResistance = chance(0.3) ? around(0.05, 3) : 0;
    makeController(variant.controller);
    return project;
  }

  /// A second cycle through the day, with less to carry.
  void addMix(Project& project) {
    project.cycle.use = project.otherCycles.emplace_back(project.cycle).use = MixUse::Share;
    project.cycle.dayShare = 0.3;
    project.otherCycles[0].dayShare = 0.5;
    for (Segment& segment : project.otherCycles[0].segments) segment.payloadMass = 0;
  }

  void makeController(Controller& controller) {
    controller.currentPeak = chance(0.1) ? kUnset : around(20, 3);
    controller.currentContinuous = chance(0.1) ? kUnset : around(7, 3);
    controller.currentMeasure = chance(0.3) ? CurrentMeasure::Amplitude : CurrentMeasure::Rms;
    controller.fieldWeakening = chance(0.3);
    controller.voltageReserve = chance(0.3) ? 0.1 : 0;
    if (!chance(0.2)) return;
    controller.heatSink = 60;
    controller.deratingStart = chance(0.3) ? kUnset : 50;
    controller.deratingEnd = 80;
  }

  MotorEntry motor(int kind) {
    MotorSeed seed;
    seed.power = around(200, 6);
    seed.speed = around(300, 2);
    seed.voltage = chance(0.5) ? 24 : 48;
    seed.flat = chance(0.5);
    MotorEntry entry = inventedMotor(seed);
    Motor& m = entry.motor;
    m.rotorInertia = chance(0.03) ? kUnset : around(m.rotorInertia, 3);
    m.resistance = around(m.resistance, 1.5);
    if (chance(0.2)) m.inductanceQ = around(2 * m.inductance, 1.5);
    if (chance(0.1)) m.thermalResistanceWinding = kUnset;
    if (chance(0.2)) m.continuousTorque = seed.power / seed.speed;
    if (chance(0.1)) m.maxSpeed = kUnset;
    if (kind == 3) m.kind = chance(0.5) ? MotorKind::BrushedDc : MotorKind::Block;
    return entry;
  }

  Stage reducer() {
    const auto& rules = defaultFamilyRules();
    const FamilyRule& rule = rules[static_cast<std::size_t>(between(0, 4.999))];
    const double ratio = std::exp(between(std::log(rule.ratioLow), std::log(rule.ratioHigh)));
    Stage stage = reducerByRule(rule, ratio, around(80, 6));
    stage.name = "random";
    if (chance(0.2)) stage.outputInertia = 0.01;
    if (chance(0.2)) stage.dragDamping = 1e-4;
    if (chance(0.1)) stage.startingTorque = kUnset;
    if (chance(0.2)) stage.backdrivingEfficiency = chance(0.5) ? -0.1 : 0.5;
    if (chance(0.1)) stage.peakTorque = kUnset;
    stage.reverses = chance(0.3);
    return stage;
  }

  std::mt19937 random_;
};

}  // namespace jw

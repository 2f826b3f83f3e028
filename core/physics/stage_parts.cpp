#include "core/physics/stage_parts.h"

#include "core/physics/belt_drive.h"
#include "core/physics/cycloid_efficiency.h"
#include "core/physics/cycloid_forces.h"
#include "core/physics/gear_pair.h"
#include "core/physics/planetary_gear.h"
#include "core/physics/strain_wave.h"
#include "core/physics/traction_rollers.h"

namespace jw {
namespace {

// A turn of the crank repeats after one pin; a prime number of angles meets every phase of it.
constexpr int kCrankAngles = 61;

PartsData planetaryParts(const Stage& stage) {
  PartsData data;
  data.ratio = planetaryRatio(stage.planetary);
  data.inertia = planetaryInertia(stage.planetary, stage.toothing);
  return data;
}

PartsData gearPairParts(const Stage& stage) {
  PartsData data;
  data.ratio = gearPairRatio(stage.gearPair);
  data.reverses = true;
  // The output's wheel too, unless its inertia is given.
  if (const auto inertia = gearPairInertia(stage.gearPair, stage.toothing)) {
    data.inertia = stage.outputInertia == 0 ? inertia->atInput : inertia->input;
  }
  return data;
}

PartsData cycloidParts(const Stage& stage) {
  PartsData data;
  if (const auto found = cycloidRatio(stage.cycloid)) {
    data.ratio = found->ratio;
    data.reverses = found->reverses;
  }
  return data;
}

PartsData strainWaveParts(const Stage& stage) {
  PartsData data;
  data.ratio = strainWaveRatio(stage.strainWave);
  data.reverses = strainWaveReverses(stage.strainWave);
  return data;
}

PartsData tractionParts(const Stage& stage) {
  PartsData data;
  data.ratio = tractionRatio(stage.traction);
  if (const auto slip = slipTorque(stage.traction)) {
    data.slipTorque = slip->output;
    if (isSet(stage.traction.creepAtLimit)) data.creepAtSlip = stage.traction.creepAtLimit;
  }
  return data;
}

PartsData beltParts(const Stage& stage) {
  PartsData data;
  data.ratio = beltRatio(stage.belt);
  if (const auto found = beltStiffness(stage.belt)) data.stiffness = found->outputBoth;
  return data;
}

std::optional<StageEfficiency> cycloidFriction(const Stage& stage) {
  const auto found = cycloidEfficiency(stage.cycloid, kCrankAngles);
  if (!found || !(found->driving > 0)) return std::nullopt;
  StageEfficiency efficiency;
  efficiency.driving = found->driving;
  efficiency.backdriving = found->backdriving;
  efficiency.fromParts = true;
  return efficiency;
}

void append(GeometryConditions& all, const GeometryConditions& more) {
  all.insert(all.end(), more.begin(), more.end());
}

GeometryConditions cycloidalConditions(const Stage& stage, double outputTorque) {
  GeometryConditions all = cycloidConditions(stage.cycloid);
  if (!(outputTorque > 0)) return all;
  const auto forces = cycloidForces(stage.cycloid, stage.contact, outputTorque, kCrankAngles);
  if (forces) append(all, cycloidPressureConditions(*forces, stage.contact));
  return all;
}

}  // namespace

PartsData partsData(const Stage& stage) {
  switch (stage.family) {
    case StageFamily::Planetary: return planetaryParts(stage);
    case StageFamily::ParallelShaft: return gearPairParts(stage);
    case StageFamily::Cycloidal: return cycloidParts(stage);
    case StageFamily::StrainWave: return strainWaveParts(stage);
    case StageFamily::Traction: return tractionParts(stage);
    case StageFamily::Belt: return beltParts(stage);
    case StageFamily::Coupling: {
      PartsData data;
      data.ratio = 1;
      return data;
    }
    case StageFamily::GivenRatio: break;
  }
  return {};
}

std::optional<StageEfficiency> partsEfficiency(const Stage& stage) {
  switch (stage.family) {
    case StageFamily::Planetary:
      return planetaryEfficiency(stage.planetary, stage.toothing.meshEfficiency);
    case StageFamily::ParallelShaft: return gearPairEfficiency(stage.toothing);
    case StageFamily::Cycloidal: return cycloidFriction(stage);
    default: return std::nullopt;
  }
}

GeometryConditions geometryConditions(const StageData& data, double outputTorque) {
  const Stage& stage = data.stage;
  switch (stage.family) {
    case StageFamily::Planetary:
      return planetaryConditions(stage.planetary, stage.toothing, stage.contact, outputTorque);
    case StageFamily::ParallelShaft:
      return gearPairConditions(stage.gearPair, stage.toothing, stage.contact, outputTorque);
    case StageFamily::Cycloidal: return cycloidalConditions(stage, outputTorque);
    case StageFamily::StrainWave: return strainWaveConditions(stage.strainWave);
    case StageFamily::Traction: return tractionConditions(stage.traction, stage.contact);
    case StageFamily::Belt: return beltConditions(stage.belt, outputTorque);
    default: return {};
  }
}

}  // namespace jw

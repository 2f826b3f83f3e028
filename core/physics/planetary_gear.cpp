#include "core/physics/planetary_gear.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "core/physics/gear_teeth.h"
#include "core/physics/if_given.h"
#include "core/physics/willis.h"

namespace jw {
namespace {

double planetTeethOf(const PlanetSet& set) { return (set.ringTeeth - set.sunTeeth) / 2; }
double ratioOf(const PlanetSet& set) { return 1 + set.ringTeeth / set.sunTeeth; }
double basicRatioOf(const PlanetSet& set) { return -set.ringTeeth / set.sunTeeth; }

StageEfficiency efficiencyOf(const PlanetSet& set, double meshEfficiency) {
  const double i0 = basicRatioOf(set);
  const double eta0 = meshEfficiency * meshEfficiency;
  return {(1 - i0 * eta0) / (1 - i0), (1 - i0) / (1 - i0 / eta0), false, true};
}

std::optional<StageEfficiency> ifBothGiven(const StageEfficiency& efficiency) {
  return std::isfinite(efficiency.driving + efficiency.backdriving) ? std::optional(efficiency)
                                                                    : std::nullopt;
}

PlanetSetSpeeds speedsOf(const PlanetSet& set, double sunSpeed) {
  const auto speeds = willisSpeeds(basicRatioOf(set), {sunSpeed, 0, kUnset});
  if (!speeds) return {kUnset, kUnset, kUnset, kUnset};
  const double carrier = speeds->carrier;
  const double spin = -(sunSpeed - carrier) * set.sunTeeth / planetTeethOf(set);
  return {sunSpeed, carrier, carrier + spin, spin};
}

double meshForceOf(const PlanetSet& set, const Toothing& toothing, double loadSharing,
                   double sunTorque) {
  const double sharing = isSet(loadSharing) ? loadSharing : 1;
  return sharing * 2 * std::abs(sunTorque) / (set.planets * toothing.module * set.sunTeeth);
}

/// Per (rad/s)² of the sun.
double inertiaOf(const PlanetSet& set, const Toothing& toothing) {
  const PlanetSetSpeeds speeds = speedsOf(set, 1);
  const double sunDiameter = toothing.module * set.sunTeeth;
  const double planetDiameter = toothing.module * planetTeethOf(set);
  const double orbit = (sunDiameter + planetDiameter) / 2 * speeds.carrier;
  const double planet =
      wheelInertia(planetDiameter, toothing.faceWidth) * speeds.planet * speeds.planet +
      wheelMass(planetDiameter, toothing.faceWidth) * orbit * orbit;
  return wheelInertia(sunDiameter, toothing.faceWidth) + set.planets * planet;
}

}  // namespace

std::vector<PlanetSet> planetSets(const PlanetaryGeometry& geometry) {
  const PlanetSet all[] = {geometry.first, geometry.second, geometry.third};
  return {all, all + std::clamp(geometry.sets, 1, 3)};
}

std::optional<double> planetTeeth(const PlanetSet& set) { return ifGiven(planetTeethOf(set)); }

std::optional<double> planetSetRatio(const PlanetSet& set) { return ifGiven(ratioOf(set)); }

std::optional<double> planetaryRatio(const PlanetaryGeometry& geometry) {
  double ratio = 1;
  for (const PlanetSet& set : planetSets(geometry)) ratio *= ratioOf(set);
  return ifGiven(ratio);
}

std::optional<StageEfficiency> planetSetEfficiency(const PlanetSet& set, double meshEfficiency) {
  return ifBothGiven(efficiencyOf(set, meshEfficiency));
}

std::optional<StageEfficiency> planetaryEfficiency(const PlanetaryGeometry& geometry,
                                                   double meshEfficiency) {
  StageEfficiency all;
  all.fromParts = true;
  for (const PlanetSet& set : planetSets(geometry)) {
    const StageEfficiency one = efficiencyOf(set, meshEfficiency);
    all.driving *= one.driving;
    all.backdriving *= one.backdriving;
  }
  return ifBothGiven(all);
}

std::vector<PlanetSetSpeeds> planetarySpeeds(const PlanetaryGeometry& geometry, double inputSpeed) {
  std::vector<PlanetSetSpeeds> all;
  for (const PlanetSet& set : planetSets(geometry)) {
    all.push_back(speedsOf(set, inputSpeed));
    inputSpeed = all.back().carrier;
  }
  const bool given = std::all_of(all.begin(), all.end(), [](const PlanetSetSpeeds& s) {
    return std::isfinite(s.carrier + s.planet);
  });
  return given ? all : std::vector<PlanetSetSpeeds>{};
}

std::vector<double> sunTorques(const PlanetaryGeometry& geometry, const Toothing& toothing,
                               double outputTorque) {
  if (!planetaryRatio(geometry) || !isSet(outputTorque)) return {};
  const std::vector<PlanetSet> sets = planetSets(geometry);
  std::vector<double> torques(sets.size());
  for (std::size_t k = sets.size(); k-- > 0;) {
    const auto efficiency = planetSetEfficiency(sets[k], toothing.meshEfficiency);
    outputTorque /= ratioOf(sets[k]) * (efficiency ? efficiency->driving : 1);
    torques[k] = outputTorque;
  }
  return torques;
}

std::optional<double> planetMeshForce(const PlanetSet& set, const Toothing& toothing,
                                      double loadSharing, double sunTorque) {
  return ifGiven(meshForceOf(set, toothing, loadSharing, sunTorque));
}

std::optional<double> planetFlankPressure(const PlanetSet& set, const Toothing& toothing,
                                          const ContactMaterial& material, double loadSharing,
                                          double sunTorque) {
  const double share =
      meshForceOf(set, toothing, loadSharing, sunTorque) * toothing.module * set.sunTeeth / 2;
  return ifGiven(flankPressure({set.sunTeeth, planetTeethOf(set)}, toothing, material, share));
}

std::optional<double> planetaryInertia(const PlanetaryGeometry& geometry,
                                       const Toothing& toothing) {
  double inertia = 0;
  double ratio = 1;
  for (const PlanetSet& set : planetSets(geometry)) {
    inertia += inertiaOf(set, toothing) / (ratio * ratio);
    ratio *= ratioOf(set);
  }
  return ifGiven(inertia);
}

}  // namespace jw

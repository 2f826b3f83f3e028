// What sun, planets and ring have to satisfy.
#include <array>
#include <cmath>
#include <numbers>

#include "core/physics/gear_teeth.h"
#include "core/physics/planetary_gear.h"
#include "core/physics/whole_number_condition.h"

namespace jw {
namespace {

constexpr std::string_view kSource = "VDI 2157, from memory";

struct SetNames {
  std::string_view prefix, sun, ring, planets;
};

constexpr std::array<SetNames, 3> kNames{
    SetNames{"", "sunTeeth", "ringTeeth", "planets"},
    SetNames{"second set: ", "sunTeeth2", "ringTeeth2", "planets2"},
    SetNames{"third set: ", "sunTeeth3", "ringTeeth3", "planets3"}};

std::string labelled(const SetNames& names, std::string_view text) {
  return std::string(names.prefix) + std::string(text);
}

void addNeighbours(GeometryConditions& all, const PlanetSet& set, const SetNames& names,
                   double planet) {
  if (!(set.planets >= 2)) return;
  // In modules, from centre to centre against twice the tip radius of a planet.
  const double distance = (set.sunTeeth + planet) * std::sin(std::numbers::pi / set.planets);
  all.push_back({labelled(names, "neighbouring planets clear each other, in modules"), planet + 2,
                 distance, Quantity::Number, "1", names.planets, "geometry"});
}

void addTeeth(GeometryConditions& all, const PlanetSet& set, const Toothing& toothing,
              const SetNames& names) {
  const auto planet = planetTeeth(set);
  if (!planet) return;
  all.push_back(wholeNumberCondition(
      labelled(names, "ring and sun differ by an even number of teeth, coaxial"), *planet,
      names.ring, kSource));
  if (isSet(set.planets)) {
    all.push_back(wholeNumberCondition(labelled(names, "planets fit in evenly spread"),
                                       (set.sunTeeth + set.ringTeeth) / set.planets, names.planets,
                                       kSource));
  }
  addNeighbours(all, set, names, *planet);
  const bool sunIsSmaller = set.sunTeeth <= *planet;
  all.push_back({labelled(names, "teeth of the smaller of sun and planet, not undercut"),
                 leastTeeth(toothing), sunIsSmaller ? set.sunTeeth : *planet, Quantity::Number, "1",
                 sunIsSmaller ? names.sun : names.ring, "ISO 21771, from memory"});
}

}  // namespace

GeometryConditions planetaryConditions(const PlanetaryGeometry& geometry, const Toothing& toothing,
                                       const ContactMaterial& material, double outputTorque) {
  GeometryConditions all;
  const std::vector<PlanetSet> sets = planetSets(geometry);
  const std::vector<double> torques = sunTorques(geometry, toothing, outputTorque);
  for (std::size_t k = 0; k < sets.size(); ++k) {
    addTeeth(all, sets[k], toothing, kNames[k]);
    if (torques.empty() || !isSet(material.allowedPressure)) continue;
    const auto pressure =
        planetFlankPressure(sets[k], toothing, material, geometry.loadSharing, torques[k]);
    if (!pressure) continue;
    all.push_back({labelled(kNames[k], "pressure on the flanks of sun and planet"), *pressure,
                   material.allowedPressure, Quantity::Pressure, "MPa", "faceWidth",
                   "ISO 6336-2, from memory, all factors but Z_H and Z_E = 1"});
  }
  return all;
}

}  // namespace jw

// Planet sets with teeth, one or more in a row, and rollers in place of teeth.
#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>

#include <fmt/format.h>

#include "core/physics/gear_teeth.h"
#include "core/physics/planetary_gear.h"
#include "core/studies/drive_families.h"
#include "core/studies/drive_outlines.h"
#include "core/studies/involute_outline.h"

namespace jw::drive {
namespace {

using std::numbers::pi;
using Vector = Eigen::Vector2d;

struct SetKeys {
  const char* sun;
  const char* ring;
  const char* planets;
};
constexpr std::array<SetKeys, 3> kKeys{{{"sunTeeth", "ringTeeth", "planets"},
                                        {"sunTeeth2", "ringTeeth2", "planets2"},
                                        {"sunTeeth3", "ringTeeth3", "planets3"}}};

void checkSet(Needs& needs, const PlanetSet& set, const SetKeys& keys) {
  needs.positive(set.sunTeeth, keys.sun, "e.g. 20");
  needs.positive(set.ringTeeth, keys.ring, "e.g. 80");
  needs.positive(set.planets, keys.planets, "e.g. 3");
  if (!std::isfinite(set.sunTeeth) || !std::isfinite(set.ringTeeth)) return;
  const double twice = set.ringTeeth - set.sunTeeth;
  if (twice < 6)
    needs.add(fmt::format("{:.0f} leave no room for planets", set.ringTeeth), keys.ring,
              fmt::format("give at least {:.0f}", set.sunTeeth + 6));
  else if (std::fmod(twice, 2) != 0)
    needs.add(fmt::format("planets would have {:.1f} teeth", twice / 2), keys.ring,
              fmt::format("give {:.0f} or {:.0f}", set.ringTeeth - 1, set.ringTeeth + 1));
}

// One set of wheels, toothed or plain, about its own axis.
struct SetPlan {
  Vector axis{0, 0};
  double rate = 1;  // turning of the sun per turn of the stage's input
  double sun = 0;   // rolling radii [m]
  double ring = 0;
  double planets = 3;
  int group = 0;

  double planet() const { return (ring - sun) / 2; }
  double centreDistance() const { return (ring + sun) / 2; }
  double carrierRate() const { return rate * sun / (ring + sun); }
  double planetRate() const {  // the relation of the rolling circles, on the turning carrier
    return carrierRate() + sun / planet() * (carrierRate() - rate);
  }
};

DriveMotion about(const SetPlan& set, double turnStart, double turnRate) {
  return {.pivot = set.axis, .turnStart = turnStart, .turnRate = turnRate};
}

DriveMotion onCarrier(const SetPlan& set, double place, double turnStart, double turnRate) {
  return {.pivot = set.axis,
          .orbitRadius = set.centreDistance(),
          .orbitStart = place,
          .orbitRate = set.carrierRate(),
          .turnStart = turnStart,
          .turnRate = turnRate};
}

// The plate behind the planets.
DriveBody carrierPlate(const SetPlan& set) {
  const double radius = set.centreDistance() + 0.5 * set.planet();
  DriveBody body{.role = DriveRole::Output, .motion = about(set, 0, set.carrierRate())};
  body.outlines = {circle(radius)};
  body.marks = {spoke(0.88 * radius, radius, pi / set.planets)};
  return body;
}

DriveBody planetPin(const SetPlan& set, double place, double radius) {
  DriveBody body{.role = DriveRole::Output,
                 .motion = onCarrier(set, place, place, set.carrierRate())};
  body.outlines = {circle(radius)};
  return body;
}

struct SetBodies {
  DriveBody ring, sun;
  std::vector<DriveBody> planets;
  std::vector<double> places;
  double pinRadius = 0;
  std::string sunDetail, planetDetail, ringDetail;
};

void addLabels(DriveShapes& shapes, const SetPlan& set, const SetBodies& parts, std::size_t first,
               double ringReach) {
  const std::size_t n = parts.planets.size();
  std::vector<std::size_t> planets(n), pins(n);
  for (std::size_t k = 0; k < n; ++k) {
    planets[k] = first + 2 + k;
    pins[k] = first + 3 + n + k;
  }
  const auto deg = [](double angle) { return angle * pi / 180; };
  shapes.labels.push_back(
      {"ring", parts.ringDetail, DriveRole::Held, 0, {first}, deg(52), ringReach, set.group});
  shapes.labels.push_back({n > 1 ? "planets" : "planet", parts.planetDetail, DriveRole::Between,
                           set.planetRate(), planets, deg(15), 0.6 * set.planet(), set.group});
  shapes.labels.push_back({"sun",
                           parts.sunDetail,
                           DriveRole::Input,
                           set.rate,
                           {first + n + 2},
                           deg(-15),
                           0.55 * set.sun,
                           set.group});
  shapes.labels.push_back(
      {"carrier", "", DriveRole::Output, set.carrierRate(), pins, deg(-52), 0, set.group});
}

// Back to front: ring, plate, planets, sun, pins.
void addSet(DriveShapes& shapes, const SetPlan& set, SetBodies parts, double ringReach) {
  const std::size_t first = shapes.bodies.size();
  addLabels(shapes, set, parts, first, ringReach);
  shapes.bodies.push_back(std::move(parts.ring));
  shapes.bodies.push_back(carrierPlate(set));
  for (DriveBody& planet : parts.planets) shapes.bodies.push_back(std::move(planet));
  shapes.bodies.push_back(std::move(parts.sun));
  for (const double place : parts.places)
    shapes.bodies.push_back(planetPin(set, place, parts.pinRadius));
}

// Places on which a planet meshes are multiples of 2 pi/(z_s + z_r); the nearest to an even spread.
std::vector<double> planetPlaces(const PlanetSet& teeth) {
  const double whole = teeth.sunTeeth + teeth.ringTeeth;
  std::vector<double> places;
  for (int k = 0; k < int(std::lround(teeth.planets)); ++k)
    places.push_back(pi / 2 + 2 * pi * std::round(k * whole / teeth.planets) / whole);
  return places;
}

// Turn of a planet at `place` whose gap takes the tooth of a sun at angle 0.
double meshingTurn(double place, double sunTeeth, double planetTeeth) {
  return place + pi - pi / planetTeeth + sunTeeth / planetTeeth * place;
}

// Turn of a ring whose gap takes the tooth of a planet turned by `turn` at `place`.
double ringTurn(double place, double turn, double planetTeeth, double ringTeeth) {
  return place - (planetTeeth * (place - turn) - pi) / ringTeeth;
}

SetBodies toothedSet(const SetPlan& set, const PlanetSet& teeth, const ToothForm& form) {
  ToothForm sun = form, planet = form, ring = form;
  sun.teeth = teeth.sunTeeth;
  ring.teeth = teeth.ringTeeth;
  planet.teeth = (teeth.ringTeeth - teeth.sunTeeth) / 2;
  SetBodies parts;
  parts.places = planetPlaces(teeth);
  for (const double place : parts.places) {
    const double turn = meshingTurn(place, sun.teeth, planet.teeth);
    parts.planets.push_back(
        gearBody(planet, DriveRole::Between, onCarrier(set, place, turn, set.planetRate())));
  }
  const double firstTurn = meshingTurn(parts.places.front(), sun.teeth, planet.teeth);
  parts.sun = gearBody(sun, DriveRole::Input, about(set, 0, set.rate));
  parts.ring = {
      .role = DriveRole::Held,
      .motion = about(set, ringTurn(parts.places.front(), firstTurn, planet.teeth, ring.teeth), 0)};
  const double rim = internalRootRadius(ring) + std::max(2 * form.module, 0.06 * set.ring);
  parts.ring.outlines = {circle(rim), internalTeeth(ring)};
  parts.pinRadius = 0.3 * externalRootRadius(planet);
  parts.sunDetail = count(sun.teeth, "teeth");
  parts.planetDetail = fmt::format("{:.0f} \u00d7 {}", teeth.planets, count(planet.teeth, "teeth"));
  parts.ringDetail = count(ring.teeth, "teeth");
  return parts;
}

DriveBody plainWheel(double radius, DriveRole role, const DriveMotion& motion) {
  DriveBody body{.role = role, .motion = motion};
  body.outlines = {circle(radius), circle(0.3 * radius)};
  body.marks = {spoke(0.3 * radius, radius)};
  return body;
}

SetBodies rollerSet(const SetPlan& set) {
  SetBodies parts;
  for (int k = 0; k < int(std::lround(set.planets)); ++k) {
    parts.places.push_back(pi / 2 + 2 * pi * k / set.planets);
    parts.planets.push_back(
        plainWheel(set.planet(), DriveRole::Between,
                   onCarrier(set, parts.places.back(), parts.places.back(), set.planetRate())));
  }
  parts.sun = plainWheel(set.sun, DriveRole::Input, about(set, 0, set.rate));
  parts.ring = {.role = DriveRole::Held, .motion = about(set, 0, 0)};
  parts.ring.outlines = {circle(1.12 * set.ring), circle(set.ring)};
  parts.pinRadius = 0.3 * set.planet();
  const auto diameter = [](double radius) {
    return fmt::format("\u00d8 {:.4g} mm", 2000 * radius);
  };
  parts.sunDetail = diameter(set.sun);
  parts.planetDetail = fmt::format("{:.0f} \u00d7 {}", set.planets, diameter(set.planet()));
  parts.ringDetail = diameter(set.ring);
  return parts;
}

void remarkOnSpread(DriveShapes& shapes, const PlanetSet& teeth, const std::string& set) {
  if (std::fmod(teeth.sunTeeth + teeth.ringTeeth, teeth.planets) == 0) return;
  shapes.remarks.push_back(
      fmt::format("{}{:.0f} planets cannot be spread evenly: (z_s + z_r)/n_p is not whole. They "
                  "stand where they mesh.",
                  set, teeth.planets));
}

}  // namespace

Result planetary(const Stage& stage, const std::string& path) {
  const std::vector<PlanetSet> sets = planetSets(stage.planetary);
  Needs needs(path);
  for (std::size_t k = 0; k < sets.size(); ++k) checkSet(needs, sets[k], kKeys[k]);
  if (!needs.met()) return needs.errors();
  DriveShapes shapes;
  ToothForm form;
  form.module = moduleOf(stage.toothing, shapes);
  form.pressureAngle = normalPressureAngle(stage.toothing);
  double rate = 1;
  double right = 0;
  for (std::size_t k = 0; k < sets.size(); ++k) {
    SetPlan set{.rate = rate,
                .sun = form.module * sets[k].sunTeeth / 2,
                .ring = form.module * sets[k].ringTeeth / 2,
                .planets = sets[k].planets,
                .group = int(k)};
    const double reach = set.ring + 1.25 * form.module + std::max(2 * form.module, 0.06 * set.ring);
    set.axis.x() = k == 0 ? 0 : right + 1.08 * reach;
    right = set.axis.x() + 1.08 * reach;
    addSet(shapes, set, toothedSet(set, sets[k], form), (reach + set.ring) / 2);
    remarkOnSpread(shapes, sets[k], sets.size() > 1 ? fmt::format("Set {}: ", k + 1) : "");
    rate = set.carrierRate();
  }
  shapes.groups = int(sets.size());
  shapes.ratio = 1 / rate;
  shapes.ratioFormula = sets.size() == 1 ? "1 + z_r/z_s" : "product of 1 + z_r/z_s";
  return shapes;
}

Result rollers(const Stage& stage, const std::string& path) {
  const TractionGeometry& g = stage.traction;
  Needs needs(path);
  needs.positive(g.sunDiameter, "sunDiameter", "e.g. 20 mm");
  needs.positive(g.ringDiameter, "ringDiameter", "e.g. 80 mm");
  needs.positive(g.rollers, "rollers", "e.g. 3");
  if (needs.met() && g.ringDiameter <= g.sunDiameter)
    needs.add("leaves no room for rollers", "ringDiameter", "give more than the sun's diameter");
  if (!needs.met()) return needs.errors();
  DriveShapes shapes;
  const SetPlan set{.sun = g.sunDiameter / 2, .ring = g.ringDiameter / 2, .planets = g.rollers};
  addSet(shapes, set, rollerSet(set), 1.06 * set.ring);
  shapes.labels[1].name = g.rollers > 1 ? "rollers" : "roller";
  shapes.labels[2].name = "sun roller";
  shapes.ratio = 1 / set.carrierRate();
  shapes.ratioFormula = "1 + d_r/d_s";
  return shapes;
}

}  // namespace jw::drive

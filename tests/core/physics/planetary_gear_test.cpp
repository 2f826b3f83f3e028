// Sets of sun, planets and ring: what the formulas say of each other, and wheels cut into pieces.
#include <cmath>
#include <numbers>

#include <gtest/gtest.h>

#include "core/physics/gear_teeth.h"
#include "core/physics/planetary_gear.h"
#include "core/physics/willis.h"
#include "tests/core/physics/conditions_support.h"

namespace jw {
namespace {

using std::numbers::pi;

constexpr PlanetSet kSet{24, 72, 3};

PlanetaryGeometry geometryOf(int sets) {
  PlanetaryGeometry geometry;
  geometry.sets = sets;
  geometry.first = kSet;
  geometry.second = {21, 93, 3};
  geometry.third = {30, 60, 5};
  return geometry;
}

Toothing toothingOf() {
  Toothing toothing;
  toothing.module = 1e-3;
  toothing.faceWidth = 12e-3;
  return toothing;
}

TEST(PlanetaryGear, RatioOfSpeedsIsRatioOfTeeth) {
  for (const int sets : {1, 2, 3}) {
    const PlanetaryGeometry geometry = geometryOf(sets);
    const auto speeds = planetarySpeeds(geometry, 300);
    ASSERT_EQ(speeds.size(), static_cast<std::size_t>(sets));
    EXPECT_NEAR(300 / speeds.back().carrier, *planetaryRatio(geometry), 1e-12);
  }
  // Own arithmetic: (1 + 72/24) (1 + 93/21) (1 + 60/30).
  EXPECT_NEAR(*planetaryRatio(geometryOf(3)), 4 * 114.0 / 21 * 3, 1e-12);
}

// Rolling without slip, own: at both pitch points the planet's surface moves as the wheel's does.
TEST(PlanetaryGear, PitchCirclesRollWithoutSlip) {
  const PlanetSetSpeeds speeds = planetarySpeeds(geometryOf(1), 100).front();
  const double sun = 12, planet = 12;  // pitch radii in modules
  const double centre = speeds.carrier * (sun + planet);
  EXPECT_NEAR(centre - speeds.planet * planet, speeds.sun * sun, 1e-10);
  EXPECT_NEAR(centre + speeds.planet * planet, 0, 1e-10);
  EXPECT_NEAR(speeds.planetOnCarrier, speeds.planet - speeds.carrier, 1e-12);
}

// Power of input, output and held ring together is what friction takes; own, from the torques of
// Willis's train.
TEST(PlanetaryGear, PowerBalancesBothWays) {
  const double mesh = 0.985, eta0 = mesh * mesh;
  const StageEfficiency efficiency = *planetSetEfficiency(kSet, mesh);
  const EpicyclicSpeeds speeds = *willisSpeeds(-3, {200, 0, kUnset});
  for (const double torque : {5.0, -5.0}) {
    const EpicyclicTorques t = willisTorques(-3, eta0, torque, speeds);
    EXPECT_NEAR(t.first + t.second + t.carrier, 0, 1e-12);
    const double in = t.first * speeds.first;
    const double out = t.carrier * speeds.carrier;
    const double held = t.second * speeds.second;
    const double rolling = std::abs(t.first * (speeds.first - speeds.carrier));
    EXPECT_EQ(held, 0);
    EXPECT_NEAR(in + out + held, torque > 0 ? rolling * (1 - eta0) : rolling * (1 / eta0 - 1),
                1e-9);
    EXPECT_NEAR(torque > 0 ? -out / in : -in / out,
                torque > 0 ? efficiency.driving : efficiency.backdriving, 1e-14);
  }
}

TEST(PlanetaryGear, EfficienciesOfSetsMultiply) {
  const PlanetaryGeometry geometry = geometryOf(2);
  const StageEfficiency both = *planetaryEfficiency(geometry, 0.99);
  const StageEfficiency first = *planetSetEfficiency(geometry.first, 0.99);
  const StageEfficiency second = *planetSetEfficiency(geometry.second, 0.99);
  EXPECT_NEAR(both.driving, first.driving * second.driving, 1e-15);
  EXPECT_NEAR(both.backdriving, first.backdriving * second.backdriving, 1e-15);
  EXPECT_FALSE(both.backdrivingEstimated);
  EXPECT_TRUE(both.fromParts);
  EXPECT_EQ(planetaryEfficiency(geometry, 1)->driving, 1);
}

TEST(PlanetaryGear, NothingFromWhatIsNotGiven) {
  const PlanetaryGeometry none;
  EXPECT_FALSE(planetaryRatio(none));
  EXPECT_FALSE(planetTeeth(none.first));
  EXPECT_FALSE(planetaryEfficiency(none, 0.99));
  EXPECT_FALSE(planetaryEfficiency(geometryOf(1), kUnset));
  EXPECT_TRUE(planetarySpeeds(none, 1).empty());
  EXPECT_TRUE(planetaryConditions(none, {}, {}, 10).empty());
  EXPECT_FALSE(planetaryInertia(geometryOf(1), {}));
  EXPECT_FALSE(planetMeshForce(kSet, {}, kUnset, 1));
  PlanetaryGeometry half = geometryOf(2);
  half.second.ringTeeth = kUnset;
  EXPECT_FALSE(planetaryRatio(half));
  half.sets = 1;
  EXPECT_TRUE(planetaryRatio(half));
}

TEST(PlanetaryGear, GoodSetsHold) {
  EXPECT_EQ(planetaryConditions(geometryOf(3), {}, {}, kUnset).size(), 12U);
  PlanetaryGeometry geometry = geometryOf(2);
  EXPECT_TRUE(allHold(planetaryConditions(geometry, {}, {}, kUnset)));
}

TEST(PlanetaryGear, WholeNumberConditions) {
  PlanetaryGeometry geometry = geometryOf(1);
  geometry.first = {24, 73, 3};
  const auto odd = planetaryConditions(geometry, {}, {}, kUnset);
  EXPECT_FALSE(conditionWith(odd, "coaxial").holds());
  EXPECT_EQ(conditionWith(odd, "coaxial").demand, 1);
  EXPECT_EQ(conditionWith(odd, "coaxial").capacity, 0);
  EXPECT_FALSE(conditionWith(odd, "evenly spread").holds());
  EXPECT_EQ(conditionWith(odd, "evenly spread").field, "planets");
}

// Own, planets set down on the circle of their axes and measured: clear as long as the tip circles,
// one module outside the pitch circles, keep apart.
TEST(PlanetaryGear, NeighboursAsMeasuredOnTheCircle) {
  int clear = 0;
  for (int planets = 2; planets <= 9; ++planets) {
    PlanetaryGeometry geometry = geometryOf(1);
    geometry.first.planets = planets;
    const double radius = 24;  // (24 + 24)/2 modules
    const double angle = 2 * pi / planets;
    const double apart = std::hypot(radius * std::cos(angle) - radius, radius * std::sin(angle));
    const bool holds =
        conditionWith(planetaryConditions(geometry, {}, {}, kUnset), "neighbouring").holds();
    EXPECT_EQ(holds, apart >= 2 * (24.0 / 2 + 1)) << planets;
    clear += holds;
  }
  EXPECT_EQ(clear, 4);  // two to five
}

// Own: sun and planets of these wheels cut into rings and sectors, each piece with the speed of the
// rigid body it belongs to; kinetic energy at 1 rad/s = J/2.
TEST(PlanetaryGear, InertiaFromTheEnergyOfPieces) {
  const PlanetaryGeometry geometry = geometryOf(1);
  const PlanetSetSpeeds speeds = planetarySpeeds(geometry, 1).front();
  const double radius = 12e-3, orbit = 24e-3, width = 12e-3;
  const auto energy = [&](double centreSpeed, double spin) {
    double sum = 0;
    for (int i = 0; i < 400; ++i) {
      const double r = radius * (i + 0.5) / 400;
      for (int k = 0; k < 100; ++k) {
        const double a = 2 * pi * k / 100;
        const double mass = 7850 * width * r * (radius / 400) * (2 * pi / 100);
        const double vx = -spin * r * std::sin(a), vy = centreSpeed + spin * r * std::cos(a);
        sum += mass * (vx * vx + vy * vy) / 2;
      }
    }
    return sum;
  };
  const double all = energy(0, 1) + 3 * energy(orbit * speeds.carrier, speeds.planet);
  EXPECT_NEAR(*planetaryInertia(geometry, toothingOf()), 2 * all, 2 * all * 1e-5);
}

TEST(PlanetaryGear, InertiaOfLaterSetsCountsByTheSquareOfTheRatio) {
  const PlanetaryGeometry two = geometryOf(2);
  PlanetaryGeometry second = geometryOf(1);
  second.first = two.second;
  const double expected =
      *planetaryInertia(geometryOf(1), toothingOf()) + *planetaryInertia(second, toothingOf()) / 16;
  EXPECT_NEAR(*planetaryInertia(two, toothingOf()), expected, expected * 1e-12);
}

// ISO 6336-2, from memory: Z_E = 189.8 sqrt(N/mm²) for steel on steel, Z_H = 2.495 for spur teeth
// at 20 deg. 6 N·m on the sun, 3 planets, d = 24 mm: 2 N·m on one mesh, 166.67 N; b = 12 mm, u = 1.
TEST(PlanetaryGear, FlankPressureInTheStandardsForm) {
  const double force = 2 * 2e3 / 24;
  const double expected = 189.8 * 2.495 * std::sqrt(force / (24 * 12) * 2);
  EXPECT_NEAR(*planetFlankPressure(kSet, toothingOf(), {}, kUnset, 6), expected * 1e6,
              expected * 1e6 * 3e-4);
  EXPECT_NEAR(*planetMeshForce(kSet, toothingOf(), kUnset, 6), force, 1e-9);
  EXPECT_NEAR(*planetMeshForce(kSet, toothingOf(), 1.2, -6), 1.2 * force, 1e-9);
}

TEST(PlanetaryGear, PressureConditionOfEverySet) {
  ContactMaterial material;
  material.allowedPressure = 1.2e9;
  Toothing toothing = toothingOf();
  const PlanetaryGeometry geometry = geometryOf(2);
  const auto torques = sunTorques(geometry, toothing, 100);
  EXPECT_NEAR(torques[0] * *planetaryRatio(geometry), 100, 1e-12);
  EXPECT_NEAR(torques[1] * *planetSetRatio(geometry.second), 100, 1e-12);
  const auto all = planetaryConditions(geometry, toothing, material, 100);
  const GeometryCondition second = conditionWith(all, "second set: pressure");
  EXPECT_NEAR(second.demand,
              *planetFlankPressure(geometry.second, toothing, material, kUnset, torques[1]), 1);
  EXPECT_EQ(second.capacity, 1.2e9);
  toothing.meshEfficiency = 0.98;
  const auto lossy = sunTorques(geometry, toothing, 100);
  EXPECT_NEAR(100 / (lossy[0] * *planetaryRatio(geometry)),
              planetaryEfficiency(geometry, 0.98)->driving, 1e-12);
}

}  // namespace
}  // namespace jw

// Epicyclic trains of textbooks. KG = Khurmi and Gupta, Theory of Machines, and T. Bevan, The
// Theory of Machines, both read second-hand in the textbook companions of the FOSSEE project.
#include <cmath>
#include <numbers>

#include <gtest/gtest.h>

#include "core/physics/gear_pair.h"
#include "core/physics/gear_teeth.h"
#include "core/physics/planetary_gear.h"
#include "core/physics/willis.h"
#include "tests/core/physics/conditions_support.h"

namespace jw {
namespace {

constexpr double kRpm = std::numbers::pi / 30;

double first(double basicRatio, double second, double carrier) {
  return willisSpeeds(basicRatio, {kUnset, second, carrier})->first;
}
double second(double basicRatio, double firstSpeed, double carrier) {
  return willisSpeeds(basicRatio, {firstSpeed, kUnset, carrier})->second;
}
double carrier(double basicRatio, double firstSpeed, double secondSpeed) {
  return willisSpeeds(basicRatio, {firstSpeed, secondSpeed, kUnset})->carrier;
}

// KG ex. 13.6: ring 72 fixed, sun 32, carrier 18 rpm: sun +58.5, planet (20 teeth) -46.8 rpm.
TEST(PublishedEpicyclic, SunAndPlanetFromTheCarrier) {
  PlanetaryGeometry geometry;
  geometry.first = {32, 72, 3};
  EXPECT_EQ(*planetTeeth(geometry.first), 20);
  const PlanetSetSpeeds speeds = planetarySpeeds(geometry, 18 * *planetaryRatio(geometry)).front();
  EXPECT_NEAR(speeds.carrier, 18, 1e-12);
  EXPECT_NEAR(speeds.sun, 58.5, 1e-12);
  EXPECT_NEAR(speeds.planet, -46.8, 1e-12);
}

// KG ex. 13.7: sun 40, ring 90. Sun +1, ring -1/2 turn: carrier -0.04 (5/130); ring held: 0.3077.
TEST(PublishedEpicyclic, TurningRing) {
  EXPECT_NEAR(carrier(-90.0 / 40, 1, -0.5), -5.0 / 130, 1e-12);
  EXPECT_NEAR(carrier(-90.0 / 40, 1, 0), 0.3077, 5e-5);
}

// KG ex. 13.20: sun : carrier = 5, sun 16, ring held, 100 N·m on the sun: ring 64, planet 24, ring
// reaction 400 N·m. Modelica Standard Library, IdealPlanetary (read): tau_ring = r tau_sun,
// tau_carrier = -(1 + r) tau_sun, r = z_r/z_s.
TEST(PublishedEpicyclic, TorqueThatHoldsTheRing) {
  const PlanetSet set{16, 64, 4};
  EXPECT_EQ(*planetSetRatio(set), 5);
  EXPECT_EQ(*planetTeeth(set), 24);
  const EpicyclicTorques torques = willisTorques(-4, 1, 100, {50, 0, 10});
  EXPECT_NEAR(torques.second, 400, 1e-12);
  EXPECT_NEAR(torques.carrier, -500, 1e-12);
  EXPECT_EQ(*planetTeeth({50, 100, 3}), 25);  // the library's example, r = 2
}

// KG ex. 13.10: sun 50, compound planet 20/35, ring 105 fixed, sun 110 rpm: carrier 50 rpm.
TEST(PublishedEpicyclic, CompoundPlanet) {
  EXPECT_NEAR(carrier(-20.0 / 50 * 105 / 35, 110, 0), 50, 1e-12);
}

// KG ex. 13.8: rings A 64 and B 62 about wheels C 28 and D 26 on one shaft, planets of 18 each, arm
// at 100 rpm: A fixed, B 4.1 rpm (4.1475); A at -10 rpm, B -5.4 rpm (-5.4378).
TEST(PublishedEpicyclic, TwoRings) {
  const auto ringB = [](double ringA) {
    const double wheels = first(-64.0 / 28, ringA, 100);
    return second(-62.0 / 26, wheels, 100);
  };
  EXPECT_NEAR(ringB(0), 4.1475, 5e-5);
  EXPECT_NEAR(ringB(-10), -5.4378, 5e-5);
}

// KG ex. 13.13: one wheel in mesh with 100 (fixed), 101 and 99 teeth, one turn of the carrier:
// +0.0099 and -0.0101 turns.
TEST(PublishedEpicyclic, OneToothMoreAndLess) {
  EXPECT_NEAR(first(100.0 / 101, 0, 1), 1.0 / 101, 1e-15);
  EXPECT_NEAR(first(100.0 / 99, 0, 1), -1.0 / 99, 1e-15);
}

// KG ex. 13.17: sun 20 and fixed ring 80, compound planet 32/30, driven ring 80, 1000 rpm: 12.5
// rpm; with the first ring at +10 rpm 22.4 rpm (22.375).
TEST(PublishedEpicyclic, EightyToOne) {
  const auto driven = [](double ring) {
    const double arm = carrier(-80.0 / 20, 1000, ring);
    return second(80.0 / 80 * 32 / 30, ring, arm);
  };
  EXPECT_NEAR(driven(0), 12.5, 1e-10);
  EXPECT_NEAR(driven(10), 22.375, 1e-10);
}

// KG ex. 13.21: sun 14, ring 100 fixed, planet 43 compound with 41 against a driven ring of 98,
// 1200 rpm, 1.85 kW. Exact 3.98671 rpm and 4416.55 N·m on the fixed ring (the book's 4 rpm and
// 4401.8 N·m are rounded).
TEST(PublishedEpicyclic, ThreeHundredToOne) {
  const double arm = carrier(-100.0 / 14, 1200, 0);
  const double out = second(43.0 / 100 * 98 / 41, 0, arm);
  EXPECT_NEAR(1200 / out, 301, 1e-9);
  EXPECT_NEAR(1850 / (out * kRpm) - 1850 / (1200 * kRpm), 4416.55, 5e-3);
}

// KG ex. 13.22: D 25 held, C 20, B 15, A 60; A at 740 rad/s with 130 kW: X 563.8 rad/s, 54.9 N·m
// hold D.
TEST(PublishedEpicyclic, HeldWheel) {
  const double basic = -25.0 / 20 * 15 / 60;
  const double x = carrier(basic, 740, 0);
  EXPECT_NEAR(x, 563.8, 0.05);
  EXPECT_NEAR(willisTorques(basic, 1, 130e3 / 740, {740, 0, x}).second, 54.9, 0.05);
}

// KG ex. 13.24: 34, 150 fixed, planet 50 compound with 38 against 120 driven, 500 rpm, 7.5 kW:
// exact 4.61957 rpm, 15.504 kN·m (the book's 15.468 is rounded).
TEST(PublishedEpicyclic, HundredAndEightToOne) {
  const double arm = carrier(-150.0 / 34, 500, 0);
  const double out = second(50.0 / 150 * 120 / 38, 0, arm);
  EXPECT_NEAR(out, 4.61957, 5e-6);
  EXPECT_NEAR(7500 / (out * kRpm), 15504, 0.5);
}

// KG ex. 13.1: 20/50, 25/75, 26/65 from 975 rpm: 52 rpm.
TEST(PublishedEpicyclic, ThreeSpurPairs) {
  double speed = 975;
  for (const auto& [pinion, gear] : {std::pair{20, 50}, {25, 75}, {26, 65}}) {
    GearPairGeometry pair;
    pair.pinionTeeth = pinion;
    pair.gearTeeth = gear;
    speed /= *gearPairRatio(pair);
  }
  EXPECT_NEAR(speed, 52, 1e-12);
}

// Bevan ch. 11 ex. 5: 27-30, 24-21, arm over wheel 4.71 (4.70588). Ex. 6: 75-18, 17-71, arm 500
// rpm: 1.174 rpm; with the first wheel at 100 rpm 100.9 rpm.
TEST(PublishedEpicyclic, CoupledTrains) {
  EXPECT_NEAR(1 / first(27.0 / 30 * 21 / 24, 0, 1), 4.70588, 5e-6);
  const double basic = 75.0 / 18 * 17 / 71;
  EXPECT_NEAR(first(basic, 0, 500), 1.174, 5e-4);
  EXPECT_NEAR(first(basic, 100, 500), 100.9, 0.05);
}

// VDI 2157 type formulas, from memory; numbers own arithmetic. 16/64, 0.98: ratio 5, 0.984000
// driving, 0.983936 driven back; 20/80, 0.97; 24/72, 0.9801; 12/72, 0.98.
TEST(PublishedEpicyclic, EfficiencyFromTheBasicOne) {
  struct Case {
    double sun, ring, basic, driving, back;
  };
  for (const Case& c :
       {Case{16, 64, 0.98, 0.984, 0.983936}, Case{20, 80, 0.97, 0.976, 0.975855},
        Case{24, 72, 0.9801, 0.985075, 0.985}, Case{12, 72, 0.98, 0.982857, 0.982808}}) {
    const auto efficiency = planetSetEfficiency({c.sun, c.ring, 3}, std::sqrt(c.basic));
    EXPECT_NEAR(efficiency->driving, c.driving, 5.1e-7);
    EXPECT_NEAR(efficiency->backdriving, c.back, 5.1e-7);
  }
}

bool spreads(double sun, double ring, double planets) {
  PlanetaryGeometry geometry;
  geometry.first = {sun, ring, planets};
  return conditionWith(planetaryConditions(geometry, {}, {}, kUnset), "evenly spread").holds();
}

// (z_s + z_r)/n whole, from memory; numbers own: 16 + 64 and 20 + 80 take 4, not 3; 24 + 72
// takes 3.
TEST(PublishedEpicyclic, EvenlySpreadPlanets) {
  EXPECT_TRUE(spreads(16, 64, 4));
  EXPECT_FALSE(spreads(16, 64, 3));
  EXPECT_TRUE(spreads(20, 80, 4));
  EXPECT_FALSE(spreads(20, 80, 3));
  EXPECT_TRUE(spreads(24, 72, 3));
}

// Bevan ch. 10 ex. 4: least teeth on a 20 deg full-depth pinion for a rack: 17.097, so 18.
TEST(PublishedEpicyclic, LeastTeethForARack) {
  EXPECT_NEAR(leastTeeth({}), 17.097, 5e-4);
  EXPECT_EQ(std::ceil(leastTeeth({})), 18);
}

}  // namespace
}  // namespace jw

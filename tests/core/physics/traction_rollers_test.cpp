// Rollers between sun and ring: slip, creep, pressure, passes and life.
#include <cmath>
#include <numbers>

#include <gtest/gtest.h>

#include "core/physics/traction_rollers.h"
#include "core/physics/willis.h"
#include "tests/core/physics/conditions_support.h"

namespace jw {
namespace {

using std::numbers::pi;

TractionGeometry rollersOf() {
  TractionGeometry geometry;
  geometry.sunDiameter = 20e-3;
  geometry.ringDiameter = 80e-3;
  geometry.rollers = 3;
  geometry.rollerWidth = 10e-3;
  geometry.contactForce = 2000;
  geometry.tractionCoefficient = 0.06;
  geometry.creepAtLimit = 0.02;
  geometry.contactRating = 20e3;
  return geometry;
}

// Own arithmetic: 1 + 80/20; (80 - 20)/2 = 30 mm; 3 · 0.06 · 2000 N · 10 mm = 3.6 N·m, 18 out.
TEST(TractionRollers, RatioSizesSlip) {
  EXPECT_EQ(*tractionRatio(rollersOf()), 5);
  EXPECT_NEAR(*rollerDiameter(rollersOf()), 30e-3, 1e-15);
  EXPECT_NEAR(slipTorque(rollersOf())->input, 3.6, 1e-12);
  EXPECT_NEAR(slipTorque(rollersOf())->output, 18, 1e-12);
  const auto speeds = willisSpeeds(-80.0 / 20, {1, 0, kUnset});
  EXPECT_NEAR(1 / speeds->carrier, *tractionRatio(rollersOf()), 1e-12);
}

TEST(TractionRollers, CreepGrowsWithLoadUpToSlip) {
  EXPECT_EQ(*creepAt(rollersOf(), 0), 0);
  EXPECT_NEAR(*creepAt(rollersOf(), 9), 0.01, 1e-12);
  EXPECT_NEAR(*creepAt(rollersOf(), -9), 0.01, 1e-12);
  EXPECT_NEAR(*creepAt(rollersOf(), 17.999999), 0.02, 1e-8);
  EXPECT_EQ(*creepAt(rollersOf(), 18.1), 1);
  EXPECT_NEAR(*creepEfficiency(rollersOf(), 9), 0.99, 1e-12);
  EXPECT_EQ(*creepEfficiency(rollersOf(), 18.1), 0);
}

// Torque passes whole, speed is lost: what comes out of what goes in is 1 - creep.
TEST(TractionRollers, EfficiencyIsThePowerLeft) {
  const double inputSpeed = 100, outputTorque = 12;
  const double inputTorque = outputTorque / *tractionRatio(rollersOf());
  const double outputSpeed =
      inputSpeed / *tractionRatio(rollersOf()) * (1 - *creepAt(rollersOf(), outputTorque));
  EXPECT_NEAR(outputTorque * outputSpeed / (inputTorque * inputSpeed),
              *creepEfficiency(rollersOf(), outputTorque), 1e-14);
}

// Boresi and Schmidt, Advanced Mechanics of Materials, ch. 17 ex. 3 (read second-hand in the
// companions of the FOSSEE project; 1445 in the book, 1447.04 recomputed): cylinders of radius
// 40 mm, 20 mm long, 24.1 kN, 200 GPa, 0.29. A sun of 80 mm and rollers as large are these.
TEST(TractionRollers, PressureOfTwoEqualCylinders) {
  TractionGeometry geometry = rollersOf();
  geometry.sunDiameter = 80e-3;
  geometry.ringDiameter = 240e-3;
  geometry.rollerWidth = 20e-3;
  geometry.contactForce = 24.1e3;
  ContactMaterial material;
  material.elasticModulus = 200e9;
  material.poissonRatio = 0.29;
  const TractionPressure pressure = *tractionPressure(geometry, material);
  EXPECT_NEAR(pressure.sun / 1e6, 1447.04, 5e-3);
  // Own: 1/40 + 1/40 against 1/40 - 1/120 per mm, the pressure goes with the root.
  EXPECT_NEAR(pressure.ring / pressure.sun, std::sqrt((1.0 / 40 - 1.0 / 120) / (2.0 / 40)), 1e-12);
}

/// Times that a place on a body turning at `speed` is met by one of `others` evenly spread places
/// that turn at `otherSpeed`, while the sun makes `turns` turns; counted step by step.
int meetings(double speed, double otherSpeed, int others, int turns) {
  int count = 0;
  constexpr int kSteps = 720;
  for (int k = 0; k < others; ++k) {
    double before = -0.25 - static_cast<double>(k) / others;
    for (int i = 1; i <= turns * kSteps; ++i) {
      const double now = -0.25 - static_cast<double>(k) / others +
                         (speed - otherSpeed) * static_cast<double>(i) / kSteps;
      count += std::floor(now) != std::floor(before);
      before = now;
    }
  }
  return count;
}

// Own, counted: 1000 turns of the sun, carrier at a fifth. A place of a roller meets the sun and
// the ring once in each of its turns on the axle.
TEST(TractionRollers, PassesAsCounted) {
  const ContactPasses passes = *contactPasses(rollersOf());
  EXPECT_NEAR(passes.sun * 1000, meetings(1, 0.2, 3, 1000), 3);
  const double rollerTurns = -(1 - 0.2) * 20 / 30;
  EXPECT_NEAR(passes.roller * 1000, 2 * meetings(rollerTurns, 0, 1, 1000), 2);
  EXPECT_EQ(passes.most(), passes.sun);
}

// ISO 281's exponent for line contact, 10/3: at a tenth of the rating 10^(10/3) = 2154.4347 million
// passes; 2.4 of them in a turn of the sun, 50 turns/s. Own arithmetic.
TEST(TractionRollers, Life) {
  const double seconds = 2154.4347e6 / (2.4 * 50);
  EXPECT_NEAR(*tractionLife(rollersOf(), 50 * 2 * pi), seconds, seconds * 1e-7);
  EXPECT_NEAR(*tractionLife(rollersOf(), -100 * 2 * pi), seconds / 2, seconds * 1e-7);
  TractionGeometry loaded = rollersOf();
  loaded.contactForce *= 2;
  EXPECT_NEAR(*tractionLife(loaded, 50 * 2 * pi) / *tractionLife(rollersOf(), 50 * 2 * pi),
              std::pow(0.5, 10.0 / 3), 1e-12);
  EXPECT_FALSE(tractionLife(rollersOf(), 0));
}

// Own: rollers of 30 mm on a circle of 50 mm: five are 29.39 mm apart and touch, four do not.
TEST(TractionRollers, Conditions) {
  ContactMaterial material;
  material.allowedPressure = 2e9;
  TractionGeometry geometry = rollersOf();
  for (const auto& [rollers, clear] : {std::pair{3, true}, {4, true}, {5, false}, {6, false}}) {
    geometry.rollers = rollers;
    EXPECT_EQ(conditionWith(tractionConditions(geometry, material), "neighbouring").holds(), clear);
  }
  EXPECT_NEAR(conditionWith(tractionConditions(geometry, material), "neighbouring").capacity,
              50e-3 * std::sin(pi / 6), 1e-15);
  EXPECT_TRUE(conditionWith(tractionConditions(geometry, material), "pressure").holds());
  geometry.contactForce = 200e3;
  EXPECT_FALSE(conditionWith(tractionConditions(geometry, material), "pressure").holds());
  geometry.ringDiameter = 10e-3;
  EXPECT_FALSE(allHold(tractionConditions(geometry, material)));
}

TEST(TractionRollers, NothingFromWhatIsNotGiven) {
  const TractionGeometry none;
  EXPECT_FALSE(tractionRatio(none));
  EXPECT_FALSE(rollerDiameter(none));
  EXPECT_FALSE(slipTorque(none));
  EXPECT_FALSE(creepAt(none, 1));
  EXPECT_FALSE(creepAt(rollersOf(), kUnset));
  EXPECT_FALSE(creepEfficiency(none, 1));
  EXPECT_FALSE(tractionPressure(none, {}));
  EXPECT_FALSE(contactPasses(none));
  EXPECT_FALSE(tractionLife(none, 1));
  EXPECT_TRUE(tractionConditions(none, {}).empty());
}

}  // namespace
}  // namespace jw

// Two wheels in mesh: sizes, forces and pressure of spur and helical teeth.
#include <cmath>
#include <numbers>

#include <gtest/gtest.h>

#include "core/physics/gear_pair.h"
#include "core/physics/gear_teeth.h"
#include "tests/core/physics/conditions_support.h"

namespace jw {
namespace {

using std::numbers::pi;
constexpr double kDegree = pi / 180;

GearPairGeometry pairOf(double pinion, double gear, double helix = 0) {
  GearPairGeometry pair;
  pair.pinionTeeth = pinion;
  pair.gearTeeth = gear;
  pair.helixAngle = helix;
  return pair;
}

Toothing toothingOf(double module, double width) {
  Toothing toothing;
  toothing.module = module;
  toothing.faceWidth = width;
  return toothing;
}

// Own arithmetic: m = 2 mm, 20 and 50: 40 and 100 mm, tips 44 and 104 mm, 70 mm apart.
TEST(GearPair, SizesOfSpurTeeth) {
  const GearPairSizes sizes = *gearPairSizes(pairOf(20, 50), toothingOf(2e-3, 20e-3));
  EXPECT_NEAR(sizes.pinionDiameter, 0.04, 1e-15);
  EXPECT_NEAR(sizes.gearDiameter, 0.1, 1e-15);
  EXPECT_NEAR(sizes.pinionTipDiameter, 0.044, 1e-15);
  EXPECT_NEAR(sizes.gearTipDiameter, 0.104, 1e-15);
  EXPECT_NEAR(sizes.centreDistance, 0.07, 1e-15);
  EXPECT_NEAR(sizes.transversePressureAngle, 20 * kDegree, 1e-15);
  EXPECT_EQ(*gearPairRatio(pairOf(20, 50)), 2.5);
}

// A textbook's transverse pressure angle for 20 deg normal and 30 deg helix: 22.80 deg (Shigley,
// Mechanical Engineering Design, from memory). Sizes grow by 1/cos 30 deg.
TEST(GearPair, HelixWidensTheTransverseSection) {
  const GearPairSizes sizes = *gearPairSizes(pairOf(20, 50, 30 * kDegree), toothingOf(2e-3, 0.02));
  EXPECT_NEAR(sizes.transversePressureAngle / kDegree, 22.80, 5e-3);
  EXPECT_NEAR(sizes.centreDistance, 0.07 / std::cos(30 * kDegree), 1e-15);
  EXPECT_LT(leastTeeth({}, 30 * kDegree), leastTeeth({}));
}

// The force on a flank is along its normal, tilted by the normal pressure angle out of the plane
// that touches both pitch cylinders, and by the helix angle in it; own, from the vector.
TEST(GearPair, ForcesAreOnePushAlongTheNormal) {
  const double helix = 15 * kDegree, normal = 20 * kDegree;
  const ToothForces forces = *gearPairForces(pairOf(20, 50, helix), toothingOf(2e-3, 0.02), 10);
  const double push = forces.tangential / (std::cos(normal) * std::cos(helix));
  EXPECT_NEAR(forces.radial, push * std::sin(normal), 1e-9);
  EXPECT_NEAR(forces.axial, push * std::cos(normal) * std::sin(helix), 1e-9);
  EXPECT_NEAR(forces.tangential, 10 / (0.02 / std::cos(helix)), 1e-9);
  const auto back = gearPairForces(pairOf(20, 50, helix), toothingOf(2e-3, 0.02), -10);
  EXPECT_NEAR(back->axial, -forces.axial, 1e-12);
  EXPECT_NEAR(back->radial, forces.radial, 1e-12);
}

// ISO 6336-2, from memory: Z_E = 189.8 sqrt(N/mm²), Z_H = 2.495 at 0 and 2.42 at 15 deg helix.
// 20 N·m on d = 40 mm (spur): 1000 N, b = 20 mm, u = 2.5.
TEST(GearPair, FlankPressureInTheStandardsForm) {
  const Toothing toothing = toothingOf(2e-3, 20e-3);
  const double spur = 189.8 * 2.495 * std::sqrt(1000.0 / (40 * 20) * 3.5 / 2.5) * 1e6;
  EXPECT_NEAR(flankPressure({20, 50}, toothing, {}, 20), spur, spur * 3e-4);
  const double diameter = 40 / std::cos(15 * kDegree);
  const double helical =
      189.8 * 2.42 * std::sqrt(2 * 20e3 / diameter / (diameter * 20) * 3.5 / 2.5) * 1e6;
  EXPECT_NEAR(flankPressure({20, 50, 15 * kDegree}, toothing, {}, 20), helical, helical * 3e-3);
}

TEST(GearPair, Conditions) {
  ContactMaterial material;
  material.allowedPressure = 500e6;
  Toothing toothing = toothingOf(2e-3, 20e-3);
  const auto all = gearPairConditions(pairOf(20, 50), toothing, material, 50);
  EXPECT_TRUE(conditionWith(all, "undercut").holds());
  EXPECT_NEAR(conditionWith(all, "pressure").demand,
              flankPressure({20, 50}, toothing, material, 20), 1);
  EXPECT_FALSE(conditionWith(all, "pressure").holds());
  toothing.meshEfficiency = 0.8;
  EXPECT_NEAR(
      conditionWith(gearPairConditions(pairOf(20, 50), toothing, material, 50), "pressure").demand,
      flankPressure({20, 50}, toothing, material, 25), 1);
  const auto small = gearPairConditions(pairOf(50, 17), toothing, material, kUnset);
  ASSERT_EQ(small.size(), 1U);
  EXPECT_FALSE(small[0].holds());
  EXPECT_EQ(small[0].field, "gearTeeth");
  EXPECT_TRUE(gearPairConditions(pairOf(18, 50), toothing, material, kUnset)[0].holds());
}

// Own: a full cylinder has m d²/8; pinion 40 mm, gear 100 mm, 20 mm wide, 7850 kg/m³.
TEST(GearPair, InertiaAtTheInput) {
  const GearPairInertia inertia = *gearPairInertia(pairOf(20, 50), toothingOf(2e-3, 20e-3));
  const double pinion = 7850 * pi * 0.02 * 0.02 * 0.02 * (0.02 * 0.02) / 2;
  EXPECT_NEAR(inertia.input, pinion, pinion * 1e-12);
  EXPECT_NEAR(inertia.output, pinion * std::pow(2.5, 4), pinion * 1e-10);
  EXPECT_NEAR(inertia.atInput, pinion * (1 + std::pow(2.5, 2)), pinion * 1e-10);
}

TEST(GearPair, NothingFromWhatIsNotGiven) {
  const GearPairGeometry none;
  EXPECT_FALSE(gearPairRatio(none));
  EXPECT_FALSE(gearPairSizes(none, toothingOf(1e-3, 0.01)));
  EXPECT_FALSE(gearPairForces(pairOf(20, 50), {}, 1));
  EXPECT_FALSE(gearPairEfficiency({}));
  EXPECT_FALSE(gearPairInertia(pairOf(20, 50), {}));
  EXPECT_TRUE(gearPairConditions(none, {}, {}, 1).empty());
}

TEST(GearPair, SameMeshLossBothWays) {
  Toothing toothing;
  toothing.meshEfficiency = 0.985;
  EXPECT_EQ(gearPairEfficiency(toothing)->driving, 0.985);
  EXPECT_EQ(gearPairEfficiency(toothing)->backdriving, 0.985);
  EXPECT_TRUE(gearPairEfficiency(toothing)->fromParts);
}

}  // namespace
}  // namespace jw

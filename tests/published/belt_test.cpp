// Toothed belts: published pitches and a worked example.
#include <cmath>
#include <numbers>

#include <gtest/gtest.h>

#include "core/physics/belt_drive.h"

namespace jw {
namespace {

// ISO 5296 (pitches read second-hand in a maker-neutral table of pulleys): XL has 0.200 in; 20
// teeth on p z/pi = 32.340 mm. The others in mm: MXL 2.032, L 9.525, H 12.700, XH 22.225,
// XXH 31.750.
TEST(PublishedBelt, PitchDiameters) {
  BeltGeometry belt;
  belt.pitch = 5.080e-3;
  EXPECT_NEAR(pulleyDiameter(belt, 20), 32.340e-3, 5e-7);
  for (const double pitch : {2.032e-3, 9.525e-3, 12.7e-3, 22.225e-3, 31.75e-3}) {
    belt.pitch = pitch;
    EXPECT_NEAR(pulleyDiameter(belt, 20) * std::numbers::pi, 20 * pitch, 1e-15);
  }
}

// T. H. Wentzell, Machine Design, ex. 14.1 (read second-hand in the companions of the FOSSEE
// project): 2 hp at 2450 rpm on a 6 in pulley, 10 lb in the slack span: 51.43 in·lb, difference
// 17.14 lb, tight 27.14 lb, pull on the shaft 37.14 lb; 10 in driven pulley: ratio 1.667, 1470 rpm.
// In inches and pounds; the book adds the spans as parallel, so the axes are far apart here.
TEST(PublishedBelt, TensionsOfAWorkedExample) {
  BeltGeometry belt;
  belt.motorPulleyTeeth = 30;
  belt.jointPulleyTeeth = 50;
  belt.pitch = 6 * std::numbers::pi / 30;
  belt.centreDistance = 1e4;
  belt.spanPretension = (27.14 + 10) / 2;
  EXPECT_NEAR(*beltRatio(belt), 1.667, 5e-4);
  EXPECT_NEAR(2450 / *beltRatio(belt), 1470, 1e-9);
  const BeltForces forces = *beltForces(belt, 51.43 * *beltRatio(belt));
  EXPECT_NEAR(forces.tight - forces.slack, 17.14, 5e-3);
  EXPECT_NEAR(forces.tight, 27.14, 5e-3);
  EXPECT_NEAR(forces.slack, 10, 5e-3);
  EXPECT_NEAR(forces.shaft, 37.14, 5e-3);
}

// c_b = 500 kN, spans of 0.25 m, r = 20 mm: 2.0 MN/m each, (k1 + k2) r² = 1600 N·m/rad. Relation
// from memory, numbers own.
TEST(PublishedBelt, StiffnessOfTwoSpans) {
  BeltGeometry belt;
  belt.motorPulleyTeeth = belt.jointPulleyTeeth = 40;
  belt.pitch = 0.04 * std::numbers::pi / 40;
  belt.centreDistance = 0.25;
  belt.specificStiffness = 500e3;
  const BeltStiffness stiffness = *beltStiffness(belt);
  EXPECT_NEAR(stiffness.span, 2e6, 1e-6);
  EXPECT_NEAR(stiffness.outputBoth, 1600, 1e-9);
  EXPECT_NEAR(stiffness.inputBoth, 1600, 1e-9);
  EXPECT_NEAR(stiffness.outputOne, 800, 1e-9);
}

}  // namespace
}  // namespace jw

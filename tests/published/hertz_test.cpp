// Line contact of cylinders against published examples. FOSSEE = textbook companions of the FOSSEE
// project, where the book's example was read second-hand.
#include <cmath>
#include <limits>
#include <numbers>

#include <gtest/gtest.h>

#include "core/physics/hertz_contact.h"

namespace jw {
namespace {

// A. P. Boresi and R. J. Schmidt, Advanced Mechanics of Materials, ch. 17 ex. 3 (FOSSEE): equal
// cylinders of 40 mm radius, 20 mm long, 24.1 kN, 200 GPa, 0.29 -> 1445 MPa with rounded factors;
// recomputed without rounding 1447.04 MPa and half width 0.530136 mm.
TEST(PublishedHertz, EqualCylinders) {
  const double modulus = reducedModulus(200e9, 0.29, 200e9, 0.29);
  const double radius = relativeRadius(0.04, 0.04);
  EXPECT_DOUBLE_EQ(radius, 0.02);
  const double pressure = lineContactPressure(24.1e3, 0.02, radius, modulus);
  EXPECT_NEAR(pressure, 1447.04e6, 5e3);
  EXPECT_NEAR(pressure, 1445e6, 3e6);
  EXPECT_NEAR(lineContactHalfWidth(24.1e3, 0.02, radius, modulus), 0.530136e-3, 5e-10);
}

// Equilibrium: the elliptic pressure carries the force, F / L = pi/2 p0 b.
TEST(PublishedHertz, PressureCarriesTheForce) {
  const double modulus = reducedModulus(206e9, 0.3, 110e9, 0.34);
  for (const double force : {1.0, 300.0, 9e4}) {
    const double pressure = lineContactPressure(force, 0.013, 0.004, modulus);
    const double half = lineContactHalfWidth(force, 0.013, 0.004, modulus);
    EXPECT_NEAR(std::numbers::pi / 2 * pressure * half * 0.013, force, 1e-12 * force);
  }
}

// Limits: against a flat it is the cylinder's own radius, in a hollow of the same radius infinite;
// 5 mm in a hollow of 6 mm is 30 mm (own arithmetic: 5·6/(6 - 5)).
TEST(PublishedHertz, RelativeRadius) {
  const double flat = std::numeric_limits<double>::infinity();
  EXPECT_DOUBLE_EQ(relativeRadius(0.005, flat), 0.005);
  EXPECT_TRUE(std::isinf(relativeRadius(0.005, -0.005)));
  EXPECT_NEAR(relativeRadius(0.005, -0.006), 0.030, 1e-15);
  EXPECT_LT(relativeRadius(0.005, -0.004), 0);
}

// A rigid body against an elastic one halves the compliance; steel where nothing is given, 206 GPa
// and 0.3 (common practice, no source): E* = 206 / (2·0.91) = 113.187 GPa.
TEST(PublishedHertz, ReducedModulus) {
  const double rigid = std::numeric_limits<double>::infinity();
  EXPECT_NEAR(reducedModulus(206e9, 0.3, rigid, 0.3), 206e9 / 0.91, 1);
  const ContactSurfaces steel = contactSurfaces({});
  EXPECT_NEAR(steel.reducedModulus, 113.187e9, 5e5);
  EXPECT_TRUE(std::isnan(steel.allowedPressure));
  ContactMaterial bronze;
  bronze.elasticModulus = 110e9;
  bronze.poissonRatio = 0;
  bronze.allowedPressure = 400e6;
  EXPECT_DOUBLE_EQ(contactSurfaces(bronze).reducedModulus, 55e9);
  EXPECT_EQ(contactSurfaces(bronze).allowedPressure, 400e6);
}

}  // namespace
}  // namespace jw

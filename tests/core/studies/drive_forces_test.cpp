// Forces drawn on the front disc: statics of a rigid body, the outlines of the drawing and the
// forces that the checks use.
#include "core/studies/drive_forces.h"

#include <cmath>

#include <gtest/gtest.h>

#include "core/physics/cycloid_forces.h"
#include "core/studies/drive_shapes.h"
#include "tests/core/studies/drawn_stages.h"

namespace jw {
namespace {

using namespace drawn;

double moment(const DriveForce& f, const Eigen::Vector2d& about) {
  const Eigen::Vector2d arm = f.at - about;
  return arm.x() * f.force.y() - arm.y() * f.force.x();
}

// Equilibrium of a plane rigid body: forces and moments add up to nothing.
TEST(DriveForcesTest, TheDiscIsInEquilibrium) {
  for (const CycloidHeld held : {CycloidHeld::Pins, CycloidHeld::OutputPins}) {
    for (const bool clockwise : {false, true}) {
      for (const double input : {0.0, 0.7, 3.0, 20.0}) {
        const DriveForces forces = driveForces(cycloidStage(held), input, 30, clockwise);
        Eigen::Vector2d sum = forces.bearing.force;
        double turning = 0;
        for (const auto* group : {&forces.pins, &forces.outputPins}) {
          for (const DriveForce& f : *group) {
            sum += f.force;
            turning += moment(f, forces.bearing.at);
          }
        }
        EXPECT_LT(sum.norm(), 1e-9);
        EXPECT_NEAR(turning, 0, 1e-9);
      }
    }
  }
}

// Ring pins held: the two discs together hand 30 N·m to the output pins, 15 N·m each.
TEST(DriveForcesTest, OutputPinsTakeTheTorque) {
  const DriveForces forces = driveForces(cycloidStage(CycloidHeld::Pins), 1.1, 30);
  double torque = 0;
  for (const DriveForce& f : forces.outputPins) torque += moment(f, forces.bearing.at);
  // About the disc's centre the lever is that of the pin about the output's axis.
  EXPECT_NEAR(std::abs(torque), 15, 1e-9);
}

TEST(DriveForcesTest, AreThoseThatTheChecksUse) {
  const Stage stage = cycloidStage(CycloidHeld::Pins);
  const auto all = cycloidForces(stage.cycloid, stage.contact, 30, 12);
  ASSERT_TRUE(all);
  for (Eigen::Index i = 0; i < all->crankAngle.size(); ++i) {
    const DriveForces forces = driveForces(stage, all->crankAngle[i], 30);
    for (Eigen::Index j = 0; j < all->pinForce.rows(); ++j)
      EXPECT_NEAR(forces.pins[std::size_t(j)].force.norm(), all->pinForce(j, i), 1e-9);
    for (Eigen::Index k = 0; k < all->outputPinForce.rows(); ++k)
      EXPECT_NEAR(forces.outputPins[std::size_t(k)].force.norm(), all->outputPinForce(k, i), 1e-9);
    EXPECT_NEAR(forces.bearing.force.x(), all->bearingX[i], 1e-9);
    EXPECT_NEAR(forces.bearing.force.y(), all->bearingY[i], 1e-9);
  }
}

// Forces act where the outlines touch: a pin's force on the pin's circle, towards its middle or
// from it, in the axes of the drawing at any angle.
TEST(DriveForcesTest, ActAtThePinsOfTheDrawing) {
  for (const CycloidHeld held : {CycloidHeld::Pins, CycloidHeld::OutputPins}) {
    const Stage stage = cycloidStage(held);
    const auto shapes = driveShapes(stage, {});
    ASSERT_TRUE(shapes);
    for (const double input : {0.0, 2.0, -9.0}) {
      const DriveForces forces = driveForces(stage, input, 30, input < 0);
      const DrivePose ring = shapes->bodies[1].motion.at(input);
      for (std::size_t j = 0; j < forces.pins.size(); ++j) {
        double nearest = 1;
        for (std::size_t p = 0; p < 12; ++p) {
          const double angle = ring.angle + 2 * M_PI * double(p) / 12;
          const Eigen::Vector2d pin(40e-3 * std::cos(angle), 40e-3 * std::sin(angle));
          nearest = std::min(nearest, (forces.pins[j].at - pin).norm());
        }
        EXPECT_NEAR(nearest, 4e-3, 1e-12);
      }
    }
  }
}

TEST(DriveForcesTest, OtherFamiliesHaveNone) {
  EXPECT_TRUE(driveForces(Stage{}, 0, 1).pins.empty());
  Stage stage = cycloidStage(CycloidHeld::Pins);
  stage.cycloid.pins = kUnset;
  EXPECT_TRUE(driveForces(stage, 0, 1).pins.empty());
}

}  // namespace
}  // namespace jw

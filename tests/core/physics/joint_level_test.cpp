// Stop, impact, two-mass swing and error budget against published and closed values.
#include <cmath>
#include <limits>
#include <numbers>

#include <gtest/gtest.h>

#include "core/physics/positioning.h"
#include "core/physics/stopping.h"
#include "core/physics/two_mass.h"

namespace jw {
namespace {

constexpr double kTurn = 2 * std::numbers::pi;

// Khurmi and Gupta, Theory of Machines, ex. 16.2 (read second-hand): a flywheel of 2500 kg with a
// radius of gyration of 1 m under 1500 N·m for 10 s reaches 6 rad/s, 45.0 kJ. Braked by the same
// torque it comes to rest in the same 10 s and the brake takes up the same energy.
TEST(Stopping, FlywheelOfATextbook) {
  const Stop stop = stopUnderSteadyTorques(
      {.inertia = 2500, .speed = 6, .driving = 0, .braking = 1500, .delay = 0});
  EXPECT_DOUBLE_EQ(stop.time, 10);
  EXPECT_DOUBLE_EQ(stop.angle, 30);
  EXPECT_DOUBLE_EQ(stop.energy, 45000);
}

// Own, calculated by stepping the motion in 1e-5 s.
TEST(Stopping, DelayAndGravityByBruteForce) {
  const StopCase about{.inertia = 2, .speed = 3, .driving = 20, .braking = 70, .delay = 0.05};
  double time = 0, angle = 0, speed = about.speed, energy = 0;
  const double step = 1e-5;
  while (speed > 0) {
    const double braking = time < about.delay - step / 2 ? 0 : about.braking;
    const double next = speed + (about.driving - braking) / about.inertia * step;
    angle += (speed + next) / 2 * step;
    energy += braking * (speed + next) / 2 * step;
    speed = next;
    time += step;
  }
  const Stop stop = stopUnderSteadyTorques(about);
  EXPECT_NEAR(stop.time, time, 2e-5);
  EXPECT_NEAR(stop.angle, angle, 1e-5);
  EXPECT_NEAR(stop.energy, energy, 1e-4);
}

TEST(Stopping, ABrakeThatGravityOvercomesNeverStops) {
  const Stop stop =
      stopUnderSteadyTorques({.inertia = 2, .speed = 1, .driving = 20, .braking = 20, .delay = 0});
  EXPECT_TRUE(std::isinf(stop.time));
  EXPECT_TRUE(std::isinf(stop.energy));
}

// Khurmi and Gupta, ex. 3.21 (inputs read second-hand): 22.5 kg·m² at 150 rpm caught by 225 N·m/rad
// on 67.5 kg·m². Peak torque 967.906 N·m is k times the published twist of 246.5 deg; the moving
// side counts with the reduced inertia 16.875 kg·m².
TEST(TwoMass, ImpactOfATextbook) {
  const double torque = torqueOfImpact(150 * kTurn / 60, 22.5 * 67.5 / 90, 225);
  EXPECT_NEAR(torque, 967.906, 1e-3);
  EXPECT_NEAR(torque / 225 * 360 / kTurn, 246.5, 0.05);
}

// Same masses: resonance 3.651484 rad/s, antiresonance 1.825742 rad/s (own, closed form).
TEST(TwoMass, FrequenciesOfTheSameMasses) {
  const TwoMass two{22.5, 67.5, 225, 0};
  EXPECT_NEAR(two.free(), 3.651484, 1e-6);
  EXPECT_NEAR(two.locked(), 1.825742, 1e-6);
}

double extremum(const TwoMass& two, double from, double to, double sign) {
  double best = -std::numeric_limits<double>::infinity();
  double at = from;
  for (double f = from; f < to; f += 1e-4) {
    const double size = sign * std::abs(two.motorSpeedPerTorque(kTurn * f));
    if (size > best) {
      best = size;
      at = f;
    }
  }
  return at;
}

// Saarakkala and Hinkkanen 2015, parameters read second-hand: 0.005 and 0.005 kg·m², 700 N·m/rad,
// 0.01 N·m·s/rad. Peak and notch measured on the frequency response of SciPy and of Octave control.
TEST(TwoMass, ResponseAgreesWithSciPyAndOctave) {
  const TwoMass two{0.005, 0.005, 700, 0.01};
  EXPECT_NEAR(two.free() / kTurn, 84.216880, 1e-6);
  EXPECT_NEAR(two.locked() / kTurn, 59.550327, 1e-6);
  EXPECT_NEAR(extremum(two, 83, 85, 1), 84.2193, 2e-4);
  EXPECT_NEAR(extremum(two, 59, 60, -1), 59.5495, 2e-4);
  EXPECT_NEAR(std::abs(two.motorSpeedPerTorque(kTurn * 84.219286)), 25.001428, 1e-4);
}

// Far below the resonance both sides turn as one: 1 / ((J_M + J_L) w).
TEST(TwoMass, TurnsAsOneWhenSlow) {
  const TwoMass two{0.6, 1.4, 22000, 12};
  const double slow = 0.01;
  EXPECT_NEAR(std::abs(two.loadSpeedPerTorque(slow)) * 2 * slow, 1, 1e-6);
  EXPECT_NEAR(std::abs(two.motorSpeedPerTorque(slow)) * 2 * slow, 1, 1e-6);
}

// JCGM 100:2008, H.1 (read second-hand): 5.8, 3.9 and 6.7 nm combine to 9.7 nm.
TEST(ErrorBudget, RootSumSquareOfTheEndGauge) {
  const ErrorBudget budget{.play = 5.8, .hysteresis = 3.9, .windUp = 6.7};
  EXPECT_NEAR(budget.rootSumSquare(), 9.7, 0.05);
  EXPECT_DOUBLE_EQ(budget.worst(), 16.4);
}

// Own arithmetic: 17 bits at the joint are 47.93690 urad, behind 100 : 1 a hundredth.
TEST(ErrorBudget, EncoderStep) {
  EXPECT_NEAR(encoderStep(131072, 1), 47.93690e-6, 1e-11);
  EXPECT_NEAR(encoderStep(131072, 100), 0.4793690e-6, 1e-13);
  EXPECT_TRUE(std::isnan(encoderStep(0, 100)));
}

}  // namespace
}  // namespace jw

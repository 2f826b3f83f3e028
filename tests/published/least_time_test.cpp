// Moves as fast as limits of speed, acceleration and jerk allow. Formulas from L. Biagiotti,
// C. Melchiorri, Trajectory Planning for Automatic Machines and Robots (2008), sections 3.2
// (trapezoidal) and 3.4 (double S), from memory, each worked by hand for the numbers used.
#include <algorithm>
#include <cmath>
#include <string>
#include <vector>

#include <gtest/gtest.h>

#include "core/motion/least_time.h"
#include "core/motion/motion_laws.h"

namespace jw {
namespace {

constexpr double kEndless = std::numeric_limits<double>::infinity();

/// Peaks of a move as it is sampled.
struct Peaks {
  double speed = 0, acceleration = 0, jerk = 0, travel = 0;
};

MotionShape shapeFor(MotionLaw law, double distance, const LeastTime& least, double periods) {
  return {law, distance, least.rampShare, least.rampShare, least.jerkShare, periods};
}

/// Over 20 000 points a piece: a smooth peak between two of them is missed by less than 1e-8 of it.
Peaks peaksOf(MotionLaw law, double distance, const LeastTime& least, double periods = 1) {
  constexpr int kPoints = 20'000;
  Peaks peaks;
  const double t = least.duration;
  for (const SmoothPiece& piece : motionPieces(shapeFor(law, distance, least, periods))) {
    for (int k = 0; k <= kPoints; ++k) {
      const MotionState s = stateAt(piece, piece.begin + (piece.end - piece.begin) * k / kPoints);
      peaks.speed = std::max(peaks.speed, std::abs(s.speed) * distance / t);
      peaks.acceleration =
          std::max(peaks.acceleration, std::abs(s.acceleration) * distance / t / t);
      peaks.jerk = std::max(peaks.jerk, std::abs(s.jerk) * distance / t / t / t);
      peaks.travel = s.position * distance;
    }
  }
  return peaks;
}

// h = 10 >= v²/a = 2.5: v/a = 0.5 s to speed up and to slow down, h/v - v/a = 1.5 s of cruise.
TEST(PublishedLeastTime, TrapezoidThatCruises) {
  const LeastTime least = leastTime(MotionLaw::Trapezoidal, 10, {5, 10, kEndless});
  EXPECT_NEAR(least.duration, 2.5, 1e-12);
  EXPECT_NEAR(least.rampShare, 0.5 / 2.5, 1e-12);
}

// h = 2.5 = v²/a exactly: the cruise has just vanished, 2 v/a.
TEST(PublishedLeastTime, TrapezoidThatJustReachesItsSpeed) {
  const LeastTime least = leastTime(MotionLaw::Trapezoidal, 2.5, {5, 10, kEndless});
  EXPECT_NEAR(least.duration, 1, 1e-12);
  EXPECT_NEAR(least.rampShare, 0.5, 1e-12);
}

// h = 0.9 < 2.5: 2 √(h/a) = 0.6 s, peak speed √(h a) = 3.
TEST(PublishedLeastTime, Triangle) {
  const LeastTime least = leastTime(MotionLaw::Trapezoidal, 0.9, {5, 10, kEndless});
  EXPECT_NEAR(least.duration, 0.6, 1e-12);
  EXPECT_NEAR(least.rampShare, 0.5, 1e-12);
  EXPECT_NEAR(peaksOf(MotionLaw::Trapezoidal, 0.9, least).speed, 3, 1e-9);
}

// The book's first example of a double S, with its speeds at both ends set to rest: h = 10, v = 5,
// a = 10, j = 30. a is reached (v j = 150 >= a² = 100): T_j = a/j = 1/3 s, T_a = T_j + v/a = 5/6 s,
// T_v = h/v - T_a = 7/6 s, together 2 T_a + T_v = 17/6 s.
TEST(PublishedLeastTime, SevenPhases) {
  const LeastTime least = leastTime(MotionLaw::JerkLimited, 10, {5, 10, 30});
  EXPECT_NEAR(least.duration, 17.0 / 6, 1e-12);
  EXPECT_NEAR(least.rampShare, (5.0 / 6) / (17.0 / 6), 1e-12);
  EXPECT_NEAR(least.jerkShare, (1.0 / 3) / (5.0 / 6), 1e-12);
}

// v = 2: v j = 60 < a² = 100, so the acceleration limit is not reached: T_j = √(v/j), T_a = 2 T_j.
TEST(PublishedLeastTime, FivePhasesWithoutFullAcceleration) {
  const LeastTime least = leastTime(MotionLaw::JerkLimited, 10, {2, 10, 30});
  const double jerkTime = std::sqrt(2.0 / 30);
  EXPECT_NEAR(least.duration, 10.0 / 2 + 2 * jerkTime, 1e-12);
  EXPECT_NEAR(least.jerkShare, 0.5, 1e-12);
}

// h = 10 and no speed limit that counts: T_a = (a²/j + √(a⁴/j² + 4 a h))/(2a), 2 T_a together; the
// equation h = a (T_a - T_j) T_a it comes from is checked as well.
TEST(PublishedLeastTime, SixPhasesWithoutCruise) {
  const double a = 10, j = 30, h = 10;
  const LeastTime least = leastTime(MotionLaw::JerkLimited, h, {100, a, j});
  const double change = (a * a / j + std::sqrt(a * a * a * a / j / j + 4 * a * h)) / (2 * a);
  EXPECT_NEAR(least.duration, 2 * change, 1e-12);
  EXPECT_NEAR(a * (change - a / j) * change, h, 1e-12);
}

// Jerk alone: h = 2 j T_j³, four phases of T_j; h = 0.06, j = 30: T_j = 0.1 s.
TEST(PublishedLeastTime, FourPhasesOfJerkAlone) {
  for (const MotionLimits& limits :
       {MotionLimits{5, 10, 30}, MotionLimits{kEndless, kEndless, 30}}) {
    const LeastTime least = leastTime(MotionLaw::JerkLimited, 0.06, limits);
    EXPECT_NEAR(least.duration, 0.4, 1e-12);
    EXPECT_NEAR(least.jerkShare, 0.5, 1e-12);
    EXPECT_NEAR(least.rampShare, 0.5, 1e-12);
  }
}

// With jerk without end the seven phases become the trapezoid (identity).
TEST(PublishedLeastTime, EndlessJerkIsTheTrapezoid) {
  for (const double h : {0.1, 2.5, 40.0}) {
    EXPECT_NEAR(leastTime(MotionLaw::JerkLimited, h, {5, 10, 1e12}).duration,
                leastTime(MotionLaw::Trapezoidal, h, {5, 10, kEndless}).duration, 1e-9);
  }
}

struct NamedLaw {
  std::string name;
  MotionLaw law;
  double periods = 1;
};

const std::vector<NamedLaw>& laws() {
  static const std::vector<NamedLaw> kLaws{{"trapezoidal", MotionLaw::Trapezoidal},
                                           {"jerk-limited", MotionLaw::JerkLimited},
                                           {"3-4-5", MotionLaw::Polynomial345},
                                           {"4-5-6-7", MotionLaw::Polynomial4567},
                                           {"sine", MotionLaw::SineAcceleration},
                                           {"harmonic", MotionLaw::Harmonic},
                                           {"modified trapezoid", MotionLaw::ModifiedTrapezoid},
                                           {"modified sine", MotionLaw::ModifiedSine},
                                           {"sinusoid", MotionLaw::Sinusoid, 2.5}};
  return kLaws;
}

// Identity: no limit is broken and one of them at least is met. Limits and distances over some
// decades, so that each is the binding one in turn.
TEST(PublishedLeastTime, EveryLawMeetsItsBindingLimitAndKeepsTheOthers) {
  for (const NamedLaw& law : laws()) {
    for (const double h : {0.01, 1.0, 50.0}) {
      for (const MotionLimits& limits : {MotionLimits{3, 40, 900}, MotionLimits{0.5, 40, 900},
                                         MotionLimits{30, 5, 9e4}, MotionLimits{30, 400, 90}}) {
        SCOPED_TRACE(law.name + " over " + std::to_string(h));
        const Peaks peaks =
            peaksOf(law.law, h, leastTime(law.law, h, limits, law.periods), law.periods);
        const double jerk = hasBoundedJerk(law.law) ? peaks.jerk / limits.jerk : 0;
        const double used =
            std::max({peaks.speed / limits.speed, peaks.acceleration / limits.acceleration, jerk});
        EXPECT_NEAR(used, 1, 1e-7);
      }
    }
  }
}

// The coefficients themselves against the sampled course (they are stated in the cam handbooks, see
// motion_laws_test): with a travel and a duration of 1 the peaks are the coefficients.
TEST(PublishedLeastTime, CoefficientsArePeaks) {
  for (const NamedLaw& law : laws()) {
    const LawPeaks stated = lawPeaks(law.law, law.periods);
    if (stated.speed == 0) continue;
    SCOPED_TRACE(law.name);
    const Peaks peaks = peaksOf(law.law, 1, {1, 0, 0}, law.periods);
    EXPECT_NEAR(peaks.speed / stated.speed, 1, 1e-7);
    EXPECT_NEAR(peaks.acceleration / stated.acceleration, 1, 1e-7);
    const double jerk = hasBoundedJerk(law.law) ? peaks.jerk / stated.jerk : 1;
    EXPECT_NEAR(jerk, 1, 1e-7);
  }
}

// Own, by brute force: no jerk-limited move of the same travel and limits among a grid of shares
// takes less time.
TEST(PublishedLeastTime, NoOtherSharesAreFaster) {
  const MotionLimits limits{3, 20, 200};
  for (const double h : {0.02, 0.4, 3.0}) {
    const double least = leastTime(MotionLaw::JerkLimited, h, limits).duration;
    double best = kEndless;
    for (int r = 1; r <= 100; ++r) {
      for (int s = 1; s <= 100; ++s) {
        const double ramp = r / 200.0, jerkShare = s / 200.0;
        const double speed = 1 / (1 - ramp);
        const double acceleration = speed / ((1 - jerkShare) * ramp);
        const double jerk = acceleration / (jerkShare * ramp);
        best = std::min(best, std::max({speed * h / limits.speed,
                                        std::sqrt(acceleration * h / limits.acceleration),
                                        std::cbrt(jerk * h / limits.jerk)}));
      }
    }
    EXPECT_GE(best, least * (1 - 1e-12));
    EXPECT_LT(best, least * 1.02);  // the grid comes near it
  }
}

}  // namespace
}  // namespace jw

// Published peak and rms coefficients of the motion laws: with travel h and duration T the peak
// speed is Cv·h/T, the peak acceleration Ca·h/T², the peak jerk Cj·h/T³ and the rms acceleration
// Arms·h/T². Pass rule: 1e-9 where the closed expression is given, else half a unit of the last
// digit.
#include <cmath>
#include <numbers>

#include <gtest/gtest.h>

#include "core/motion/motion_laws.h"
#include "core/motion/sampled_cycle.h"
#include "tests/core/motion/make_cycle.h"

namespace jw {
namespace {

constexpr double kPi = std::numbers::pi;

struct Peaks {
  double speed = 0, acceleration = 0, jerk = 0, rmsAcceleration = 0;
};

/// Peaks over 200 001 samples a piece; a smooth peak between two samples is missed by less than
/// 1e-9 of it.
Peaks peaksOf(const std::vector<SmoothPiece>& pieces) {
  constexpr int kIntervals = 200'000;
  Peaks peaks;
  for (const SmoothPiece& piece : pieces) {
    for (int k = 0; k <= kIntervals; ++k) {
      const double step = (piece.end - piece.begin) / kIntervals;
      const MotionState state = stateAt(piece, piece.begin + k * step);
      peaks.speed = std::max(peaks.speed, std::abs(state.speed));
      peaks.acceleration = std::max(peaks.acceleration, std::abs(state.acceleration));
      peaks.jerk = std::max(peaks.jerk, std::abs(state.jerk));
      const double simpson = (k == 0 || k == kIntervals ? 1 : k % 2 == 1 ? 4 : 2) * step / 3;
      peaks.rmsAcceleration += simpson * state.acceleration * state.acceleration;
    }
  }
  peaks.rmsAcceleration = std::sqrt(peaks.rmsAcceleration);
  return peaks;
}

// From memory: common to all motion-control handbooks; recomputed by hand
// (area of the speed triangle h = v·T/2, so v = 2h/T and a = v/(T/2)).
TEST(PublishedMotionLaws, Triangle) {
  const Peaks peaks = peaksOf(trapezoidalPieces(0.5, 0.5));
  EXPECT_NEAR(peaks.speed, 2, 1e-9);
  EXPECT_NEAR(peaks.acceleration, 4, 1e-9);
  EXPECT_NEAR(peaks.rmsAcceleration, 4, 1e-9);
}

// From memory: the "1/3-1/3-1/3" rule of servo sizing; Arms = 4.5·√(2/3).
TEST(PublishedMotionLaws, TrapezoidOfThirds) {
  const Peaks peaks = peaksOf(trapezoidalPieces(1.0 / 3, 1.0 / 3));
  EXPECT_NEAR(peaks.speed, 1.5, 1e-9);
  EXPECT_NEAR(peaks.acceleration, 4.5, 1e-9);
  EXPECT_NEAR(peaks.rmsAcceleration, 4.5 * std::sqrt(2.0 / 3), 1e-9);
}

// π²/2: B. K. Sarkar, Theory of Machines, ch. 9, as restated in the FOSSEE textbook companion;
// the others from memory (cam handbooks). Jerk is endless at the ends and π³/2 inside. The
// acceleration is half a cosine, whose mean square is 1/2 of the peak's: Arms = Ca/√2.
TEST(PublishedMotionLaws, Harmonic) {
  const Peaks peaks = peaksOf(harmonicPieces());
  EXPECT_NEAR(peaks.speed, 1.570796, 5e-7);
  EXPECT_NEAR(peaks.acceleration, kPi * kPi / 2, 1e-9);
  EXPECT_NEAR(peaks.jerk, 15.503, 5e-4);
  EXPECT_NEAR(peaks.rmsAcceleration, kPi * kPi / 2 / std::sqrt(2.0), 1e-8);
}

// From memory: Lynch & Park, Modern Robotics, §9.2 (cubic time scaling Cv 1.5, Ca 6). The cubic is
// no law of its own here but must come out of a table of its points.
TEST(PublishedMotionLaws, CubicThroughTheTable) {
  Segment segment;
  segment.law = MotionLaw::Table;
  for (int k = 0; k <= 1000; ++k) {
    const double u = k / 1000.0;
    segment.table.time.push_back(u);
    segment.table.angle.push_back(u * u * (3 - 2 * u));
  }
  const auto sampled = sampleCycle(makeCycle({segment}));
  ASSERT_TRUE(sampled.has_value());
  EXPECT_NEAR(sampled->speed.maxCoeff(), 1.5, 1e-9);
  EXPECT_NEAR(sampled->acceleration.abs().maxCoeff(), 6, 1e-7);
  const double meanSquare = (sampled->weight * sampled->acceleration.square()).sum();
  EXPECT_NEAR(std::sqrt(meanSquare), 3.464102, 1e-5);  // trapezoid rule: 2e-6 high
}

// From memory: cam handbooks, exact Ca = 10/√3; the 5.777 printed in some tables is a graph
// reading.
TEST(PublishedMotionLaws, Polynomial345) {
  const Peaks peaks = peaksOf(polynomial345Pieces());
  EXPECT_NEAR(peaks.speed, 1.875, 1e-9);
  EXPECT_NEAR(peaks.acceleration, 10 / std::sqrt(3.0), 1e-8);
  EXPECT_NEAR(peaks.jerk, 60, 1e-9);
  EXPECT_NEAR(peaks.rmsAcceleration, 4.140393, 5e-7);
}

// From memory: cam handbooks, exact Ca = 84√5/25; the 7.526 printed in some tables is a graph
// reading. Arms² = ∫(420u² − 1680u³ + 2100u⁴ − 840u⁵)² du = 280/11.
TEST(PublishedMotionLaws, Polynomial4567) {
  const Peaks peaks = peaksOf(polynomial4567Pieces());
  EXPECT_NEAR(peaks.speed, 2.1875, 1e-9);
  EXPECT_NEAR(peaks.acceleration, 84 * std::sqrt(5.0) / 25, 1e-8);
  EXPECT_NEAR(peaks.jerk, 52.5, 1e-8);
  EXPECT_NEAR(peaks.rmsAcceleration, std::sqrt(280.0 / 11), 1e-8);
}

// From memory: cam handbooks (cycloidal motion).
TEST(PublishedMotionLaws, SineAcceleration) {
  const Peaks peaks = peaksOf(sineAccelerationPieces());
  EXPECT_NEAR(peaks.speed, 2, 1e-9);
  EXPECT_NEAR(peaks.acceleration, 2 * kPi, 1e-8);
  EXPECT_NEAR(peaks.jerk, 4 * kPi * kPi, 1e-8);
  EXPECT_NEAR(peaks.rmsAcceleration, 4.442883, 5e-7);
}

// From memory: cam handbooks, Ca = 8π/(2 + π). Half the time at the peak, half on sine flanks of
// half the mean square: Arms = Ca·√(3/4).
TEST(PublishedMotionLaws, ModifiedTrapezoid) {
  const Peaks peaks = peaksOf(modifiedTrapezoidPieces());
  EXPECT_NEAR(peaks.speed, 2, 1e-9);
  EXPECT_NEAR(peaks.acceleration, 8 * kPi / (2 + kPi), 1e-8);
  EXPECT_NEAR(peaks.jerk, 61.42597, 5e-6);
  EXPECT_NEAR(peaks.rmsAcceleration, 8 * kPi / (2 + kPi) * std::sqrt(0.75), 1e-8);
}

// Ca = 4π²/(4 + π) as read in an open trajectory library; the others from memory (cam handbooks).
// All of it is sine flanks, from 0 to the peak or back: Arms = Ca/√2.
TEST(PublishedMotionLaws, ModifiedSine) {
  const Peaks peaks = peaksOf(modifiedSinePieces());
  EXPECT_NEAR(peaks.speed, 4 * kPi / (4 + kPi), 1e-9);
  EXPECT_NEAR(peaks.acceleration, 4 * kPi * kPi / (4 + kPi), 1e-8);
  EXPECT_NEAR(peaks.jerk, 16 * kPi * kPi * kPi / (4 + kPi), 1e-7);
  EXPECT_NEAR(peaks.rmsAcceleration, 4 * kPi * kPi / (4 + kPi) / std::sqrt(2.0), 1e-8);
}

// B. K. Sarkar, Theory of Machines, illustration 2 (p. 247), as restated in the FOSSEE textbook
// companion: follower in simple harmonic motion, stroke 4 cm, 60° out, 90° back, cam at 300 rpm:
// peak accelerations 177.6 and 78.9 m/s². The companion takes π = 3.141, so 0.05 % is allowed.
TEST(PublishedMotionLaws, HarmonicFollower) {
  const double turn = 60.0 / 300;
  Segment out, back;
  out.law = back.law = MotionLaw::Harmonic;
  out.travel = 0.04;
  back.travel = -0.04;
  out.duration = turn * 60 / 360;
  back.duration = turn * 90 / 360;
  const auto sampled = sampleCycle(makeCycle({out, back}));
  ASSERT_TRUE(sampled.has_value());
  const auto peak = [&](int segment) {
    return (sampled->segment == segment).select(sampled->acceleration, 0).abs().maxCoeff();
  };
  EXPECT_NEAR(peak(0), 177.6, 177.6 * 5e-4);
  EXPECT_NEAR(peak(1), 78.9, 78.9 * 1e-3);
}

// Lynch & Park, Modern Robotics, companion code, docstring of the quintic time scaling:
// Tf = 2, t = 0.6 gives s = 0.16308.
TEST(PublishedMotionLaws, QuinticTimeScaling) {
  EXPECT_NEAR(stateAt(polynomial345Pieces().front(), 0.6 / 2).position, 0.16308, 1e-12);
}

}  // namespace
}  // namespace jw

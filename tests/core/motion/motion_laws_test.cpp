#include "core/motion/motion_laws.h"

#include <cmath>
#include <random>

#include <gtest/gtest.h>

namespace jw {
namespace {

struct NamedLaw {
  const char* name;
  std::vector<SmoothPiece> pieces;
  bool symmetric = true;  ///< s(1 − u) = 1 − s(u)
};

std::vector<NamedLaw> moves() {
  return {{"triangle", trapezoidalPieces(0.5, 0.5)},
          {"trapezoid", trapezoidalPieces(0.2, 0.5), false},
          {"jerk limited", jerkLimitedPieces(0.3, 0.3, 0.25)},
          {"jerk limited, skew", jerkLimitedPieces(0.1, 0.6, 0.5), false},
          {"3-4-5", polynomial345Pieces()},
          {"4-5-6-7", polynomial4567Pieces()},
          {"sine acceleration", sineAccelerationPieces()},
          {"harmonic", harmonicPieces()},
          {"modified trapezoid", modifiedTrapezoidPieces()},
          {"modified sine", modifiedSinePieces()}};
}

const SmoothPiece& pieceAt(const std::vector<SmoothPiece>& pieces, double u) {
  for (const SmoothPiece& piece : pieces)
    if (u <= piece.end) return piece;
  return pieces.back();
}

TEST(MotionLaws, StartAtRestAt0AndEndAtRestAt1) {
  for (const NamedLaw& law : moves()) {
    SCOPED_TRACE(law.name);
    const MotionState start = stateAt(law.pieces.front(), 0);
    const MotionState end = stateAt(law.pieces.back(), 1);
    EXPECT_NEAR(start.position, 0, 1e-14);
    EXPECT_NEAR(start.speed, 0, 1e-14);
    EXPECT_NEAR(end.position, 1, 1e-13);
    EXPECT_NEAR(end.speed, 0, 1e-12);
  }
}

TEST(MotionLaws, PiecesCoverTheMoveAndJoinInPositionAndSpeed) {
  for (const NamedLaw& law : moves()) {
    SCOPED_TRACE(law.name);
    EXPECT_EQ(law.pieces.front().begin, 0);
    EXPECT_EQ(law.pieces.back().end, 1);
    for (std::size_t i = 1; i < law.pieces.size(); ++i) {
      EXPECT_EQ(law.pieces[i].begin, law.pieces[i - 1].end);
      const MotionState left = stateAt(law.pieces[i - 1], law.pieces[i].begin);
      const MotionState right = stateAt(law.pieces[i], law.pieces[i].begin);
      EXPECT_NEAR(left.position, right.position, 1e-14);
      EXPECT_NEAR(left.speed, right.speed, 1e-13);
    }
  }
}

// Laws made to spare the machine have no jump in acceleration; VDI 2143 calls them free of jerk
// (from memory).
TEST(MotionLaws, SmoothLawsHaveContinuousAcceleration) {
  for (const auto& pieces :
       {jerkLimitedPieces(0.3, 0.2, 0.25), modifiedTrapezoidPieces(), modifiedSinePieces()}) {
    EXPECT_NEAR(stateAt(pieces.front(), 0).acceleration, 0, 1e-12);
    EXPECT_NEAR(stateAt(pieces.back(), 1).acceleration, 0, 1e-12);
    for (std::size_t i = 1; i < pieces.size(); ++i)
      EXPECT_NEAR(stateAt(pieces[i - 1], pieces[i].begin).acceleration,
                  stateAt(pieces[i], pieces[i].begin).acceleration, 1e-12);
  }
}

/// Six-point central difference, exact to h⁶ (Abramowitz & Stegun, table 25.2, from memory).
template <class F>
double differentiate(const F& f, double u, double h) {
  return (45 * (f(u + h) - f(u - h)) - 9 * (f(u + 2 * h) - f(u - 2 * h)) + f(u + 3 * h) -
          f(u - 3 * h)) /
         (60 * h);
}

TEST(MotionLaws, SpeedAccelerationAndJerkAreTheDerivatives) {
  for (const NamedLaw& law : moves()) {
    SCOPED_TRACE(law.name);
    for (const SmoothPiece& piece : law.pieces) {
      const double h = (piece.end - piece.begin) / 100;
      for (const double part : {0.1, 0.3, 0.5, 0.8}) {
        const double u = piece.begin + part * (piece.end - piece.begin);
        const MotionState state = stateAt(piece, u);
        const auto of = [&](double MotionState::*member) {
          return differentiate([&](double v) { return stateAt(piece, v).*member; }, u, h);
        };
        EXPECT_NEAR(of(&MotionState::position), state.speed, 1e-9);
        EXPECT_NEAR(of(&MotionState::speed), state.acceleration, 1e-8);
        EXPECT_NEAR(of(&MotionState::acceleration), state.jerk, 1e-7);
      }
    }
  }
}

TEST(MotionLaws, SymmetricLawsAreTheirOwnTimeReversal) {
  for (const NamedLaw& law : moves()) {
    if (!law.symmetric) continue;
    SCOPED_TRACE(law.name);
    for (const double u : {0.03, 0.11, 0.2, 0.31, 0.44}) {
      const MotionState early = stateAt(pieceAt(law.pieces, u), u);
      const MotionState late = stateAt(pieceAt(law.pieces, 1 - u), 1 - u);
      EXPECT_NEAR(early.position, 1 - late.position, 1e-13);
      EXPECT_NEAR(early.speed, late.speed, 1e-12);
      EXPECT_NEAR(early.acceleration, -late.acceleration, 1e-11);
    }
  }
}

TEST(MotionLaws, ExchangedSharesRunTheMoveBackwards) {
  const auto forward = jerkLimitedPieces(0.2, 0.5, 0.3);
  const auto backward = jerkLimitedPieces(0.5, 0.2, 0.3);
  for (const double u : {0.01, 0.05, 0.15, 0.4, 0.6, 0.75, 0.99})
    EXPECT_NEAR(stateAt(pieceAt(forward, u), u).position,
                1 - stateAt(pieceAt(backward, 1 - u), 1 - u).position, 1e-13);
}

// Cruise speed from the area under the speed: h = v·(T − (ta + td)/2).
TEST(MotionLaws, CruiseSpeedFollowsFromTheArea) {
  for (const auto& pieces : {trapezoidalPieces(0.2, 0.4), jerkLimitedPieces(0.2, 0.4, 0.1)})
    EXPECT_NEAR(stateAt(pieceAt(pieces, 0.4), 0.4).speed, 1 / (1 - 0.3), 1e-13);
}

TEST(MotionLaws, JerkLimitedNearsTrapezoidalAsTheJerkPhasesVanish) {
  const auto sharp = trapezoidalPieces(0.3, 0.2);
  const auto nearly = jerkLimitedPieces(0.3, 0.2, 1e-6);
  for (const double u : {0.05, 0.2, 0.5, 0.9}) {
    EXPECT_NEAR(stateAt(pieceAt(sharp, u), u).position, stateAt(pieceAt(nearly, u), u).position,
                1e-6);
    EXPECT_NEAR(stateAt(pieceAt(sharp, u), u).acceleration,
                stateAt(pieceAt(nearly, u), u).acceleration, 1e-5);
  }
}

TEST(MotionLaws, SharesThatAddUpTo1HaveNoCruise) {
  EXPECT_EQ(trapezoidalPieces(0.9, 0.1).size(), 2u);
  EXPECT_EQ(trapezoidalPieces(0.7, 0.3).size(), 2u);  // 1 − 0.7 − 0.3 is not 0 in binary
  EXPECT_EQ(jerkLimitedPieces(0.5, 0.5, 0.5).size(), 4u);
  EXPECT_EQ(jerkLimitedPieces(0.3, 0.3, 0.2).size(), 7u);
}

TEST(MotionLaws, ArraysOfSamplesAgreeWithTheClosedForm) {
  auto laws = moves();
  laws.push_back({"sinusoid", sinusoidPieces(7.3)});
  for (const NamedLaw& law : laws) {
    SCOPED_TRACE(law.name);
    for (const SmoothPiece& piece : law.pieces) {
      for (const Eigen::Index n : {3, 63, 64, 65, 129, 1001}) {
        Eigen::ArrayXd s(n), v(n), a(n);
        samplePiece(piece, {s, v, a});
        for (Eigen::Index k = 0; k < n; ++k) {
          const double u = piece.begin + (piece.end - piece.begin) * static_cast<double>(k) /
                                             static_cast<double>(n - 1);
          const MotionState state = stateAt(piece, u);
          ASSERT_NEAR(s[k], state.position, 1e-13);
          ASSERT_NEAR(v[k], state.speed, 1e-12);
          ASSERT_NEAR(a[k], state.acceleration, 1e-10);
        }
      }
    }
  }
}

TEST(MotionLaws, ASegmentWithoutTravelStandsStill) {
  Segment segment;
  segment.travel = 0;
  segment.accelShare = 0;
  const auto pieces = motionPieces(shapeOf(segment));
  ASSERT_EQ(pieces.size(), 1u);
  EXPECT_EQ(stateAt(pieces.front(), 0.7).position, 0);
}

TEST(MotionLaws, EveryLawWithAClosedFormHasPieces) {
  Segment segment;
  segment.travel = 1;
  for (int law = 0; law < static_cast<int>(MotionLaw::Table); ++law) {
    segment.law = static_cast<MotionLaw>(law);
    EXPECT_FALSE(motionPieces(shapeOf(segment)).empty()) << law;
  }
}

}  // namespace
}  // namespace jw

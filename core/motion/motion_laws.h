#pragma once

#include <vector>

#include "core/model/cycle.h"
#include "core/motion/smooth_piece.h"

namespace jw {

/// What a move's course depends on, without its time.
struct MotionShape {
  MotionLaw law = MotionLaw::Trapezoidal;
  double travel = 0;  ///< [rad] end minus start; amplitude for Sinusoid
  double accelShare = 1.0 / 3, decelShare = 1.0 / 3, jerkShare = 0.5;
  double periods = 1;
};

/// The shape that a segment's own fields give.
MotionShape shapeOf(const Segment& segment);

// Motion laws in normalised form: u = time over duration, s = position over travel. Arguments are
// taken as checked (cycleInputError). The laws are named as in VDI 2143 part 1 and the cam
// handbooks.

/// Constant acceleration for `accelShare` of the time, cruise, constant deceleration for
/// `decelShare` [both 1, above 0, sum at most 1]. Cruise speed 1/(1 − (accelShare + decelShare)/2).
std::vector<SmoothPiece> trapezoidalPieces(double accelShare, double decelShare);

/// Seven phases of constant jerk: as trapezoidal, but `jerkShare` [1, above 0, at most 0.5] of each
/// speed change is spent building its acceleration up and as much taking it off. Peak acceleration
/// = cruise speed/((1 − jerkShare)·accelShare).
std::vector<SmoothPiece> jerkLimitedPieces(double accelShare, double decelShare, double jerkShare);

/// s = 10u³ − 15u⁴ + 6u⁵: acceleration is 0 at both ends.
std::vector<SmoothPiece> polynomial345Pieces();

/// s = 35u⁴ − 84u⁵ + 70u⁶ − 20u⁷: acceleration and jerk are 0 at both ends.
std::vector<SmoothPiece> polynomial4567Pieces();

/// s = u − sin(2πu)/2π: acceleration is one full sine (cycloidal motion).
std::vector<SmoothPiece> sineAccelerationPieces();

/// s = (1 − cos πu)/2: simple harmonic motion from stop to stop; acceleration jumps at both ends.
std::vector<SmoothPiece> harmonicPieces();

/// s = sin(2π·periods·u) [periods above 0]: steady oscillation, amplitude 1 about the start.
std::vector<SmoothPiece> sinusoidPieces(double periods);

/// Acceleration a trapezoid with quarter- and half-sine flanks: sine for 1/8, constant for 1/4,
/// half sine through 0 for 1/4, and mirrored. Peak acceleration 8π/(2 + π).
std::vector<SmoothPiece> modifiedTrapezoidPieces();

/// Acceleration a quarter sine for 1/8, a half sine through 0 for 3/4, a quarter sine for 1/8.
/// Peak speed 4π/(4 + π), peak acceleration 4π²/(4 + π).
std::vector<SmoothPiece> modifiedSinePieces();

/// Standing still: s = 0.
std::vector<SmoothPiece> dwellPieces();

/// The pieces of the shape's law, in order of time, covering u from 0 to 1; empty for
/// MotionLaw::Table, which has no closed form. A move without travel is a dwell.
std::vector<SmoothPiece> motionPieces(const MotionShape& shape);

}  // namespace jw

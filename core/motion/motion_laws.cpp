#include "core/motion/motion_laws.h"

namespace jw {

std::vector<SmoothPiece> dwellPieces() {
  return {SmoothPiece{}};
}

std::vector<SmoothPiece> motionPieces(const Segment& segment) {
  if (segment.law != MotionLaw::Table && segment.travel == 0) return dwellPieces();
  switch (segment.law) {
    case MotionLaw::Trapezoidal:
      return trapezoidalPieces(segment.accelShare, segment.decelShare);
    case MotionLaw::JerkLimited:
      return jerkLimitedPieces(segment.accelShare, segment.decelShare, segment.jerkShare);
    case MotionLaw::Polynomial345:
      return polynomial345Pieces();
    case MotionLaw::Polynomial4567:
      return polynomial4567Pieces();
    case MotionLaw::SineAcceleration:
      return sineAccelerationPieces();
    case MotionLaw::Harmonic:
      return harmonicPieces();
    case MotionLaw::ModifiedTrapezoid:
      return modifiedTrapezoidPieces();
    case MotionLaw::ModifiedSine:
      return modifiedSinePieces();
    case MotionLaw::Sinusoid:
      return sinusoidPieces(segment.periods);
    case MotionLaw::Dwell:
      return dwellPieces();
    case MotionLaw::Table:
      break;
  }
  return {};
}

}  // namespace jw

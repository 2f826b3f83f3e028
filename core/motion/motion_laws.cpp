#include "core/motion/motion_laws.h"

namespace jw {

std::vector<SmoothPiece> dwellPieces() { return {SmoothPiece{}}; }

MotionShape shapeOf(const Segment& segment) {
  return {segment.law,        segment.travel,    segment.accelShare,
          segment.decelShare, segment.jerkShare, segment.periods};
}

std::vector<SmoothPiece> motionPieces(const MotionShape& shape) {
  if (shape.law != MotionLaw::Table && shape.travel == 0) return dwellPieces();
  switch (shape.law) {
    case MotionLaw::Trapezoidal: return trapezoidalPieces(shape.accelShare, shape.decelShare);
    case MotionLaw::JerkLimited:
      return jerkLimitedPieces(shape.accelShare, shape.decelShare, shape.jerkShare);
    case MotionLaw::Polynomial345: return polynomial345Pieces();
    case MotionLaw::Polynomial4567: return polynomial4567Pieces();
    case MotionLaw::SineAcceleration: return sineAccelerationPieces();
    case MotionLaw::Harmonic: return harmonicPieces();
    case MotionLaw::ModifiedTrapezoid: return modifiedTrapezoidPieces();
    case MotionLaw::ModifiedSine: return modifiedSinePieces();
    case MotionLaw::Sinusoid: return sinusoidPieces(shape.periods);
    case MotionLaw::Dwell: return dwellPieces();
    case MotionLaw::Table: break;
  }
  return {};
}

}  // namespace jw

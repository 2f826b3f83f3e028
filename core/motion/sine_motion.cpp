#include <cmath>
#include <numbers>

#include "core/motion/motion_laws.h"

namespace jw {
namespace {

constexpr double kPi = std::numbers::pi;

/// Coarsest sampling of an oscillation: a sample each 22.5°.
constexpr Eigen::Index kHalfIntervalsPerPeriod = 8;

}  // namespace

std::vector<SmoothPiece> sineAccelerationPieces() {
  SmoothPiece piece;
  piece.coefficients[1] = 1;
  piece.amplitude = -1 / (2 * kPi);
  piece.frequency = 2 * kPi;
  return {piece};
}

std::vector<SmoothPiece> harmonicPieces() {
  SmoothPiece piece;
  piece.coefficients[0] = 0.5;
  piece.amplitude = 0.5;
  piece.frequency = kPi;
  piece.phase = -kPi / 2;
  return {piece};
}

std::vector<SmoothPiece> sinusoidPieces(double periods) {
  SmoothPiece piece;
  piece.amplitude = 1;
  piece.frequency = 2 * kPi * periods;
  piece.minIntervals = 2 * static_cast<Eigen::Index>(std::ceil(periods * kHalfIntervalsPerPeriod));
  return {piece};
}

}  // namespace jw

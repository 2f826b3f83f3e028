#include "core/motion/motion_laws.h"

namespace jw {
namespace {

std::vector<SmoothPiece> onePolynomial(const std::array<double, 8>& coefficients) {
  SmoothPiece piece;
  piece.coefficients = coefficients;
  return {piece};
}

}  // namespace

std::vector<SmoothPiece> polynomial345Pieces() {
  return onePolynomial({0, 0, 0, 10, -15, 6, 0, 0});
}

std::vector<SmoothPiece> polynomial4567Pieces() {
  return onePolynomial({0, 0, 0, 0, 35, -84, 70, -20});
}

}  // namespace jw

#include <numbers>

#include "core/motion/motion_laws.h"

namespace jw {
namespace {

constexpr double kPi = std::numbers::pi;

}  // namespace

std::vector<SmoothPiece> modifiedTrapezoidPieces() {
  AccelerationChain chain;
  chain.addSine(0.125, 1, 0, kPi / 2);
  chain.addLinear(0.25, 1, 1);
  chain.addSine(0.25, 1, kPi / 2, 3 * kPi / 2);
  chain.addLinear(0.25, -1, -1);
  chain.addSine(0.125, 1, 3 * kPi / 2, 2 * kPi);
  return chain.scaledToUnitTravel();
}

std::vector<SmoothPiece> modifiedSinePieces() {
  AccelerationChain chain;
  chain.addSine(0.125, 1, 0, kPi / 2);
  chain.addSine(0.75, 1, kPi / 2, 3 * kPi / 2);
  chain.addSine(0.125, 1, 3 * kPi / 2, 2 * kPi);
  return chain.scaledToUnitTravel();
}

}  // namespace jw

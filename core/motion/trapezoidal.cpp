#include "core/motion/motion_laws.h"

namespace jw {
namespace {

/// Cruise below this share of the duration is rounding of accelShare + decelShare = 1.
constexpr double kNoCruise = 1e-12;

void addCruise(AccelerationChain& chain, double share) {
  if (share > kNoCruise) chain.addLinear(share, 0, 0);
}

/// One speed change of ±1 over `share` of the time, with jerk phases of jerkShare·share.
void addSpeedChange(AccelerationChain& chain, double share, double jerkShare, double sign) {
  const double peak = sign / ((1 - jerkShare) * share);
  chain.addLinear(jerkShare * share, 0, peak);
  chain.addLinear((1 - 2 * jerkShare) * share, peak, peak);
  chain.addLinear(jerkShare * share, peak, 0);
}

}  // namespace

std::vector<SmoothPiece> trapezoidalPieces(double accelShare, double decelShare) {
  return jerkLimitedPieces(accelShare, decelShare, 0);
}

std::vector<SmoothPiece> jerkLimitedPieces(double accelShare, double decelShare, double jerkShare) {
  AccelerationChain chain;
  addSpeedChange(chain, accelShare, jerkShare, 1);
  addCruise(chain, 1 - accelShare - decelShare);
  addSpeedChange(chain, decelShare, jerkShare, -1);
  return chain.scaledToUnitTravel();
}

}  // namespace jw

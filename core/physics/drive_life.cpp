#include "core/physics/drive_life.h"

#include <cmath>
#include <limits>

namespace jw {

double averageTorque(const SampledCycle& cycle, const Eigen::ArrayXd& torque,
                     const Eigen::ArrayXd& speed, double exponent) {
  const double peak = torque.abs().maxCoeff();
  const Eigen::ArrayXd turned = cycle.weight * speed.abs();
  const double turns = turned.sum();
  if (!(turns > 0) || !(peak > 0)) return 0;
  // Relative to the peak, so that no power can overflow.
  const Eigen::ArrayXd share = torque.abs() / peak;
  const double mean = exponent == 3 ? (turned * share.cube()).sum() / turns
                                    : (turned * share.pow(exponent)).sum() / turns;
  return peak * std::pow(mean, 1 / exponent);
}

double averageSpeed(const SampledCycle& cycle, const Eigen::ArrayXd& speed) {
  return (cycle.weight * speed.abs()).sum() / cycle.period;
}

double driveLife(double ratedLife, double ratedTorque, double ratedSpeed, double exponent,
                 double averageTorque, double averageSpeed) {
  if (averageTorque == 0 || averageSpeed == 0) return std::numeric_limits<double>::infinity();
  return ratedLife * std::pow(ratedTorque / averageTorque, exponent) * ratedSpeed / averageSpeed;
}

}  // namespace jw

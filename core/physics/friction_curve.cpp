#include "core/physics/friction_curve.h"

namespace jw {

Eigen::ArrayXd frictionTorque(const Load& load, const Eigen::ArrayXd& speed) {
  if (!isSet(load.breakawayFriction) || !isSet(load.stribeckSpeed)) {
    return load.viscousFriction * speed + load.coulombFriction * speed.sign();
  }
  const double drop = load.breakawayFriction - load.coulombFriction;
  const auto dry = load.coulombFriction + drop * (-(speed / load.stribeckSpeed).square()).exp();
  return load.viscousFriction * speed + dry * speed.sign();
}

}  // namespace jw

#pragma once

#include "core/model/load.h"

namespace jw {

/// A pose and the static torque there.
struct StaticPose {
  double angle = 0;   ///< [rad]
  double torque = 0;  ///< [N·m], signed
};

/// The pose between `low` and `high` [rad] whose static torque (gravity and counterbalance, no
/// friction) is largest in size. Closed form: ends of the travel and the zeros of the derivative
/// -M sin(q + phi) + k_s; with an extension spring by search, in steps of a degree and then
/// narrowed down, over the first and the last turn of the travel.
StaticPose worstStaticPose(const Load& load, double payloadMass, double low, double high);

}  // namespace jw

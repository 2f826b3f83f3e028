#pragma once

#include <Eigen/Core>

#include "core/model/load.h"

namespace jw {

/// [N·m] friction at the joint by speed [rad/s]: (c_c + (T_s - c_c) exp(-(w/w_s)²)) sgn w + c_v w,
/// dry friction c_c, viscous c_v and, where a friction at rest T_s is given, the Stribeck fall from
/// it over the speed w_s (Armstrong-Hélouvry, Dupont and Canudas de Wit, Automatica 30 (1994) 1083,
/// from memory). At rest it is taken as none: there it may be anything up to T_s either way.
Eigen::ArrayXd frictionTorque(const Load& load, const Eigen::ArrayXd& speed);

}  // namespace jw

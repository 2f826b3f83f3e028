#pragma once

#include <Eigen/Core>

#include "core/model/load.h"

namespace jw {

/// A counterbalance extension spring between an eye on the link and a fixed eye, both in the
/// joint's plane. Its pull is F = F_0 + k (L - L_0) while it is longer than its free length, none
/// when loose; L² = a² + b² - 2 a b cos(theta), theta = q + phi_a - phi_b (law of cosines).
struct ExtensionSpring {
  double rate = 0;        ///< [N/m] k
  double preload = 0;     ///< [N] F_0
  double freeLength = 0;  ///< [m] L_0
  double arm = 0;         ///< [m] a
  double post = 0;        ///< [m] b
  double phase = 0;       ///< [rad] phi_a - phi_b

  bool given() const { return rate > 0 || preload > 0; }
  double lengthAt(double angle) const;  ///< [m] between the eyes
  double pullAt(double angle) const;    ///< [N]
  /// [N·m] that the joint has to give against the spring at `angle` [rad]: dV/dq = F a b
  /// sin(theta) / L. With L_0 = 0 and no preload it is k a b sin(theta), which balances a weight at
  /// every angle when k a b = m g r (textbook result on static balancing with a spring of zero free
  /// length, from memory).
  double torqueAt(double angle) const;
  void addTorque(const Eigen::ArrayXd& angle, Eigen::ArrayXd& torque) const;
};

/// The spring of the load. What it needs has to be set if it is given.
ExtensionSpring extensionSpring(const Load& load);

}  // namespace jw

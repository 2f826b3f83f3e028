#pragma once

#include <vector>

#include <Eigen/Core>

#include "core/model/load.h"
#include "core/motion/sampled_cycle.h"
#include "core/physics/carried_masses.h"

namespace jw {

/// Torque [N·m] that the joint has to give over the cycle, split by cause; n samples each.
/// tau = J_L q'' + gravity(q) + friction(q') + counterbalance(q) + external (Newton-Euler about a
/// fixed axis).
struct LoadTorque {
  Eigen::ArrayXd inertia;
  Eigen::ArrayXd gravity;
  Eigen::ArrayXd friction;
  Eigen::ArrayXd spring;  ///< counterbalance: torsion spring, extension spring, constant torque
  Eigen::ArrayXd external;
  Eigen::ArrayXd total;
  std::vector<double> segmentInertia;  ///< [kg·m²] load inertia in each segment
  double largestInertia = 0;           ///< [kg·m²]
};

/// Gravity torque [N·m] at joint angle q is x cos(q) - y sin(q).
struct GravityMoment {
  double x = 0;
  double y = 0;
};

/// -(sum m p × g) along the axis, for masses at p; with the axis horizontal x = g sum(m x) and
/// y = g sum(m y).
GravityMoment gravityMoment(const CarriedMasses& masses, const Eigen::Vector3d& gravity);

/// [kg·m²] link, payload and masses listed about the joint axis.
double loadInertia(const Load& load, double payloadMass);

/// [N·m] torque that holds the load still at `angle` against gravity and counterbalance, without
/// friction and external torque; `payloadMass` [kg].
double staticTorque(const Load& load, double angle, double payloadMass);

/// The torque of the whole cycle. The load must be free of loadInputErrors().
LoadTorque loadTorque(const SampledCycle& cycle, const Cycle& source, const Load& load);

}  // namespace jw

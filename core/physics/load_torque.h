#pragma once

#include <vector>

#include <Eigen/Core>

#include "core/model/load.h"
#include "core/motion/sampled_cycle.h"

namespace jw {

/// Torque [N·m] that the joint has to give over the cycle, split by cause; n samples each.
/// tau = J_L q'' + g cos(tilt) sum(m_i r_i cos(q + phi_i)) + c_v q' + c_c sgn(q') + spring +
/// external (Newton-Euler about a fixed axis).
struct LoadTorque {
  Eigen::ArrayXd inertia;
  Eigen::ArrayXd gravity;
  Eigen::ArrayXd friction;
  Eigen::ArrayXd spring;  ///< counterbalance: torsion spring and constant torque
  Eigen::ArrayXd external;
  Eigen::ArrayXd total;
  std::vector<double> segmentInertia;  ///< [kg·m²] load inertia in each segment
  double largestInertia = 0;           ///< [kg·m²]
};

/// [kg·m²] link and payload about the joint axis, the payload as a mass with inertia of its own.
double loadInertia(const Load& load, double payloadMass);

/// [N·m] torque that holds the load still at `angle` against gravity and counterbalance, without
/// friction; `payloadMass` [kg].
double staticTorque(const Load& load, double angle, double payloadMass);

/// [kg] payload of a segment: its own if set, else the load's.
double payloadOf(const Load& load, const Segment& segment);

LoadTorque loadTorque(const SampledCycle& cycle, const Cycle& source, const Load& load);

}  // namespace jw

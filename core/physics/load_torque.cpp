#include "core/physics/load_torque.h"

#include <algorithm>
#include <cmath>

namespace jw {
namespace {

using Eigen::ArrayXd;
using Eigen::Index;

/// Gravity torque [N·m] is x cos(q) - y sin(q): the moments of all masses in the joint's plane.
struct GravityMoment {
  double x = 0;
  double y = 0;
};

GravityMoment gravityMoment(const Load& load, double payloadMass) {
  const double g = load.gravity * std::cos(load.axisTilt);
  const double link = g * load.linkMass * load.linkDistance;
  const double payload = g * payloadMass * load.payloadDistance;
  return {link * std::cos(load.linkAngle) + payload * std::cos(load.payloadAngle),
          link * std::sin(load.linkAngle) + payload * std::sin(load.payloadAngle)};
}

/// Values that are constant within a segment, spread over the samples.
struct PerSample {
  ArrayXd inertia, momentX, momentY, external;
};

PerSample spread(const SampledCycle& cycle, const Cycle& source, const Load& load) {
  const auto count = static_cast<Index>(source.segments.size());
  PerSample segments{ArrayXd(count), ArrayXd(count), ArrayXd(count), ArrayXd(count)};
  for (Index k = 0; k < count; ++k) {
    const Segment& segment = source.segments[static_cast<std::size_t>(k)];
    const double mass = payloadOf(load, segment);
    const GravityMoment moment = gravityMoment(load, mass);
    segments.inertia[k] = loadInertia(load, mass);
    segments.momentX[k] = moment.x;
    segments.momentY[k] = moment.y;
    segments.external[k] = load.externalTorque + segment.externalTorque;
  }
  const auto& at = cycle.segment;
  return {segments.inertia(at), segments.momentX(at), segments.momentY(at), segments.external(at)};
}

}  // namespace

double payloadOf(const Load& load, const Segment& segment) {
  return isSet(segment.payloadMass) ? segment.payloadMass : load.payloadMass;
}

double loadInertia(const Load& load, double payloadMass) {
  const double r = load.payloadDistance;
  // A payload of no mass has no inertia of its own either.
  return load.inertia + (payloadMass > 0 ? load.payloadInertia + payloadMass * r * r : 0.0);
}

double staticTorque(const Load& load, double angle, double payloadMass) {
  const GravityMoment m = gravityMoment(load, payloadMass);
  return m.x * std::cos(angle) - m.y * std::sin(angle) +
         load.springStiffness * (angle - load.springAngle) - load.balanceTorque;
}

LoadTorque loadTorque(const SampledCycle& cycle, const Cycle& source, const Load& load) {
  const PerSample at = spread(cycle, source, load);
  LoadTorque torque;
  torque.inertia = at.inertia * cycle.acceleration;
  torque.gravity = at.momentX * cycle.angle.cos() - at.momentY * cycle.angle.sin();
  torque.friction = load.viscousFriction * cycle.speed + load.coulombFriction * cycle.speed.sign();
  torque.spring = load.springStiffness * (cycle.angle - load.springAngle) - load.balanceTorque;
  torque.external = at.external;
  torque.total =
      torque.inertia + torque.gravity + torque.friction + torque.spring + torque.external;
  torque.largestInertia = 0;
  for (const Segment& segment : source.segments) {
    torque.segmentInertia.push_back(loadInertia(load, payloadOf(load, segment)));
    if (segment.disabled) continue;
    torque.largestInertia = std::max(torque.largestInertia, torque.segmentInertia.back());
  }
  return torque;
}

}  // namespace jw

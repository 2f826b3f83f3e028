#include "core/physics/load_torque.h"

#include <algorithm>
#include <cmath>

#include "core/physics/extension_spring.h"
#include "core/physics/external_torque.h"
#include "core/physics/friction_curve.h"

namespace jw {
namespace {

using Eigen::ArrayXd;
using Eigen::Index;

/// Values that are constant within a segment, spread over the samples.
struct PerSample {
  ArrayXd inertia, momentX, momentY, external;
};

PerSample spread(const SampledCycle& cycle, const Cycle& source, const Load& load) {
  const auto count = static_cast<Index>(source.segments.size());
  PerSample segments{ArrayXd(count), ArrayXd(count), ArrayXd(count), ArrayXd(count)};
  const Eigen::Vector3d gravity = gravityVector(load);
  for (Index k = 0; k < count; ++k) {
    const Segment& segment = source.segments[static_cast<std::size_t>(k)];
    const CarriedMasses masses = carriedMasses(load, payloadOf(load, segment));
    const GravityMoment moment = gravityMoment(masses, gravity);
    segments.inertia[k] = masses.inertia;
    segments.momentX[k] = moment.x;
    segments.momentY[k] = moment.y;
    segments.external[k] = load.externalTorque + segment.externalTorque;
  }
  const auto& at = cycle.segment;
  return {segments.inertia(at), segments.momentX(at), segments.momentY(at), segments.external(at)};
}

void addExternals(const SampledCycle& cycle, const Cycle& source, const Load& load,
                  ArrayXd& torque) {
  if (load.externalOver != ExternalOver::None) {
    if (const auto table = externalTable(load)) {
      addExternal(*table, load.externalOver, cycle, torque);
    }
  }
  addTableTorques(source, cycle, torque);
}

}  // namespace

GravityMoment gravityMoment(const CarriedMasses& masses, const Eigen::Vector3d& gravity) {
  return {masses.y * gravity.x() - masses.x * gravity.y(),
          -(masses.x * gravity.x() + masses.y * gravity.y())};
}

double loadInertia(const Load& load, double payloadMass) {
  return carriedMasses(load, payloadMass).inertia;
}

double staticTorque(const Load& load, double angle, double payloadMass) {
  const GravityMoment m = gravityMoment(carriedMasses(load, payloadMass), gravityVector(load));
  const ExtensionSpring extension = extensionSpring(load);
  return m.x * std::cos(angle) - m.y * std::sin(angle) +
         load.springStiffness * (angle - load.springAngle) - load.balanceTorque +
         (extension.given() ? extension.torqueAt(angle) : 0);
}

LoadTorque loadTorque(const SampledCycle& cycle, const Cycle& source, const Load& load) {
  PerSample at = spread(cycle, source, load);
  LoadTorque torque;
  torque.inertia = at.inertia * cycle.acceleration;
  torque.gravity = at.momentX * cycle.angle.cos() - at.momentY * cycle.angle.sin();
  torque.friction = frictionTorque(load, cycle.speed);
  torque.spring = load.springStiffness * (cycle.angle - load.springAngle) - load.balanceTorque;
  if (const ExtensionSpring extension = extensionSpring(load); extension.given()) {
    extension.addTorque(cycle.angle, torque.spring);
  }
  addExternals(cycle, source, load, at.external);
  torque.external = std::move(at.external);
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

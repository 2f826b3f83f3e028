#include "core/physics/carried_masses.h"

#include <cmath>

namespace jw {
namespace {

Eigen::Vector3d inPlane(double distance, double angle, double overhang) {
  return {distance * std::cos(angle), distance * std::sin(angle), overhang};
}

}  // namespace

void CarriedMasses::add(double m, const Eigen::Vector3d& centre, double own) {
  mass += m;
  x += m * centre.x();
  y += m * centre.y();
  z += m * centre.z();
  xz += m * centre.x() * centre.z();
  yz += m * centre.y() * centre.z();
  inertia += own + m * centre.head<2>().squaredNorm();
}

CarriedMasses carriedMasses(const Load& load, double payloadMass) {
  CarriedMasses sum;
  sum.add(load.linkMass, inPlane(load.linkDistance, load.linkAngle, load.overhang), 0);
  sum.inertia = isSet(load.inertia) ? load.inertia : 0;
  const bool carries = payloadMass > 0;
  const Eigen::Vector3d centre = inPlane(load.payloadDistance, load.payloadAngle, load.overhang);
  if (carries) sum.add(payloadMass, centre, load.payloadInertia);
  for (const LoadMass& body : load.masses) {
    sum.add(body.mass, {body.x, body.y, body.z}, body.inertia);
  }
  return sum;
}

Eigen::Vector3d gravityVector(const Load& load) {
  if (load.mounting == Mounting::Tilt) {
    return load.gravity * Eigen::Vector3d(0, -std::cos(load.axisTilt), -std::sin(load.axisTilt));
  }
  const Eigen::Vector3d down(load.downX, load.downY, load.downZ);
  const double length = down.stableNorm();
  return length > 0 ? Eigen::Vector3d(load.gravity / length * down) : Eigen::Vector3d::Zero();
}

double payloadOf(const Load& load, const Segment& segment) {
  return isSet(segment.payloadMass) ? segment.payloadMass : load.payloadMass;
}

}  // namespace jw

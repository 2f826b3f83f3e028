#pragma once

#include <cmath>

#include <kdl/chain.hpp>
#include <kdl/chaindynparam.hpp>
#include <kdl/chainidsolver_recursive_newton_euler.hpp>

#include "core/model/load.h"

namespace jw {

/// A planar two-link arm in Orocos KDL: link lengths [m], masses [kg], centres of mass [m] from
/// each joint, inertias [kg·m²] about them, rotor inertias [kg·m²] seen at the joints. Gravity 9.81
/// along -y.
struct PlanarArm {
  double length1 = 0.5, length2 = 0.4;
  double mass1 = 4.0, mass2 = 2.5;
  double centre1 = 0.23, centre2 = 0.18;
  double inertia1 = 0.09, inertia2 = 0.04;
  double rotor1 = 0, rotor2 = 0;

  static constexpr double kGravity = 9.81;
  static KDL::Vector gravity() { return {0, -kGravity, 0}; }

  KDL::Chain chain() const {
    KDL::Chain chain;
    chain.addSegment(segment(length1, mass1, centre1, inertia1, rotor1));
    chain.addSegment(segment(length2, mass2, centre2, inertia2, rotor2));
    return chain;
  }

  /// Both links as one body about the shoulder with the elbow locked, composed by KDL.
  KDL::RigidBodyInertia lockedBody(double elbow) const {
    const KDL::Frame atElbow(KDL::Rotation::RotZ(elbow), KDL::Vector(length1, 0, 0));
    return body(mass1, centre1, inertia1) + atElbow * body(mass2, centre2, inertia2);
  }

 private:
  static KDL::RigidBodyInertia body(double mass, double centre, double inertia) {
    return KDL::RigidBodyInertia(mass, KDL::Vector(centre, 0, 0),
                                 KDL::RotationalInertia(0, 0, inertia));
  }

  /// KDL keeps the inertia in the frame of the segment's tip.
  static KDL::Segment segment(double length, double mass, double centre, double inertia,
                              double rotor) {
    const KDL::Frame tip(KDL::Vector(length, 0, 0));
    return KDL::Segment(KDL::Joint(KDL::Joint::RotZ, 1, 0, rotor), tip,
                        tip.Inverse() * body(mass, centre, inertia));
  }
};

/// A body that turns about z as a joint's load, angle 0 with its x axis `tilt` [rad] above the
/// horizontal.
inline Load loadOf(const KDL::RigidBodyInertia& body, double tilt = 0) {
  Load load;
  const KDL::Vector centre = body.getCOG();
  load.inertia = body.getRotationalInertia().data[8];
  load.linkMass = body.getMass();
  load.linkDistance = std::hypot(centre.x(), centre.y());
  load.linkAngle = std::atan2(centre.y(), centre.x()) + tilt;
  load.gravity = PlanarArm::kGravity;
  return load;
}

/// Joint torques [N·m] by KDL's recursive Newton-Euler algorithm.
inline KDL::JntArray torques(const KDL::Chain& chain, const KDL::JntArray& q,
                             const KDL::JntArray& qd, const KDL::JntArray& qdd,
                             const KDL::Vector& gravity) {
  KDL::ChainIdSolver_RNE solver(chain, gravity);
  KDL::JntArray result(chain.getNrOfJoints());
  const KDL::Wrenches none(chain.getNrOfSegments(), KDL::Wrench::Zero());
  solver.CartToJnt(q, qd, qdd, none, result);
  return result;
}

inline KDL::JntArray joints(double first, double second) {
  KDL::JntArray values(2);
  values(0) = first;
  values(1) = second;
  return values;
}

}  // namespace jw

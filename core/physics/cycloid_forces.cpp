#include "core/physics/cycloid_forces.h"

#include <cmath>
#include <numbers>

#include "core/physics/cycloid_drive.h"
#include "core/physics/hertz_contact.h"

namespace jw {
namespace {

using Eigen::ArrayXd;
using Eigen::ArrayXXd;
using Eigen::Index;
using Eigen::Vector2d;

/// Pushes in proportion to the lever on the driving side, scaled to the moment.
void addPinForces(CycloidForces& forces, const CycloidDrive& drive, double crankAngle, Index at) {
  auto force = forces.pinForce.col(at);
  const Vector2d crank(std::cos(crankAngle), std::sin(crankAngle));
  double square = 0;
  for (Index j = 0; j < force.size(); ++j) {
    const PinContact pin = drive.ringPin(crank, j);
    force[j] = std::max(0.0, -pin.lever);
    square += force[j] * force[j];
    if (forces.pinPressure.size() > 0) forces.pinPressure(j, at) = pin.radius;
  }
  force *= forces.discTorque / square;
}

/// Turns the relative radii that addPinForces left into pressures.
void addPressures(CycloidForces& forces, double width, double modulus) {
  if (forces.pinPressure.size() == 0) return;
  const double scale = modulus / (std::numbers::pi * width);
  forces.pinPressure = (forces.pinForce * scale / forces.pinPressure).sqrt();
  forces.largestPinPressure = forces.pinPressure.maxCoeff();
}

void addOutputForces(CycloidForces& forces, const CycloidDrive& drive, double crankAngle,
                     Index at) {
  auto force = forces.outputPinForce.col(at);
  for (Index k = 0; k < force.size(); ++k) {
    force[k] = std::max(0.0, -std::sin(crankAngle - drive.outputPinAngle(crankAngle, k)));
  }
  force *= forces.discTorque / (drive.outputPinCircleRadius * force.square().sum());
}

/// Force [N] of the bearing on the disc whose eccentric stands `phase` ahead of the crank, which
/// balances ring pins and output pins.
Vector2d bearingForce(const CycloidDrive& drive, double discTorque, double crankAngle,
                      double phase) {
  const double eccentric = crankAngle + phase;
  const Vector2d along(std::cos(eccentric), std::sin(eccentric));
  Vector2d push = Vector2d::Zero();
  double square = 0;
  for (Index j = 0; j < drive.shape.pins; ++j) {
    const PinContact pin = drive.ringPin(along, j);
    const double share = std::max(0.0, -pin.lever);
    push += share * Vector2d(pin.normalX, pin.normalY);
    square += share * share;
  }
  double sum = 0, sines = 0;
  for (Index k = 0; k < drive.outputPins; ++k) {
    const double share = std::max(0.0, -std::sin(eccentric - drive.outputPinAngle(crankAngle, k)));
    sum += share;
    sines += share * share;
  }
  return discTorque * (push / square + along * sum / (drive.outputPinCircleRadius * sines));
}

void addBearing(CycloidForces& forces, const CycloidDrive& drive, Index at) {
  const double crankAngle = forces.crankAngle[at];
  Vector2d shaft = Vector2d::Zero();
  double torque = 0;
  for (int d = 0; d < drive.discs; ++d) {
    const double phase = 2 * std::numbers::pi * d / drive.discs;
    const Vector2d force = bearingForce(drive, forces.discTorque, crankAngle, phase);
    if (d == 0) forces.bearingX[at] = force.x();
    if (d == 0) forces.bearingY[at] = force.y();
    shaft -= force;
    const double eccentric = crankAngle + phase;
    torque += drive.shape.eccentricity *
              (std::cos(eccentric) * force.y() - std::sin(eccentric) * force.x());
  }
  forces.shaftX[at] = shaft.x();
  forces.shaftY[at] = shaft.y();
  forces.crankTorque[at] = torque;
}

/// Arrays of the right size.
CycloidForces blank(const CycloidDrive& drive, double discTorque, int angles) {
  CycloidForces forces;
  forces.discTorque = discTorque;
  forces.crankAngle = ArrayXd::LinSpaced(angles + 1, 0, 2 * std::numbers::pi).head(angles);
  forces.pinForce.resize(drive.shape.pins, angles);
  const bool undercut = leastConvexRadius(drive.shape) <= drive.shape.pinRadius;
  if (drive.discWidth > 0 && !undercut) forces.pinPressure.resize(drive.shape.pins, angles);
  forces.outputPinForce.resize(drive.outputPins, angles);
  const Index count = drive.outputPins > 0 ? angles : 0;
  for (ArrayXd* array :
       {&forces.bearingX, &forces.bearingY, &forces.shaftX, &forces.shaftY, &forces.crankTorque}) {
    array->resize(count);
  }
  return forces;
}

void addLargest(CycloidForces& forces, const CycloidDrive& drive, double modulus) {
  forces.largestPinForce = forces.pinForce.maxCoeff();
  if (drive.outputPins == 0) return;
  forces.largestOutputPinForce = forces.outputPinForce.maxCoeff();
  forces.largestBearingForce =
      std::sqrt((forces.bearingX.square() + forces.bearingY.square()).maxCoeff());
  forces.largestShaftForce =
      std::sqrt((forces.shaftX.square() + forces.shaftY.square()).maxCoeff());
  if (!(drive.discWidth > 0)) return;
  const double hole = drive.outputPinRadius + drive.shape.eccentricity;
  forces.largestOutputPinPressure =
      lineContactPressure(forces.largestOutputPinForce, drive.discWidth,
                          relativeRadius(drive.outputPinRadius, -hole), modulus);
}

}  // namespace

PinContact pinContact(const CycloidShape& shape, double crankAngle, double pinAngle) {
  return pinContactOf(shape, {std::cos(crankAngle), std::sin(crankAngle)},
                      {std::cos(pinAngle), std::sin(pinAngle)});
}

double largestPinForceEstimate(const CycloidShape& shape, double discTorque) {
  return 4 * discTorque / (shape.shortening() * shape.pinCircleRadius * shape.lobes());
}

std::optional<CycloidForces> cycloidForces(const CycloidGeometry& geometry,
                                           const ContactMaterial& contact, double outputTorque,
                                           int angles) {
  const auto drive = cycloidDrive(geometry);
  if (!drive || !isSet(outputTorque) || angles < 1) return std::nullopt;
  CycloidForces forces = blank(*drive, drive->discTorque(std::abs(outputTorque)), angles);
  for (Index at = 0; at < angles; ++at) {
    addPinForces(forces, *drive, forces.crankAngle[at], at);
    if (drive->outputPins == 0) continue;
    addOutputForces(forces, *drive, forces.crankAngle[at], at);
    addBearing(forces, *drive, at);
  }
  const double modulus = contactSurfaces(contact).reducedModulus;
  addPressures(forces, drive->discWidth, modulus);
  addLargest(forces, *drive, modulus);
  return forces;
}

GeometryConditions cycloidPressureConditions(const CycloidForces& forces,
                                             const ContactMaterial& contact) {
  GeometryConditions conditions;
  const auto add = [&](const char* label, double pressure, std::string_view field) {
    if (!isSet(pressure) || !isSet(contact.allowedPressure)) return;
    conditions.push_back({label, pressure, contact.allowedPressure, Quantity::Pressure, "MPa",
                          field, "Hertz, line contact"});
  };
  add("contact pressure at ring pins", forces.largestPinPressure, "allowedPressure");
  add("contact pressure at output pins", forces.largestOutputPinPressure, "allowedPressure");
  return conditions;
}

}  // namespace jw

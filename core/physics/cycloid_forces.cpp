#include "core/physics/cycloid_forces.h"

#include <cmath>
#include <numbers>
#include <utility>

#include "core/physics/cycloid_drive.h"
#include "core/physics/hertz_contact.h"

namespace jw {
namespace {

using Eigen::ArrayXd;
using Eigen::ArrayXXd;
using Eigen::Index;
using Eigen::Vector2d;

Vector2d direction(double angle) { return {std::cos(angle), std::sin(angle)}; }
double cross(const Vector2d& a, const Vector2d& b) { return a.x() * b.y() - a.y() * b.x(); }

/// Resultant [N] of the ring pins against the disc per newton metre, its eccentric along `crank`.
/// Calls onPin(j, lever, contact) for those that push; returns it with the scale 1/sum(lever²).
template <class OnPin>
std::pair<Vector2d, double> ringResultant(const CycloidDrive& drive, const Vector2d& crank,
                                          const OnPin& onPin) {
  Vector2d push = Vector2d::Zero();
  double square = 0;
  for (Index j = 0; j < drive.shape.pins; ++j) {
    if (cross(drive.pinDirections[static_cast<std::size_t>(j)], crank) >= 0) continue;
    const PinContact pin = drive.ringPin(crank, j);
    push -= pin.lever * Vector2d(pin.normalX, pin.normalY);
    square += pin.lever * pin.lever;
    onPin(j, -pin.lever, pin);
  }
  return {push / square, 1 / square};
}

/// Sum [N] of the output pins' forces per newton metre, all against the eccentric's direction.
/// Calls onPin(k, sine) for those that push; returns it with the scale 1/(R_o sum(sine²)).
template <class OnPin>
std::pair<double, double> outputResultant(const CycloidDrive& drive, double crankAngle,
                                          double eccentric, const OnPin& onPin) {
  const Vector2d crank = direction(eccentric - drive.outputPinAngle(crankAngle, 0));
  double sum = 0, square = 0;
  for (Index k = 0; k < drive.outputPins; ++k) {
    const double sine = cross(crank, drive.outputPinDirections[static_cast<std::size_t>(k)]);
    if (sine <= 0) continue;
    sum += sine;
    square += sine * sine;
    onPin(k, sine);
  }
  const double scale = 1 / (drive.outputPinCircleRadius * square);
  return {sum * scale, scale};
}

/// First disc's pins at one angle; the force [N] on its bearing balances them.
Vector2d addFirstDisc(CycloidForces& forces, const CycloidDrive& drive, Index at) {
  const double angle = forces.crankAngle[at];
  const Vector2d crank = direction(angle);
  auto force = forces.pinForce.col(at);
  const bool pressed = forces.pinPressure.size() > 0;
  const auto onPin = [&](Index j, double lever, const PinContact& pin) {
    force[j] = lever;
    if (pressed) forces.pinPressure(j, at) = pin.radius;
  };
  const auto [push, scale] = ringResultant(drive, crank, onPin);
  force *= forces.discTorque * scale;
  if (drive.outputPins == 0) return Vector2d::Zero();
  auto output = forces.outputPinForce.col(at);
  const auto [sum, outputScale] =
      outputResultant(drive, angle, angle, [&](Index k, double sine) { output[k] = sine; });
  output *= forces.discTorque * outputScale;
  return forces.discTorque * (push + sum * crank);
}

/// Force [N] on the bearing of a disc whose eccentric stands at `eccentric` [rad].
Vector2d bearingForce(const CycloidDrive& drive, double discTorque, double crankAngle,
                      double eccentric) {
  const Vector2d crank = direction(eccentric);
  const auto [push, scale] = ringResultant(drive, crank, [](Index, double, const PinContact&) {});
  const auto [sum, outputScale] =
      outputResultant(drive, crankAngle, eccentric, [](Index, double) {});
  return discTorque * (push + sum * crank);
}

/// All discs at one angle.
void addAngle(CycloidForces& forces, const CycloidDrive& drive, Index at) {
  const Vector2d first = addFirstDisc(forces, drive, at);
  if (drive.outputPins == 0) return;
  const double crankAngle = forces.crankAngle[at];
  Vector2d all = first;
  double torque = drive.shape.eccentricity * cross(direction(crankAngle), first);
  for (int d = 1; d < drive.discs; ++d) {
    const double eccentric = crankAngle + 2 * std::numbers::pi * d / drive.discs;
    const Vector2d force = bearingForce(drive, forces.discTorque, crankAngle, eccentric);
    all += force;
    torque += drive.shape.eccentricity * cross(direction(eccentric), force);
  }
  forces.bearingX[at] = first.x();
  forces.bearingY[at] = first.y();
  forces.shaftX[at] = -all.x();
  forces.shaftY[at] = -all.y();
  forces.crankTorque[at] = torque;
}

/// Turns the relative radii that addFirstDisc left into pressures.
void addPressures(CycloidForces& forces, double width, double modulus) {
  if (forces.pinPressure.size() == 0) return;
  const double scale = modulus / (std::numbers::pi * width);
  forces.pinPressure = (forces.pinForce * scale / forces.pinPressure).sqrt();
  forces.largestPinPressure = forces.pinPressure.maxCoeff();
}

/// Arrays of the right size.
CycloidForces blank(const CycloidDrive& drive, double discTorque, int angles) {
  CycloidForces forces;
  forces.discTorque = discTorque;
  forces.crankAngle = ArrayXd::LinSpaced(angles + 1, 0, 2 * std::numbers::pi).head(angles);
  forces.pinForce.setZero(drive.shape.pins, angles);
  const bool undercut = leastConvexRadius(drive.shape) <= drive.shape.pinRadius;
  if (drive.discWidth > 0 && !undercut) forces.pinPressure.setOnes(drive.shape.pins, angles);
  forces.outputPinForce.setZero(drive.outputPins, angles);
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
  return pinContactOf(shape, direction(crankAngle), direction(pinAngle));
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
  for (Index at = 0; at < angles; ++at) addAngle(forces, *drive, at);
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

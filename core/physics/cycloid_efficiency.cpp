#include "core/physics/cycloid_efficiency.h"

#include <cmath>
#include <numbers>

#include "core/physics/cycloid_drive.h"

namespace jw {
namespace {

using Eigen::Index;
using Eigen::Vector2d;

struct Friction {
  double pin = 0, outputPin = 0;
  double bearingArm = 0;  ///< [m] coefficient times radius
};

/// All that one kind of pins does to the disc, for a largest push of about one.
struct Push {
  Vector2d force = Vector2d::Zero();
  double aboutRing = 0;  ///< moment about the ring's centre
  double aboutDisc = 0;  ///< moment about the disc's
  double sliding = 0;    ///< friction times sliding per speed of crank against disc
};

/// Crank and losses of one disc at one angle, per newton metre of output torque.
struct DiscBalance {
  double crankTorque = 0;                                  ///< below 0 where the crank is driven
  double pinLoss = 0, outputPinLoss = 0, bearingLoss = 0;  ///< per speed of crank against disc
  bool moves = false;
};

double cross(const Vector2d& a, const Vector2d& b) { return a.x() * b.y() - a.y() * b.x(); }
Vector2d turned(const Vector2d& a) { return {-a.y(), a.x()}; }  // a quarter turn on

/// `side` -1: the crank drives, ring pins push the disc clockwise; +1: it is driven.
Push ringPush(const CycloidDrive& drive, const Friction& friction, const Vector2d& crank,
              double side) {
  const CycloidShape& shape = drive.shape;
  Push push;
  for (Index j = 0; j < shape.pins; ++j) {
    const Vector2d& place = drive.pinDirections[static_cast<std::size_t>(j)];
    if (side * cross(place, crank) <= 0) continue;
    const PinContact pin = drive.ringPin(crank, j);
    const double share = side * pin.lever / (shape.eccentricity * shape.lobes());
    const Vector2d normal(pin.normalX, pin.normalY);
    const Vector2d contact = shape.pinCircleRadius * place - shape.pinRadius * normal;
    // The disc turns clockwise about the pitch point against the ring, so slides along -turned.
    const double drag = std::copysign(friction.pin, pin.reach);
    const Vector2d force = share * (drag * turned(normal) - normal);
    push.force += force;
    push.aboutRing += cross(contact, force);
    push.aboutDisc += cross(contact - shape.eccentricity * crank, force);
    push.sliding += share * friction.pin * std::abs(pin.reach) / shape.pins;
  }
  return push;
}

Push outputPush(const CycloidDrive& drive, const Friction& friction, double crankAngle,
                const Vector2d& crank, double side) {
  Push push;
  const Vector2d direction = -crank - friction.outputPin * turned(crank);
  for (Index k = 0; k < drive.outputPins; ++k) {
    const double angle = drive.outputPinAngle(crankAngle, k);
    const Vector2d pin(std::cos(angle), std::sin(angle));
    const double share = side * cross(pin, crank);
    if (share <= 0) continue;
    const Vector2d contact = drive.outputPinCircleRadius * pin - drive.outputPinRadius * crank;
    const Vector2d force = share * direction;
    push.force += force;
    push.aboutRing += cross(contact, force);
    push.aboutDisc += cross(contact - drive.shape.eccentricity * crank, force);
    push.sliding += share * friction.outputPin * drive.shape.eccentricity;
  }
  return push;
}

/// Scale of the ring pins' push that balances output pins of scale 1 and the bearing's friction,
/// which depends on it: each pass shrinks the error by about mu_b r_b / (e (N - 1)). NaN where it
/// does not: there the bearing locks.
double ringScale(const Push& ring, const Push& output, double bearingArm) {
  double scale = -output.aboutDisc / ring.aboutDisc;
  for (int pass = 0; pass < 100; ++pass) {
    const double moment = bearingArm * (scale * ring.force + output.force).norm();
    const double next = -(output.aboutDisc + moment) / ring.aboutDisc;
    if (std::abs(next - scale) <= 1e-14 * std::abs(next)) return next;
    scale = next;
  }
  return kUnset;
}

DiscBalance balance(const CycloidDrive& drive, const Friction& friction, double crankAngle,
                    double side) {
  const Vector2d crank(std::cos(crankAngle), std::sin(crankAngle));
  const Push ring = ringPush(drive, friction, crank, side);
  const Push output = outputPush(drive, friction, crankAngle, crank, side);
  DiscBalance found;
  // Friction must leave each group pushing the way its normals do.
  if (ring.aboutDisc * side <= 0 || output.aboutRing * side >= 0) return found;
  const double scale = ringScale(ring, output, friction.bearingArm);
  if (!(scale > 0)) return found;
  const bool ringHeld = drive.held == CycloidHeld::Pins;
  const double torque = std::abs(ringHeld ? output.aboutRing : scale * ring.aboutRing);
  const Vector2d bearing = -(scale * ring.force + output.force);
  const double drag = friction.bearingArm * bearing.norm();
  found.crankTorque = (drive.shape.eccentricity * cross(crank, bearing) + drag) / torque;
  found.pinLoss = scale * ring.sliding / torque;
  found.outputPinLoss = output.sliding / torque;
  found.bearingLoss = drag / torque;
  found.moves = true;
  return found;
}

/// Mean over a turn; moves only if every angle does.
DiscBalance meanBalance(const CycloidDrive& drive, const Friction& friction, int angles,
                        double side) {
  DiscBalance mean;
  for (int i = 0; i < angles; ++i) {
    const DiscBalance at = balance(drive, friction, 2 * std::numbers::pi * i / angles, side);
    if (!at.moves) return {};
    mean.crankTorque += at.crankTorque / angles;
    mean.pinLoss += at.pinLoss / angles;
    mean.outputPinLoss += at.outputPinLoss / angles;
    mean.bearingLoss += at.bearingLoss / angles;
  }
  mean.moves = true;
  return mean;
}

std::optional<Friction> frictionOf(const CycloidGeometry& g) {
  const double arm = g.bearingFriction == 0 ? 0 : g.bearingFriction * g.bearingRadius;
  if (!isSet(g.pinFriction) || !isSet(g.outputPinFriction) || !isSet(arm)) return std::nullopt;
  return Friction{g.pinFriction, g.outputPinFriction, arm};
}

}  // namespace

std::optional<CycloidEfficiency> cycloidEfficiency(const CycloidGeometry& geometry, int angles) {
  const auto drive = cycloidDrive(geometry);
  const auto friction = frictionOf(geometry);
  if (!drive || !friction || drive->outputPins == 0 || angles < 1) return std::nullopt;
  const double ratio = cycloidRatio(geometry)->ratio;
  CycloidEfficiency result;
  if (const DiscBalance on = meanBalance(*drive, *friction, angles, -1); on.moves) {
    // Speed of crank against disc per speed of the input.
    const double relative = drive->held == CycloidHeld::Pins ? 1 + 1 / ratio : 1;
    result.driving = 1 / (ratio * on.crankTorque);
    result.pinShare = relative * on.pinLoss / on.crankTorque;
    result.outputPinShare = relative * on.outputPinLoss / on.crankTorque;
    result.bearingShare = relative * on.bearingLoss / on.crankTorque;
  }
  if (const DiscBalance back = meanBalance(*drive, *friction, angles, 1); back.moves) {
    result.backdriving = std::max(0.0, -ratio * back.crankTorque);
  }
  return result;
}

}  // namespace jw

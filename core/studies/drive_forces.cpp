#include "core/studies/drive_forces.h"

#include <algorithm>
#include <cmath>

#include "core/physics/cycloid_drive.h"
#include "core/studies/drive_outlines.h"

namespace jw {
namespace {

using Eigen::Index;
using Eigen::Vector2d;

// Scales shares, each a force times its own lever, to the moment they make together.
void scaleToMoment(std::vector<DriveForce>& forces, double moment, double sumOfSquares) {
  const double scale = sumOfSquares > 0 ? moment / sumOfSquares : 0;
  for (DriveForce& force : forces) force.force *= scale;
}

std::vector<DriveForce> ringPinForces(const CycloidDrive& drive, double crankAngle, double moment) {
  std::vector<DriveForce> forces;
  double square = 0;
  for (Index j = 0; j < drive.shape.pins; ++j) {
    const PinContact contact = drive.ringPin(drive::polar(1, crankAngle), j);
    const Vector2d normal(contact.normalX, contact.normalY);
    const double share = std::max(0.0, -contact.lever);
    const Vector2d centre = drive.shape.pinCircleRadius * drive.pinDirections[std::size_t(j)];
    forces.push_back({centre - drive.shape.pinRadius * normal, -share * normal});
    square += share * share;
  }
  scaleToMoment(forces, moment, square);
  return forces;
}

std::vector<DriveForce> outputPinForces(const CycloidDrive& drive, double crankAngle,
                                        double moment) {
  std::vector<DriveForce> forces;
  const Vector2d crank = drive::polar(1, crankAngle);
  double square = 0;
  for (Index k = 0; k < drive.outputPins; ++k) {
    const double angle = drive.outputPinAngle(crankAngle, k);
    const double share = std::max(0.0, -std::sin(crankAngle - angle));
    const Vector2d pin = drive::polar(drive.outputPinCircleRadius, angle);
    forces.push_back({pin - drive.outputPinRadius * crank, -share * crank});
    square += share * share * drive.outputPinCircleRadius;
  }
  scaleToMoment(forces, moment, square);
  return forces;
}

DriveForces inRingAxes(const CycloidDrive& drive, double crankAngle, double moment) {
  DriveForces all{.pins = ringPinForces(drive, crankAngle, moment),
                  .outputPins = outputPinForces(drive, crankAngle, moment),
                  .bearing = {}};
  for (const DriveForce& pin : all.pins)
    all.largestPinForce = std::max(all.largestPinForce, pin.force.norm());
  all.bearing.at = drive::polar(drive.shape.eccentricity, crankAngle);
  if (all.outputPins.empty()) return all;
  for (const auto* group : {&all.pins, &all.outputPins})
    for (const DriveForce& force : *group) all.bearing.force -= force.force;
  return all;
}

// Mirrors at the x axis, if asked to, then turns.
void move(DriveForce& f, bool mirror, double angle) {
  const Vector2d along = drive::polar(1, angle);
  for (Vector2d* v : {&f.at, &f.force}) {
    if (mirror) v->y() = -v->y();
    *v = Vector2d(along.x() * v->x() - along.y() * v->y(), along.y() * v->x() + along.x() * v->y());
  }
}

}  // namespace

DriveForces driveForces(const Stage& stage, double inputAngle, double outputTorque,
                        bool clockwise) {
  if (stage.family != StageFamily::Cycloidal) return {};
  const auto drive = cycloidDrive(stage.cycloid);
  if (!drive) return {};
  const double ring = drive->held == CycloidHeld::Pins ? 0 : inputAngle / drive->shape.pins;
  const double crank = inputAngle - ring;
  DriveForces forces =
      inRingAxes(*drive, clockwise ? -crank : crank, drive->discTorque(std::abs(outputTorque)));
  for (DriveForce& force : forces.pins) move(force, clockwise, ring);
  for (DriveForce& force : forces.outputPins) move(force, clockwise, ring);
  move(forces.bearing, clockwise, ring);
  return forces;
}

}  // namespace jw

#include "core/physics/cycloid_drive.h"

namespace jw {
namespace {

std::vector<Eigen::Vector2d> evenDirections(int count) {
  std::vector<Eigen::Vector2d> directions;
  for (int j = 0; j < count; ++j) {
    const double angle = 2 * std::numbers::pi * j / count;
    directions.emplace_back(std::cos(angle), std::sin(angle));
  }
  return directions;
}

/// Output pins count once at least three, their circle and radius are given.
void addOutputPins(CycloidDrive& drive, const CycloidGeometry& geometry) {
  if (!(geometry.outputPins >= 3) || !(geometry.outputPinCircleRadius > 0)) return;
  if (!(geometry.outputPinRadius > 0)) return;
  drive.outputPins = static_cast<int>(geometry.outputPins);
  drive.outputPinCircleRadius = geometry.outputPinCircleRadius;
  drive.outputPinRadius = geometry.outputPinRadius;
}

}  // namespace

PinContact pinContactOf(const CycloidShape& shape, const Eigen::Vector2d& crank,
                        const Eigen::Vector2d& pin) {
  const double n = shape.pins;
  const double k = shape.shortening();
  const double radius = shape.pinCircleRadius;
  const double cosine = crank.dot(pin);
  const double sine = crank.y() * pin.x() - crank.x() * pin.y();
  const double square = 1 - 2 * k * cosine + k * k;
  const double distance = std::sqrt(square);
  const Eigen::Vector2d normal = (pin - k * crank) / distance;
  const double curvature = (1 - (n + 1) * k * cosine + n * k * k) / (radius * square * distance);
  return {normal.x(), normal.y(), shape.eccentricity * (n - 1) * sine / distance,
          radius * distance - shape.pinRadius, shape.pinRadius * (1 - shape.pinRadius * curvature)};
}

PinContact CycloidDrive::ringPin(const Eigen::Vector2d& crank, Eigen::Index j) const {
  return pinContactOf(shape, crank, pinDirections[static_cast<std::size_t>(j)]);
}

std::optional<CycloidDrive> cycloidDrive(const CycloidGeometry& geometry) {
  const auto shape = cycloidShape(geometry);
  if (!shape) return std::nullopt;
  CycloidDrive drive;
  drive.shape = *shape;
  drive.held = geometry.held;
  if (geometry.discs >= 1) drive.discs = static_cast<int>(geometry.discs);
  drive.discWidth = geometry.discWidth;
  addOutputPins(drive, geometry);
  drive.pinDirections = evenDirections(shape->pins);
  drive.outputPinDirections = evenDirections(drive.outputPins);
  return drive;
}

}  // namespace jw

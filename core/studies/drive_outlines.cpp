#include "core/studies/drive_outlines.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace jw::drive {

using Eigen::Vector2d;

Vector2d polar(double r, double angle) { return {r * std::cos(angle), r * std::sin(angle)}; }

Outline circle(double radius, const Vector2d& centre, int points) {
  Outline outline;
  outline.reserve(points);
  for (int i = 0; i < points; ++i)
    outline.push_back(centre + polar(radius, 2 * std::numbers::pi * i / points));
  return outline;
}

Outline sector(double inner, double outer, double from, double to) {
  constexpr int kSteps = 24;
  Outline points;
  for (int i = 0; i <= kSteps; ++i) points.push_back(polar(outer, from + (to - from) * i / kSteps));
  for (int i = kSteps; i >= 0; --i) points.push_back(polar(inner, from + (to - from) * i / kSteps));
  return points;
}

Outline spoke(double inner, double outer, double angle) {
  return {polar(inner, angle), polar(outer, angle)};
}

Outline moved(const Outline& outline, double angle, const Vector2d& shift) {
  const double c = std::cos(angle);
  const double s = std::sin(angle);
  Outline result;
  result.reserve(outline.size());
  for (const Vector2d& p : outline)
    result.emplace_back(c * p.x() - s * p.y() + shift.x(), s * p.x() + c * p.y() + shift.y());
  return result;
}

double radiusOf(const DriveBody& body) {
  double largest = 0;
  for (const Outline& outline : body.outlines)
    for (const Vector2d& point : outline) largest = std::max(largest, point.norm());
  return largest;
}

}  // namespace jw::drive

#include "core/physics/cycloid_profile.h"

#include <cmath>
#include <complex>
#include <numbers>

namespace jw {
namespace {

using Complex = std::complex<double>;
using Eigen::ArrayXd;
using Eigen::Index;

constexpr double kPi = std::numbers::pi;
constexpr std::string_view kClear = "solid bodies cannot overlap";

double lobesOf(const CycloidGeometry& geometry) {
  return isSet(geometry.lobes) ? geometry.lobes : geometry.pins - 1;
}

/// Distance of neighbours on a circle.
double chord(double radius, double count) { return 2 * radius * std::sin(kPi / count); }

/// Collects conditions, leaving out those that a missing value makes NaN.
class Conditions {
 public:
  void add(const char* label, std::string_view field, double demand, double capacity,
           std::string_view source = kClear) {
    if (!isSet(demand) || !isSet(capacity)) return;
    all_.push_back({label, demand, capacity, Quantity::Length, "mm", field, source});
  }
  void addNumber(const char* label, std::string_view field, double demand, double capacity,
                 std::string_view source) {
    if (!isSet(demand) || !isSet(capacity)) return;
    all_.push_back({label, demand, capacity, Quantity::Number, "1", field, source});
  }
  GeometryConditions take() { return std::move(all_); }

 private:
  GeometryConditions all_;
};

void addProfile(Conditions& conditions, const CycloidGeometry& g) {
  constexpr std::string_view kSource = "differential geometry of the epitrochoid";
  conditions.addNumber("one lobe less than pins", "lobes", std::abs(g.pins - lobesOf(g) - 1), 0,
                       "the profile drawn here is of that kind");
  conditions.add("no cusp: eccentricity below pin circle radius over pins", "eccentricity",
                 g.eccentricity, g.pinCircleRadius / g.pins, kSource);
  if (const auto shape = cycloidShape(g)) {
    conditions.add("no undercut: pin below the sharpest lobe's radius", "pinRadius", g.pinRadius,
                   leastConvexRadius(*shape), kSource);
  }
  conditions.add("neighbouring ring pins clear each other", "pinRadius", 2 * g.pinRadius,
                 chord(g.pinCircleRadius, g.pins));
}

void addHoles(Conditions& conditions, const CycloidGeometry& g) {
  const double hole = g.outputPinRadius + g.eccentricity;
  const double valley = g.pinCircleRadius - g.pinRadius - g.eccentricity;
  conditions.addNumber("three output pins, so that one always drives", "outputPins", 3,
                       g.outputPins, "with two there is an angle at which neither does");
  conditions.add("holes of neighbouring output pins clear each other", "outputPinRadius", 2 * hole,
                 chord(g.outputPinCircleRadius, g.outputPins));
  conditions.add("holes stay inside the valleys of the disc", "outputPinCircleRadius",
                 g.outputPinCircleRadius + hole, valley);
  conditions.add("holes clear the eccentric's bearing", "bearingRadius", g.bearingRadius + hole,
                 g.outputPinCircleRadius);
}

}  // namespace

std::optional<CycloidShape> cycloidShape(const CycloidGeometry& g) {
  if (!(g.pins >= 3) || lobesOf(g) != g.pins - 1) return std::nullopt;
  if (!(g.pinCircleRadius > 0) || !(g.pinRadius > 0) || !(g.eccentricity > 0)) return std::nullopt;
  if (g.eccentricity * g.pins >= g.pinCircleRadius) return std::nullopt;
  return CycloidShape{static_cast<int>(g.pins), g.pinCircleRadius, g.pinRadius, g.eccentricity};
}

std::optional<CycloidRatio> cycloidRatio(const CycloidGeometry& g) {
  const double lobes = lobesOf(g);
  if (!(lobes > 0) || !(g.pins > lobes)) return std::nullopt;
  if (g.held == CycloidHeld::Pins) return CycloidRatio{lobes / (g.pins - lobes), true};
  return CycloidRatio{g.pins / (g.pins - lobes), false};
}

double pinPathRadius(const CycloidShape& shape, double t) {
  const double n = shape.pins;
  const double k = shape.shortening();
  const double cosine = std::cos((n - 1) * t);
  const double square = 1 - 2 * k * cosine + k * k;
  return shape.pinCircleRadius * square * std::sqrt(square) /
         (1 - (n + 1) * k * cosine + n * k * k);
}

double leastConvexRadius(const CycloidShape& shape) {
  const double n = shape.pins;
  const double k = shape.shortening();
  const double radius = shape.pinCircleRadius;
  if (k <= (n - 2) / (2 * n - 1)) return radius * (1 + k) * (1 + k) / (1 + n * k);
  return radius * std::sqrt(27 * (1 - k * k) * (n - 1) / std::pow(n + 1, 3));
}

CycloidProfile cycloidProfile(const CycloidShape& shape, int pointsPerLobe) {
  const Index count = static_cast<Index>(pointsPerLobe) * shape.lobes() + 1;
  CycloidProfile profile{ArrayXd(count), ArrayXd(count), ArrayXd(count), ArrayXd(count),
                         ArrayXd(count)};
  const double n = shape.pins;
  for (Index i = 0; i < count; ++i) {
    const double t =
        2 * kPi * static_cast<double>(i % (count - 1)) / static_cast<double>(count - 1);
    const Complex along = std::polar(1.0, t) - shape.shortening() * std::polar(1.0, n * t);
    const Complex normal = along / std::abs(along);
    const Complex at = shape.pinCircleRadius * std::polar(1.0, t) -
                       shape.eccentricity * std::polar(1.0, n * t) - shape.pinRadius * normal;
    profile.x[i] = at.real();
    profile.y[i] = at.imag();
    profile.normalX[i] = normal.real();
    profile.normalY[i] = normal.imag();
    profile.radius[i] = pinPathRadius(shape, t) - shape.pinRadius;
  }
  return profile;
}

DiscPose discPose(const CycloidShape& shape, double crankAngle) {
  return {shape.eccentricity * std::cos(crankAngle), shape.eccentricity * std::sin(crankAngle),
          -crankAngle / shape.lobes()};
}

GeometryConditions cycloidConditions(const CycloidGeometry& geometry) {
  Conditions conditions;
  addProfile(conditions, geometry);
  addHoles(conditions, geometry);
  return conditions.take();
}

}  // namespace jw

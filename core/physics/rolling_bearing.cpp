#include "core/physics/rolling_bearing.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <numbers>
#include <vector>

#include "core/physics/carried_masses.h"
#include "core/physics/drive_life.h"

namespace jw {
namespace {

using Eigen::ArrayXd;
using Eigen::Index;

/// What each segment carries.
std::vector<CarriedMasses> massesOf(const Cycle& source, const Load& load) {
  std::vector<CarriedMasses> masses;
  for (const Segment& segment : source.segments) {
    masses.push_back(carriedMasses(load, payloadOf(load, segment)));
  }
  return masses;
}

/// Motion of the joint at an instant.
struct JointInstant {
  double angle, speed, acceleration;
};

/// Forces of weight and inertia in axes that turn with the link: gravity turns back by the angle,
/// inertia is q'^2 (x, y) - q'' (-y, x). With `eitherSide` the axis points to
/// the side that is worse.
BearingForces forcesAt(const JointInstant& at, const CarriedMasses& m,
                       const Eigen::Vector3d& gravity, bool eitherSide) {
  const double sine = std::sin(at.angle), cosine = std::cos(at.angle);
  const double downX = gravity.x() * cosine + gravity.y() * sine;
  const double downY = gravity.y() * cosine - gravity.x() * sine;
  const double out = at.speed * at.speed, along = gravity.z();
  const double x = out * m.x + at.acceleration * m.y + downX * m.mass;
  const double y = out * m.y - at.acceleration * m.x + downY * m.mass;
  // Force times distance along the axis; the moment is (y along - farY, farX - x along).
  const double farX = out * m.xz + at.acceleration * m.yz + downX * m.z;
  const double farY = out * m.yz - at.acceleration * m.xz + downY * m.z;
  const double mixed = -2 * along * (m.y * farY + m.x * farX);
  const double squared = along * along * (m.x * m.x + m.y * m.y) + farX * farX + farY * farY +
                         (eitherSide ? std::abs(mixed) : mixed);
  return {std::sqrt(x * x + y * y), std::abs(along) * m.mass, std::sqrt(std::max(0.0, squared))};
}

double radialWithMoment(const BearingForces& forces, double pitchDiameter) {
  return forces.radial + 2 * forces.moment / pitchDiameter;
}

/// Equivalent loads of every sample.
void addEquivalents(OutputBearingLoad& result, double pitchDiameter) {
  const OutputBearingForces& f = result.forces;
  const Index count = f.radial.size();
  result.dynamicLoad.resize(count);
  result.staticLoad.resize(count);
  for (Index i = 0; i < count; ++i) {
    const BearingForces at{f.radial[i], f.axial[i], f.moment[i]};
    result.dynamicLoad[i] = slewingDynamicLoad(at, pitchDiameter);
    result.staticLoad[i] = slewingStaticLoad(at, pitchDiameter);
  }
}

}  // namespace

double lifeExponent(RollingElement element) {
  return element == RollingElement::Ball ? 3.0 : 10.0 / 3;
}

double ratingLifeTurns(double rating, double load, double exponent) {
  return 1e6 * std::pow(rating / load, exponent);
}

double ratingLife(double rating, double load, double exponent, double meanSpeed) {
  if (load == 0 || meanSpeed == 0) return std::numeric_limits<double>::infinity();
  return ratingLifeTurns(rating, load, exponent) * 2 * std::numbers::pi / meanSpeed;
}

double reliabilityFactor(double reliability) {
  return 0.05 + 0.95 * std::pow(std::log(reliability) / std::log(0.9), 2.0 / 3);
}

double deepGrooveStaticLoad(double radial, double axial) {
  return std::max(radial, 0.6 * radial + 0.5 * axial);
}

double slewingDynamicLoad(const BearingForces& forces, double pitchDiameter) {
  const double radial = radialWithMoment(forces, pitchDiameter);
  return forces.axial <= 1.5 * radial ? radial + 0.45 * forces.axial
                                      : 0.67 * radial + 0.67 * forces.axial;
}

double slewingStaticLoad(const BearingForces& forces, double pitchDiameter) {
  return radialWithMoment(forces, pitchDiameter) + 0.44 * forces.axial;
}

double equivalentLoad(const SampledCycle& cycle, const Eigen::ArrayXd& load,
                      const Eigen::ArrayXd& speed, double exponent) {
  return averageTorque(cycle, load, speed, exponent);  // the same mean
}

OutputBearingForces outputBearingForces(const SampledCycle& cycle, const Cycle& source,
                                        const Load& load) {
  const std::vector<CarriedMasses> masses = massesOf(source, load);
  const Eigen::Vector3d gravity = gravityVector(load);
  const bool eitherSide = load.mounting == Mounting::Tilt;
  const Index count = cycle.size();
  OutputBearingForces all{ArrayXd(count), ArrayXd(count), ArrayXd(count)};
  for (Index i = 0; i < count; ++i) {
    const BearingForces one =
        forcesAt({cycle.angle[i], cycle.speed[i], cycle.acceleration[i]},
                 masses[static_cast<std::size_t>(cycle.segment[i])], gravity, eitherSide);
    all.radial[i] = one.radial + std::abs(load.radialForce);
    all.axial[i] = one.axial + std::abs(load.axialForce);
    all.moment[i] = one.moment + std::abs(load.tiltingMoment);
  }
  return all;
}

std::optional<OutputBearingLoad> outputBearingLoad(const SampledCycle& cycle, const Cycle& source,
                                                   const Load& load, const OutputBearing& bearing) {
  if (!(bearing.pitchDiameter > 0)) return std::nullopt;
  OutputBearingLoad result;
  result.forces = outputBearingForces(cycle, source, load);
  addEquivalents(result, bearing.pitchDiameter);
  const double exponent = lifeExponent(bearing.element);
  result.equivalentLoad = equivalentLoad(cycle, result.dynamicLoad, cycle.speed, exponent);
  result.worstStaticLoad = result.staticLoad.maxCoeff();
  result.worstMoment = result.forces.moment.maxCoeff();
  result.meanSpeed = averageSpeed(cycle, cycle.speed);
  if (isSet(bearing.dynamicRating)) {
    result.life =
        ratingLife(bearing.dynamicRating, result.equivalentLoad, exponent, result.meanSpeed);
  }
  if (isSet(bearing.staticRating)) {
    result.staticSafety = bearing.staticRating / result.worstStaticLoad;
  }
  return result;
}

}  // namespace jw

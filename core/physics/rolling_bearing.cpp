#include "core/physics/rolling_bearing.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <numbers>

#include "core/physics/drive_life.h"
#include "core/physics/load_torque.h"

namespace jw {
namespace {

using Eigen::ArrayXd;
using Eigen::Index;

/// Masses on the joint, constant within a segment, spread over the samples.
struct Masses {
  ArrayXd total;  ///< [kg]
  ArrayXd x, y;   ///< [kg·m] sum of m r in the link's own plane, x along joint angle 0
};

Masses massesOf(const SampledCycle& cycle, const Cycle& source, const Load& load) {
  const auto count = static_cast<Index>(source.segments.size());
  Masses segments{ArrayXd(count), ArrayXd(count), ArrayXd(count)};
  const double link = load.linkMass * load.linkDistance;
  for (Index k = 0; k < count; ++k) {
    const double mass = payloadOf(load, source.segments[static_cast<std::size_t>(k)]);
    const double payload = mass * load.payloadDistance;
    segments.total[k] = load.linkMass + mass;
    segments.x[k] = link * std::cos(load.linkAngle) + payload * std::cos(load.payloadAngle);
    segments.y[k] = link * std::sin(load.linkAngle) + payload * std::sin(load.payloadAngle);
  }
  const auto& at = cycle.segment;
  return {segments.total(at), segments.x(at), segments.y(at)};
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
  const Masses masses = massesOf(cycle, source, load);
  const double across = load.gravity * std::cos(load.axisTilt);
  const double along = load.gravity * std::sin(load.axisTilt);
  // In axes that turn with the link: gravity is (-sin q, -cos q), inertia q'^2 (x, y) - q'' (-y,
  // x).
  const ArrayXd outward = cycle.speed.square();
  const ArrayXd x = outward * masses.x + cycle.acceleration * masses.y -
                    across * masses.total * cycle.angle.sin();
  const ArrayXd y = outward * masses.y - cycle.acceleration * masses.x -
                    across * masses.total * cycle.angle.cos();
  const ArrayXd force = x.square() + y.square();
  const ArrayXd squared = along * along * (masses.x.square() + masses.y.square()) +
                          load.overhang * load.overhang * force +
                          2 * std::abs(along * load.overhang) * (x * masses.x + y * masses.y).abs();
  return {force.sqrt() + std::abs(load.radialForce),
          std::abs(along) * masses.total + std::abs(load.axialForce),
          squared.sqrt() + std::abs(load.tiltingMoment)};
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

#include "core/physics/traction_rollers.h"

#include <cmath>
#include <numbers>

#include "core/physics/hertz_contact.h"
#include "core/physics/if_given.h"

namespace jw {

std::optional<double> tractionRatio(const TractionGeometry& geometry) {
  return ifGiven(1 + geometry.ringDiameter / geometry.sunDiameter);
}

std::optional<double> rollerDiameter(const TractionGeometry& geometry) {
  const double diameter = (geometry.ringDiameter - geometry.sunDiameter) / 2;
  return diameter > 0 ? ifGiven(diameter) : std::nullopt;
}

std::optional<SlipTorque> slipTorque(const TractionGeometry& geometry) {
  const double input = geometry.rollers * geometry.tractionCoefficient * geometry.contactForce *
                       geometry.sunDiameter / 2;
  const double output = input * (1 + geometry.ringDiameter / geometry.sunDiameter);
  return std::isfinite(output) ? std::optional(SlipTorque{input, output}) : std::nullopt;
}

std::optional<double> creepAt(const TractionGeometry& geometry, double outputTorque) {
  const auto limit = slipTorque(geometry);
  if (!limit || !isSet(geometry.creepAtLimit) || !isSet(outputTorque)) return std::nullopt;
  const double share = std::abs(outputTorque) / limit->output;
  return share > 1 ? 1 : ifGiven(share * geometry.creepAtLimit);
}

std::optional<double> creepEfficiency(const TractionGeometry& geometry, double outputTorque) {
  const auto creep = creepAt(geometry, outputTorque);
  return creep ? std::optional(1 - *creep) : std::nullopt;
}

std::optional<TractionPressure> tractionPressure(const TractionGeometry& geometry,
                                                 const ContactMaterial& material) {
  const auto roller = rollerDiameter(geometry);
  if (!roller) return std::nullopt;
  const double sunRadius = geometry.sunDiameter / 2;
  const double ringRadius = -geometry.ringDiameter / 2;  // hollow
  const auto pressureAt = [&](double radius) {
    return lineContactPressure(geometry.contactForce, geometry.rollerWidth,
                               relativeRadius(*roller / 2, radius),
                               contactSurfaces(material).reducedModulus);
  };
  const TractionPressure pressure{pressureAt(sunRadius), pressureAt(ringRadius)};
  return std::isfinite(pressure.sun) ? std::optional(pressure) : std::nullopt;
}

std::optional<ContactPasses> contactPasses(const TractionGeometry& geometry) {
  const auto ratio = tractionRatio(geometry);
  const auto roller = rollerDiameter(geometry);
  if (!ratio || !roller || !isSet(geometry.rollers)) return std::nullopt;
  const double againstCarrier = 1 - 1 / *ratio;
  return ContactPasses{againstCarrier * geometry.rollers,
                       againstCarrier * 2 * geometry.sunDiameter / *roller};
}

std::optional<double> tractionLife(const TractionGeometry& geometry, double meanInputSpeed) {
  const auto passes = contactPasses(geometry);
  if (!passes) return std::nullopt;
  const double turnsPerSecond = std::abs(meanInputSpeed) / (2 * std::numbers::pi);
  const double load = geometry.contactRating / geometry.contactForce;
  return ifGiven(1e6 * std::pow(load, 10.0 / 3) / (passes->most() * turnsPerSecond));
}

GeometryConditions tractionConditions(const TractionGeometry& geometry,
                                      const ContactMaterial& material) {
  GeometryConditions all;
  if (!tractionRatio(geometry)) return all;
  all.push_back({"the ring is larger than the sun roller", geometry.sunDiameter,
                 geometry.ringDiameter, Quantity::Length, "mm", "ringDiameter", "geometry"});
  const auto roller = rollerDiameter(geometry);
  if (!roller) return all;
  if (geometry.rollers >= 2) {
    const double chord =
        (geometry.sunDiameter + *roller) * std::sin(std::numbers::pi / geometry.rollers);
    all.push_back({"neighbouring rollers clear each other", *roller, chord, Quantity::Length, "mm",
                   "rollers", "geometry"});
  }
  const auto pressure = tractionPressure(geometry, material);
  if (pressure && isSet(material.allowedPressure)) {
    all.push_back({"pressure of roller on sun", pressure->sun, material.allowedPressure,
                   Quantity::Pressure, "MPa", "contactForce", "Hertz, line contact"});
  }
  return all;
}

}  // namespace jw

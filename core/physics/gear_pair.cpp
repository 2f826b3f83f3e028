#include "core/physics/gear_pair.h"

#include <cmath>

#include "core/physics/gear_teeth.h"
#include "core/physics/if_given.h"

namespace jw {
namespace {

double pinionDiameterOf(const GearPairGeometry& pair, const Toothing& toothing) {
  return toothing.module / std::cos(pair.helixAngle) * pair.pinionTeeth;
}

double flankPressureOf(const GearPairGeometry& pair, const Toothing& toothing,
                       const ContactMaterial& material, double outputTorque) {
  const double efficiency = isSet(toothing.meshEfficiency) ? toothing.meshEfficiency : 1;
  const double inputTorque = outputTorque * pair.pinionTeeth / pair.gearTeeth / efficiency;
  return flankPressure({pair.pinionTeeth, pair.gearTeeth, pair.helixAngle}, toothing, material,
                       inputTorque);
}

}  // namespace

std::optional<double> gearPairRatio(const GearPairGeometry& pair) {
  return ifGiven(pair.gearTeeth / pair.pinionTeeth);
}

std::optional<StageEfficiency> gearPairEfficiency(const Toothing& toothing) {
  if (!isSet(toothing.meshEfficiency)) return std::nullopt;
  return StageEfficiency{toothing.meshEfficiency, toothing.meshEfficiency, false, true};
}

std::optional<GearPairSizes> gearPairSizes(const GearPairGeometry& pair, const Toothing& toothing) {
  GearPairSizes sizes;
  sizes.transverseModule = toothing.module / std::cos(pair.helixAngle);
  sizes.transversePressureAngle = transversePressureAngle(toothing, pair.helixAngle);
  sizes.pinionDiameter = sizes.transverseModule * pair.pinionTeeth;
  sizes.gearDiameter = sizes.transverseModule * pair.gearTeeth;
  sizes.pinionTipDiameter = sizes.pinionDiameter + 2 * toothing.module;
  sizes.gearTipDiameter = sizes.gearDiameter + 2 * toothing.module;
  sizes.centreDistance = (sizes.pinionDiameter + sizes.gearDiameter) / 2;
  return std::isfinite(sizes.centreDistance) ? std::optional(sizes) : std::nullopt;
}

std::optional<ToothForces> gearPairForces(const GearPairGeometry& pair, const Toothing& toothing,
                                          double inputTorque) {
  const double signedForce = 2 * inputTorque / pinionDiameterOf(pair, toothing);
  if (!std::isfinite(signedForce)) return std::nullopt;
  const double angle = transversePressureAngle(toothing, pair.helixAngle);
  return ToothForces{std::abs(signedForce), std::abs(signedForce) * std::tan(angle),
                     signedForce * std::tan(pair.helixAngle)};
}

GeometryConditions gearPairConditions(const GearPairGeometry& pair, const Toothing& toothing,
                                      const ContactMaterial& material, double outputTorque) {
  GeometryConditions all;
  if (!gearPairRatio(pair)) return all;
  const bool pinionIsSmaller = pair.pinionTeeth <= pair.gearTeeth;
  all.push_back({"teeth of the smaller wheel, not undercut", leastTeeth(toothing, pair.helixAngle),
                 pinionIsSmaller ? pair.pinionTeeth : pair.gearTeeth, Quantity::Number, "1",
                 pinionIsSmaller ? "pinionTeeth" : "gearTeeth", "ISO 21771, from memory"});
  const double pressure = flankPressureOf(pair, toothing, material, outputTorque);
  if (std::isfinite(pressure) && isSet(material.allowedPressure)) {
    all.push_back({"pressure on the flanks", pressure, material.allowedPressure, Quantity::Pressure,
                   "MPa", "faceWidth", "ISO 6336-2, from memory, all factors but Z_H and Z_E = 1"});
  }
  return all;
}

std::optional<GearPairInertia> gearPairInertia(const GearPairGeometry& pair,
                                               const Toothing& toothing) {
  const auto sizes = gearPairSizes(pair, toothing);
  if (!sizes || !isSet(toothing.faceWidth)) return std::nullopt;
  GearPairInertia inertia{wheelInertia(sizes->pinionDiameter, toothing.faceWidth),
                          wheelInertia(sizes->gearDiameter, toothing.faceWidth), 0};
  const double ratio = pair.gearTeeth / pair.pinionTeeth;
  inertia.atInput = inertia.input + inertia.output / (ratio * ratio);
  return inertia;
}

}  // namespace jw

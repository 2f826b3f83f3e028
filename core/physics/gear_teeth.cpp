#include "core/physics/gear_teeth.h"

#include <cmath>
#include <numbers>

#include "core/physics/hertz_contact.h"

namespace jw {

double normalPressureAngle(const Toothing& toothing) {
  return isSet(toothing.pressureAngle) ? toothing.pressureAngle : std::numbers::pi / 9;
}

double transversePressureAngle(const Toothing& toothing, double helixAngle) {
  return std::atan(std::tan(normalPressureAngle(toothing)) / std::cos(helixAngle));
}

double leastTeeth(const Toothing& toothing, double helixAngle) {
  const double sine = std::sin(transversePressureAngle(toothing, helixAngle));
  return 2 * std::cos(helixAngle) / (sine * sine);
}

double flankPressure(const ExternalMesh& mesh, const Toothing& toothing,
                     const ContactMaterial& material, double firstTorque) {
  const double angle = transversePressureAngle(toothing, mesh.helixAngle);
  // Base helix: sin beta_b = sin beta cos a_n.
  const double baseHelix =
      std::asin(std::sin(mesh.helixAngle) * std::cos(normalPressureAngle(toothing)));
  const double module = toothing.module / std::cos(mesh.helixAngle);
  const double radius = module * mesh.firstTeeth / 2;
  const double force = std::abs(firstTorque) / radius / std::cos(angle) / std::cos(baseHelix);
  const double share = mesh.secondTeeth / (mesh.firstTeeth + mesh.secondTeeth);
  const double flankRadius = radius * std::sin(angle) * share / std::cos(baseHelix);
  return lineContactPressure(force, toothing.faceWidth / std::cos(baseHelix), flankRadius,
                             contactSurfaces(material).reducedModulus);
}

double wheelMass(double pitchDiameter, double faceWidth) {
  return kSteelDensity * std::numbers::pi / 4 * pitchDiameter * pitchDiameter * faceWidth;
}

double wheelInertia(double pitchDiameter, double faceWidth) {
  return wheelMass(pitchDiameter, faceWidth) * pitchDiameter * pitchDiameter / 8;
}

}  // namespace jw

#include "core/physics/hertz_contact.h"

#include <cmath>
#include <numbers>

namespace jw {

double reducedModulus(double e1, double nu1, double e2, double nu2) {
  return 1 / ((1 - nu1 * nu1) / e1 + (1 - nu2 * nu2) / e2);
}

ContactSurfaces contactSurfaces(const ContactMaterial& material) {
  const double e = isSet(material.elasticModulus) ? material.elasticModulus : 206e9;
  const double nu = isSet(material.poissonRatio) ? material.poissonRatio : 0.3;
  return {reducedModulus(e, nu, e, nu), material.allowedPressure};
}

double relativeRadius(double r1, double r2) { return 1 / (1 / r1 + 1 / r2); }

double lineContactPressure(double force, double length, double relativeRadius,
                           double reducedModulus) {
  return std::sqrt(force * reducedModulus / (std::numbers::pi * length * relativeRadius));
}

double lineContactHalfWidth(double force, double length, double relativeRadius,
                            double reducedModulus) {
  return std::sqrt(4 * force * relativeRadius / (std::numbers::pi * length * reducedModulus));
}

}  // namespace jw

#include "core/physics/surface_pressure.h"

#include <cmath>
#include <numbers>

#include "core/model/unset.h"

namespace jw {

double reducedModulus(const ContactMaterial& material) {
  const double modulus = isSet(material.elasticModulus) ? material.elasticModulus : 206e9;
  const double poisson = isSet(material.poissonRatio) ? material.poissonRatio : 0.3;
  return modulus / (2 * (1 - poisson * poisson));
}

double linePressure(double force, double length, double relativeRadius,
                    const ContactMaterial& material) {
  return std::sqrt(force * reducedModulus(material) / (std::numbers::pi * length * relativeRadius));
}

}  // namespace jw

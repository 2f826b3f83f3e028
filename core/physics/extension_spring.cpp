#include "core/physics/extension_spring.h"

#include <algorithm>
#include <cmath>

namespace jw {

double ExtensionSpring::lengthAt(double angle) const {
  // (a - b)² + 4 a b sin²(theta/2): no cancellation where the eyes meet.
  const double half = std::sin((angle + phase) / 2);
  return std::sqrt((arm - post) * (arm - post) + 4 * arm * post * half * half);
}

double ExtensionSpring::pullAt(double angle) const {
  const double stretch = lengthAt(angle) - freeLength;
  return stretch > 0 ? preload + rate * stretch : 0;
}

double ExtensionSpring::torqueAt(double angle) const {
  const double length = lengthAt(angle);
  if (!(length > freeLength)) return 0;
  const double pull = preload + rate * (length - freeLength);
  return pull / length * arm * post * std::sin(angle + phase);
}

void ExtensionSpring::addTorque(const Eigen::ArrayXd& angle, Eigen::ArrayXd& torque) const {
  for (Eigen::Index i = 0; i < angle.size(); ++i) torque[i] += torqueAt(angle[i]);
}

ExtensionSpring extensionSpring(const Load& load) {
  return {load.extensionRate,       load.extensionPreload,
          load.extensionFreeLength, load.extensionArm,
          load.extensionPost,       load.extensionArmAngle - load.extensionPostAngle};
}

}  // namespace jw

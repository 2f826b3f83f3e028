#include "core/physics/two_mass.h"

#include <cmath>

namespace jw {
namespace {

using Complex = std::complex<double>;

/// Determinant of J_M s² + c s + K and J_L s² + c s + K coupled by c s + K, over s².
Complex coupled(const TwoMass& two, Complex s) {
  const Complex spring = two.damping * s + two.stiffness;
  return two.motor * two.load * s * s + (two.motor + two.load) * spring;
}

}  // namespace

double TwoMass::locked() const { return std::sqrt(stiffness / load); }

double TwoMass::free() const { return std::sqrt(stiffness * (1 / load + 1 / motor)); }

std::complex<double> TwoMass::motorSpeedPerTorque(double frequency) const {
  const Complex s{0, frequency};
  return (load * s * s + damping * s + stiffness) / (s * coupled(*this, s));
}

std::complex<double> TwoMass::loadSpeedPerTorque(double frequency) const {
  const Complex s{0, frequency};
  return (damping * s + stiffness) / (s * coupled(*this, s));
}

double torqueOfImpact(double speed, double inertia, double stiffness) {
  return std::abs(speed) * std::sqrt(inertia * stiffness);
}

}  // namespace jw

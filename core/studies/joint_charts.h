#pragma once

#include <optional>
#include <vector>

#include "core/checks/evaluation.h"
#include "core/physics/positioning.h"
#include "core/physics/two_mass.h"

namespace jw {

/// How motor and joint answer a torque of the motor, with one load inertia: speed over that of a
/// rigid joint, |G| w (J_M + J_L) in dB. Rigid is 0 dB at every frequency.
struct SwingCurve {
  TwoMass masses;                 ///< with the damping that is assumed
  std::vector<double> frequency;  ///< [Hz] rising, evenly spread on a logarithmic scale
  std::vector<double> motor;      ///< [dB] where the torque acts (collocated)
  std::vector<double> joint;      ///< [dB] behind the spring (not collocated)
  double locked = 0;              ///< [Hz] motor locked: antiresonance at the motor
  double free = 0;                ///< [Hz] resonance
};

/// Charts of the joint as a whole.
struct JointCharts {
  std::vector<SwingCurve> swing;     ///< largest load inertia of the cycle, then the smallest
  double bandwidth = kUnset;         ///< [Hz] wanted
  std::optional<ErrorBudget> error;  ///< with every contribution known
  double reach = 0;                  ///< [m] axis to the tool
  double toolError = kUnset;         ///< [m] allowed
};

/// Share of critical damping of the free swing that curves are drawn with (common practice, no
/// source: metal gearing commonly shows 1 to 5 %).
inline constexpr double kAssumedDamping = 0.02;

/// The curve over a tenth of the locked to ten times the free frequency. `masses` without damping.
SwingCurve swingCurve(TwoMass masses);

/// Parts that the evaluation lacks inputs for are empty.
JointCharts jointCharts(const Project& project, const Evaluation& evaluation);

}  // namespace jw

#pragma once

#include <vector>

#include "core/model/catalogue_entry.h"
#include "core/model/family_rule.h"

namespace jw {

/// The notes at the top of the bundled files (resources/catalogues), which hold these very parts.
inline constexpr const char* kInventedMotorsRemark =
    "Every motor here is invented: no maker's data. The series scales as real motors do: lasting\n"
    "torque with mass^(7/6), thermal resistance with mass^(-2/3), rotor inertia with m d^2.";
inline constexpr const char* kInventedReducersRemark =
    "Every reducer and belt here is invented: no maker's data. They follow the scaling rules in\n"
    "reducer_rules.csv.";
inline constexpr const char* kFamilyRulesRemark =
    "How reducers of a family grow with their torque. Every number here is invented; edit a copy.\n"
    "Mass is in proportion to the rated torque, lengths to its cube root, input inertia to m d^2,\n"
    "stiffness to the torque, the rated input speed (stated for 50 N*m) to one over its cube root.";

/// A motor of a series grown by scaling; every number follows from these few.
struct MotorSeed {
  double power = 100;   ///< [W] rated shaft power
  double speed = 300;   ///< [rad/s] rated
  double voltage = 48;  ///< [V] bus for which it is wound
  bool flat = false;    ///< many poles, large diameter; else slender
  bool brake = false;
};

/// An invented motor that scales as real ones do: continuous torque with mass^(7/6) (heat through
/// the surface), motor constant squared over the winding's loss at its limit, thermal resistance
/// with mass^(-2/3), inertia with m d². Proportions: common practice, no source.
MotorEntry inventedMotor(const MotorSeed& seed);

/// 272 invented motors from 20 W to 5 kW, of two shapes, two windings, with and without brake.
std::vector<MotorEntry> inventedMotors();

/// 176 invented reducers and belts of every family that has a rule, by defaultFamilyRules.
std::vector<Stage> inventedReducers();

}  // namespace jw

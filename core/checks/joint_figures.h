#pragma once

#include <optional>

#include "core/checks/evaluation.h"
#include "core/physics/positioning.h"
#include "core/physics/stopping.h"
#include "core/physics/two_mass.h"

namespace jw {

/// Figures of the joint as a whole that checks and headline quantities share. Each is empty, or
/// NaN, where an input is missing.

/// What brakes in an emergency stop.
enum class StopBy { Brake, Motor };

/// The stop from the cycle's highest speed with the largest load inertia and the largest static
/// torque over the travel driving on all the way: a bound on every instant of the cycle. Friction
/// and mesh losses are not counted. The motor brakes with the least of its envelope torque at rest
/// and at speed, lowest bus voltage, at once; the brake after its delay.
std::optional<StopCase> stopCase(const Project& project, const Evaluation& result, StopBy by);
std::optional<Stop> stopOf(const Project& project, const Evaluation& result, StopBy by);

/// [N·m] at the joint, what the drive carries during a stop: load inertia times deceleration plus
/// the static torque.
double torqueOfStop(const Evaluation& result, const StopCase& about, const Stop& stop);

/// The static torque over the travel that is largest in size, [N·m] and where, with the heaviest
/// and the lightest payload of the cycle.
struct WorstStatic {
  double angle = 0;
  double torque = 0;
};
WorstStatic worstStatic(const Project& project, const Evaluation& result);

/// Both masses and the chain's stiffness under `torque` [N·m] at the joint; empty where a chain
/// counts as rigid or the rotor's inertia is not given.
std::optional<TwoMass> twoMass(const Project& project, const Evaluation& result, double torque);

/// [N·m] at the joint that every stage with a momentary torque allows; NaN if none states one.
double momentaryTorqueAtJoint(const Evaluation& result);

/// [rad/s] of the joint at a collision, and the torque [N·m] that it makes in the drive.
double collisionSpeed(const Project& project, const Evaluation& result);
double collisionTorque(const Project& project, const Evaluation& result);

/// What lies between encoder and tool, at the cycle's largest joint torque. Play is NaN where a
/// stage's is not given, windUp where no stage has a stiffness; hysteresis and transmission error
/// count where given. A joint encoder leaves its own step alone.
std::optional<ErrorBudget> errorBudget(const Project& project, const Evaluation& result);

/// [m] axis to the tool.
double reachOf(const Project& project);

double actuatorMass(const Project& project);      ///< [kg] motor and stages; NaN if one is missing
double actuatorLength(const Project& project);    ///< [m] likewise, in line
double actuatorDiameter(const Project& project);  ///< [m] largest, likewise

}  // namespace jw

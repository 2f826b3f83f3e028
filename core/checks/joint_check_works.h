#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "core/checks/check_writer.h"
#include "core/checks/joint_figures.h"

/// The workings of the joint's checks that are in files of their own.
namespace jw::joint_checks {

void stopTime(const CheckContext& context, CheckWriter& w);
void stopAngle(const CheckContext& context, CheckWriter& w);
void stopTorque(const CheckContext& context, CheckWriter& w);
void stopEnergy(const CheckContext& context, CheckWriter& w);
void stopPower(const CheckContext& context, CheckWriter& w);
void collision(const CheckContext& context, CheckWriter& w);
void positioning(const CheckContext& context, CheckWriter& w);
void resonance(const CheckContext& context, CheckWriter& w);
void backdrive(const CheckContext& context, CheckWriter& w);
void mass(const CheckContext& context, CheckWriter& w);
void length(const CheckContext& context, CheckWriter& w);
void diameter(const CheckContext& context, CheckWriter& w);

// Parts of workings that the headline figures share with the checks. Those that return a text give
// the expression that follows from the symbols they show.

/// An emergency stop and what it comes from.
struct WorkedStop {
  StopCase about;
  Stop stop;

  bool delayed() const { return about.delay > 0; }
  /// The expression where the joint comes to rest; "\u221e" where nothing stops it, 0 at rest.
  std::string orNever(std::string_view expression) const;
};

/// The stop with its symbols; empty if an input is missing.
std::optional<WorkedStop> workedStop(const CheckContext& context, CheckWriter& w, StopBy by);
std::string timeOfStop(const WorkedStop& worked);
std::string angleOfStop(const WorkedStop& worked);
std::string energyOfStop(const WorkedStop& worked);

/// Torque behind each stage in turn that drives it back, from the motor's `torque` [N·m] out.
std::string showBackdriving(const std::vector<StageData>& stages, double torque, CheckWriter& w);
/// Speed, stiffness at `torque` [N·m], motor side and static torque of a collision; NaN without
/// stiffness.
double showCollision(const CheckContext& context, CheckWriter& w, double torque);
void showTwoMass(const TwoMass& two, CheckWriter& w);
/// The budget's angles and the reach.
void showToolError(const CheckContext& context, const ErrorBudget& budget, CheckWriter& w);
std::string showMasses(const CheckContext& context, CheckWriter& w);
std::string showLengths(const CheckContext& context, CheckWriter& w);

}  // namespace jw::joint_checks

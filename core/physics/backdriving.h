#pragma once

#include <vector>

#include "core/physics/stage_data.h"

namespace jw {

/// [N·m] at the motor that sets the unloaded chain going: starting torque of every stage, referred
/// through the stages before it, sum T_0k / prod_{i<k} (N_i eta_i).
double startingTorqueAtMotor(const std::vector<StageData>& stages);

/// [N·m] at the joint that sets the whole chain going backwards, the motor with a friction of
/// `motorDrag` [N·m]: from the motor out, T_out = T_in N / eta_back + T_b0, with the stage's own
/// back-driving start torque or, where that is not given, T_0 N / eta_back. +inf where a stage
/// locks itself.
double backdrivingTorqueAtJoint(const std::vector<StageData>& stages, double motorDrag);

}  // namespace jw

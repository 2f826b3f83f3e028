#pragma once

#include "core/checks/check_writer.h"

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

}  // namespace jw::joint_checks

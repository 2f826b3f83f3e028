#pragma once

#include "widgets/figures/log_rows.h"
#include "widgets/panels/log_study.h"

namespace jw {

/// Position, speed and acceleration: measured or by raw differences, and smoothed. An axis makes
/// room for what was measured and smoothed; raw differences may reach beyond it.
LogView motionView(const LogStudy& study);

/// Torque at the joint, measured, of the project's load and fitted, over the position.
LogView torqueView(const LogStudy& study);

/// "smoothing moved the position by 0.01° rms, 0.05° at most".
QString smoothingEffect(const LogMotion& motion);

/// How a stretch's ends differ: position in °, speed in rpm, acceleration in rad/s².
QStringList stateTexts(const MotionState& state);

}  // namespace jw

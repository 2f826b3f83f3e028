#pragma once

#include "core/checks/evaluation.h"

namespace jw {

/// Fills Evaluation::mix when the project has a daily mix: cycles with a use, unless the only one
/// is the cycle shown, all day long. Each is evaluated through load, chain, demand, heat and
/// supply; the one shown is taken from `result`, whose other parts must be complete. What is wrong
/// goes to result.missing with the path of the cycle it is in; peaks higher than the shown cycle's
/// are noted, since peaks are judged on that one.
void evaluateMix(const Project& project, Evaluation& result);

}  // namespace jw

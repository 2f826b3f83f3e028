#pragma once

#include <vector>

#include "core/motion/sampled_cycle.h"

namespace jw {

/// What is broken where segments meet, as warnings with the path of the later segment: a speed that
/// jumps (by more than 1e-6 of the cycle's peak speed, or 1 % of it beside a table, whose end
/// speeds are estimates), an angle that jumps (a table that does not start at 0), and a cycle that
/// does not return to its start. The last segment joins the first.
std::vector<InputError> joinWarnings(const SampledCycle& sampled, const Cycle& cycle);

}  // namespace jw

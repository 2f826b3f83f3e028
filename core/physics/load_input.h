#pragma once

#include <vector>

#include "core/model/load.h"
#include "core/motion/sampled_cycle.h"
#include "core/quantity/quantity.h"

namespace jw {

/// What the load lacks or states wrongly, so that its torque cannot be computed; empty if nothing.
/// Paths like "load.masses[1].mass".
std::vector<InputError> loadInputErrors(const Load& load);

/// What looks like a slip in a load that can be computed, over the cycle.
std::vector<InputError> loadRemarks(const Load& load, const SampledCycle& cycle);

}  // namespace jw

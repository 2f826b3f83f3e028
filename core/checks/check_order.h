#pragma once

#include <vector>

#include "core/checks/check.h"

namespace jw {

/// Place of a state in reports, the worst first: short 0, close 1, open 2, holds 3.
int rankOf(CheckState state);

/// The checks in the order of reports and lists: by state, of one state the smallest margin first;
/// open ones keep their order.
std::vector<const Check*> worstFirst(const std::vector<Check>& checks);

}  // namespace jw

#pragma once

#include <vector>

#include "core/checks/evaluation.h"

namespace jw {

/// The headline figures of an evaluation, NaN where a part is missing. Their ids are API.
std::vector<NamedQuantity> headlineQuantities(const Project& project, const Evaluation& result);

}  // namespace jw

#pragma once

#include <vector>

#include "core/physics/stage_data.h"

namespace jw {

/// The completed stages alone, for what looks at their ratios and stiffness.
inline std::vector<Stage> plainStages(const std::vector<StageData>& data) {
  std::vector<Stage> stages;
  for (const StageData& one : data) stages.push_back(one.stage);
  return stages;
}

}  // namespace jw

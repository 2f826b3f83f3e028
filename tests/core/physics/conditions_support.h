#pragma once

#include <algorithm>
#include <string>
#include <vector>

#include <gtest/gtest.h>

#include "core/physics/geometry_condition.h"

namespace jw {

/// The one condition whose label contains `words`; fails and gives an impossible one otherwise.
inline GeometryCondition conditionWith(const GeometryConditions& all, const std::string& words) {
  GeometryCondition found{"none", 1, -1, Quantity::Number, "", "", ""};
  int count = 0;
  for (const GeometryCondition& one : all) {
    if (one.label.find(words) == std::string::npos) continue;
    found = one;
    ++count;
  }
  EXPECT_EQ(count, 1) << words;
  return found;
}

inline bool allHold(const GeometryConditions& all) {
  return std::all_of(all.begin(), all.end(), [](const auto& one) { return one.holds(); });
}

}  // namespace jw

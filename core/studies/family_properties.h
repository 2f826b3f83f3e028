#pragma once

#include <span>
#include <string_view>
#include <vector>

#include "core/studies/reducer_families.h"

namespace jw {

/// One property by which reducers are weighed against one another.
struct FamilyProperty {
  std::string_view key;    ///< "torquePerMass"
  std::string_view group;  ///< as a buyer weighs them: "Capacity"
  std::string_view label;
  Quantity quantity;
  std::string_view unit;  ///< of tables
  int better;             ///< +1 more is better, -1 less is, 0 depends on the use
  double (*value)(const FamilyChoice& choice);  ///< [internal unit] NaN = not known
};

/// All of them, by group.
std::span<const FamilyProperty> familyProperties();

/// The property of that key, or null.
const FamilyProperty* findFamilyProperty(std::string_view key);

/// 0 for the worst and 1 for the best of `values`, between them in proportion; 1 for all if they
/// are equal. NaN stays NaN. `better` as in FamilyProperty; 0 gives NaN throughout.
std::vector<double> sharesOfBest(const std::vector<double>& values, int better);

}  // namespace jw

#include "core/physics/geometry_condition.h"

#include <limits>

namespace jw {

double GeometryCondition::margin() const {
  if (!(demand > 0)) return std::numeric_limits<double>::infinity();
  return capacity / demand - 1;
}

}  // namespace jw

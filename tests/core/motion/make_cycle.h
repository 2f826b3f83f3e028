#pragma once

#include <utility>
#include <vector>

#include "core/model/cycle.h"

namespace jw {

/// A cycle for tests.
inline Cycle makeCycle(std::vector<Segment> segments, double startAngle = 0, int samples = 1000) {
  Cycle cycle;
  cycle.startAngle = startAngle;
  cycle.samples = samples;
  cycle.segments = std::move(segments);
  return cycle;
}

}  // namespace jw

#pragma once

#include <vector>

namespace jw {

/// Planned places of several joints over time.
struct JointTrajectory {
  std::vector<double> time;                ///< [s], strictly rising
  std::vector<std::vector<double>> place;  ///< [rad] or [m]; a list for each joint, one per time
};

}  // namespace jw

#pragma once

#include <functional>
#include <optional>
#include <stop_token>
#include <string_view>
#include <vector>

#include "core/studies/design_points.h"

namespace jw {

/// A margin that shall reach the target.
struct WantedMargin {
  std::string_view id;
  int stage = -1;
};

/// How far a value may be changed, relative to itself.
struct ChangeRange {
  double low = -0.9;  ///< at most 0
  double high = 9;    ///< at least 0
};

/// The joint after a relative change of one thing.
using ChangedJoint = std::function<DesignPoint(double relative)>;

/// What a scan found out about one margin.
struct ScannedMargin {
  bool matters = false;            ///< whether the margin moves at all
  std::optional<double> smallest;  ///< smallest change that reaches the target, on its safe side
  double best = kUnset;            ///< largest margin met; NaN if it was open throughout
  double bestAt = 0;               ///< change at which it was met
};

/// Looks outward on both sides, in steps from 1 % to the ends of the range, until every margin has
/// reached `target`; then closes in on the crossing by algorithm 748 (Boost.Math) to 1e-9 of the
/// change. A margin that does not move in the first step is given up (one at -1, if not at
/// the ends either); where it becomes unknown, the edge is the end. Where it jumps, the side of
/// the jump that holds is returned. A crossing that comes and goes between two steps is not seen. A
/// stop is honoured after the evaluation at work; the result is incomplete then.
std::vector<ScannedMargin> scanChange(const ChangedJoint& joint, const ChangeRange& range,
                                      const DesignPoint& base,
                                      const std::vector<WantedMargin>& wanted, double target,
                                      const std::stop_token& stop);

}  // namespace jw

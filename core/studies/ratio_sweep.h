#pragma once

#include <optional>
#include <string>
#include <vector>

#include <tl/expected.hpp>

#include "core/studies/design_points.h"
#include "core/studies/realizable_ratios.h"

namespace jw {

/// Which ratio is swept, and how.
struct RatioSweepRequest {
  int stage = -1;              ///< index into the transmission; -1 = the ratio from motor to joint
  std::vector<double> ratios;  ///< rising, above 0
  bool preview = false;  ///< a coarse cycle: fast enough to follow a hand, good to a few per cent
};

/// One end of a feasible band.
struct BandEnd {
  double ratio = kUnset;
  std::string_view check;  ///< the check that is short beyond it; empty at the end of the range
  int stage = -1;
  std::string title;
  bool open = false;  ///< the check is not short there but cannot be evaluated
};

/// A stretch of ratios at which no check is short nor became open.
struct FeasibleBand {
  BandEnd low, high;
};

/// A ratio that is best in one respect.
struct BestRatio {
  double ratio = kUnset;  ///< NaN if it lies where evaluation ends, or could not be found
  double value = kUnset;  ///< [W] mean loss, or [°C] of the winding
};

/// The joint over a range of one ratio.
struct RatioSweep {
  int stage = -1;           ///< the stage whose ratio was changed
  bool total = false;       ///< `ratio` is that from motor to joint, else the stage's
  double present = kUnset;  ///< ratio of the design as it stands
  std::vector<double> ratio;
  std::vector<DesignPoint> points;
  std::vector<MarginColumn> checks;
  std::vector<QuantityColumn> quantities;
  std::vector<FeasibleBand> bands;
  std::string openReason;  ///< why some ratio cannot be evaluated; empty if all can
  BestRatio leastLoss;             ///< mean power that does not reach the load
  BestRatio coolest;               ///< peak winding temperature of the periodic state
  double inertiaMatched = kUnset;  ///< sqrt(J_L / J_m)
  double torqueMatched = kUnset;   ///< sqrt((J_L + tau_L / alpha) / J_m), see ratio_sweep.cpp
  std::vector<double> realizable;  ///< ratios within the range that can be built, rising
  bool stopped = false;
};

/// The project with the ratio of `stage` set. A ratio that follows from the parts is typed over as
/// a data sheet would state it: what else the parts tell (efficiency, inertia, stiffness, sense of
/// turning, conditions of geometry) stays that of the parts as they are, and so do all data-sheet
/// figures. Throws std::logic_error for a stage that is not there.
Project withStageRatio(const Project& project, int stage, double ratio);

/// The stage that carries a change of the ratio from motor to joint: the one of the largest ratio,
/// couplings apart. Fails if the chain has no stage or a ratio is not known.
tl::expected<int, InputError> leadingStage(const Project& project);

/// Every check over a range of ratios: the feasible bands with what limits them at both ends (found
/// by halving to 1e-4 of the ratio), the ratios of least loss and lowest temperature (parabola
/// through the best three points), the textbook inertia match, and what can be built. Fails, naming
/// the field, where the ratio of a stage is not known.
tl::expected<RatioSweep, InputError> ratioSweep(const Project& project,
                                                const RatioSweepRequest& request,
                                                const StudyRun& run = {});

/// Ratios from `from` to `to` that a stage of this family can have, rising; of more than `most`
/// those of the smallest parts, spread over the range. Empty for families without parts.
std::vector<double> realizableTicks(StageFamily family, double from, double to,
                                    const SizeLimits& limits, std::size_t most = 120);

}  // namespace jw

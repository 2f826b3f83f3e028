#pragma once

#include <string>
#include <vector>

#include <tl/expected.hpp>

#include "core/model/project.h"
#include "core/quantity/quantity.h"

namespace jw {

/// A cycle that the daily mix uses.
struct MixEntry {
  const Cycle* cycle = nullptr;  ///< inside the project
  std::string path;              ///< "cycle" or "otherCycles[1]"
  std::string title;             ///< its name, or "cycle 2"; the one shown is cycle 1
};

/// The cycles of the project that have a use, the one shown first.
std::vector<MixEntry> mixEntries(const Project& project);

/// What the cycles take of the day's time of duty.
struct MixShares {
  std::vector<double> share;  ///< [1] of each entry
  double idle = 0;            ///< [1] what is left: the joint rests, the motor without current
};

/// Shares of the day: runs per hour times period [s] over an hour, or the share itself. Fails,
/// naming the field, on a count or share that is not set, and, naming the cycles and their shares,
/// if they take more than the whole.
tl::expected<MixShares, InputError> mixShares(const std::vector<MixEntry>& entries,
                                              const std::vector<double>& periods);

/// Wear of one stage or bearing: the two means that its life follows from.
struct WearMeans {
  double load = 0;  ///< [N·m] or [N], weighted by the way turned: (∑|n| t |T|^p / ∑|n| t)^(1/p)
  double speed = 0;  ///< [rad/s] mean of |n|, rest included
};

/// The same of a mix: n_av = ∑ s n_k, T_av = (∑ s n_k T_k^p / ∑ s n_k)^(1/p), where s are the
/// shares of the day. Exact, since both means are integrals over time (ISO 281 mean load; from
/// memory).
WearMeans mixedWear(const std::vector<WearMeans>& cycles, const std::vector<double>& share,
                    double exponent);

/// ∑ s v: a mean over the day of what rests at 0.
double mixedMean(const std::vector<double>& values, const std::vector<double>& share);

/// √(∑ s v²): root mean square over the day.
double mixedRms(const std::vector<double>& values, const std::vector<double>& share);

}  // namespace jw

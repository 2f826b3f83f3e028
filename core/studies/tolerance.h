#pragma once

#include <cstdint>
#include <functional>
#include <string>
#include <vector>

#include <tl/expected.hpp>

#include "core/studies/banded_draw.h"
#include "core/studies/design_points.h"
#include "core/studies/spread.h"

namespace jw {

/// How one margin follows from the inputs, or the smallest of all.
struct MarginSpread {
  std::string_view id;  ///< empty for the smallest of all
  int stage = -1;
  std::string title;
  double nominal = kUnset;     ///< margin with every input as given
  Spread drawn;                ///< of the draws
  Proportion holds;            ///< chance that the margin is not below 0; open draws are left out
  std::size_t open = 0;        ///< draws in which it could not be told
  std::vector<double> margin;  ///< of each draw
  std::vector<double> correlation;  ///< rank correlation with each input
  std::vector<double> share;        ///< c_i u_i of each input: change of the margin over +u
  double linearDeviation = kUnset;  ///< sqrt(sum (c_i u_i)²)
  double linearHolds = kUnset;      ///< chance that it holds if it were normal with that deviation
};

/// What bands on the inputs do to the verdicts.
struct Tolerance {
  std::vector<BandedInput> inputs;
  std::size_t draws = 0;  ///< done so far
  std::uint64_t seed = 0;
  std::vector<MarginSpread> checks;
  /// The smallest margin of each draw; its `holds` is that of all checks. Its margin has a kink
  /// wherever another check takes over, so its linearHolds is the bound that the checks set: all
  /// hold at most as often as the one that holds least.
  MarginSpread worst;
  bool stopped = false;
};

struct ToleranceRequest {
  std::size_t draws = 10'000;  ///< at most kMostDraws
  std::uint64_t seed = 1;
  std::function<void(const Tolerance&)> partial = {};  ///< called now and then with what is there
};

inline constexpr std::size_t kMostDraws = 100'000;

/// Monte Carlo on the full evaluation (JCGM 101:2008; from memory): every field with a band is
/// drawn from its distribution, all independent of one another, at evenly spread points
/// (unitPoints). A value that the field does not allow is held at the nearest allowed one, and
/// counted. Beside it the law of propagation (JCGM 100:2008, 5.1; from memory) with sensitivities
/// by central differences over +-u, which holds where the margin is nearly linear over the bands.
/// Fails if no field has a band, or without draws.
tl::expected<Tolerance, InputError> tolerance(const Project& project,
                                              const ToleranceRequest& request,
                                              const StudyRun& run = {});

}  // namespace jw

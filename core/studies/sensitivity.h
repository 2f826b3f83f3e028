#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "core/studies/study_inputs.h"
#include "core/studies/study_run.h"

namespace jw {

/// How one margin follows one input: change of the margin over relative change of the input, that
/// is points of margin per per cent of the input.
struct InputSlope {
  std::size_t input = 0;  ///< index into Sensitivities::inputs
  double slope = 0;       ///< [1] d margin / d ln input; at a corner the mean of both sides
  double below = kUnset;  ///< [1] towards smaller values; NaN where the input may not go there
  double above = kUnset;  ///< [1] towards larger ones
  bool corner = false;    ///< the two sides differ: another instant, limit or part takes over here
};

/// What one margin depends on.
struct MarginSlopes {
  std::string_view id;
  int stage = -1;
  std::string title;
  double margin = kUnset;
  std::vector<InputSlope> inputs;  ///< strongest first; those without influence left out
};

/// Sensitivity of every margin that is known and finite.
struct Sensitivities {
  std::vector<StudyInput> inputs;    ///< those that a continuous change makes sense for
  std::vector<MarginSlopes> checks;  ///< in the order of the evaluation
  bool stopped = false;

  /// Null if this margin is open, infinite or not there.
  const MarginSlopes* of(std::string_view id, int stage) const;
};

/// Derivatives of all margins through the full evaluation: central differences over ±0.01 % of
/// every input, where only one side is allowed three points on that side; both of second order.
/// Whole numbers are left out. The result does not depend on the number of threads.
Sensitivities sensitivities(const Project& project, const StudyRun& run = {});

}  // namespace jw

#pragma once

#include <cstddef>
#include <functional>
#include <stop_token>

#include "core/model/unset.h"

namespace jw {

/// How far a study has come.
struct StudyProgress {
  std::size_t done = 0;
  std::size_t total = 0;
  double secondsLeft = kUnset;  ///< at the pace so far; NaN before anything is done
};

/// How a study runs. `progress` is called from the thread that called the study, some 30 times a
/// second and once at the end.
struct StudyRun {
  std::stop_token stop = {};
  std::function<void(const StudyProgress&)> progress = {};
  unsigned threads = 0;  ///< 0 = one for each core
};

/// Calls body(0) ... body(count - 1) from several threads, in no order; each writes its own result.
/// Returns false if a stop was asked for: then some were left out. A stop takes effect once the
/// bodies at work are through.
bool forEachPoint(std::size_t count, const StudyRun& run,
                  const std::function<void(std::size_t)>& body);

}  // namespace jw

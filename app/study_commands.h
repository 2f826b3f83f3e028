#pragma once

#include <string>
#include <vector>

#include "app/commands.h"

namespace jw {

struct SweepRequest {
  ProjectRequest project;
  std::vector<std::string> over;  ///< one or two of "path=from..to:step"
  bool asCsv = false;
};

struct ToleranceCommand {
  ProjectRequest project;
  std::vector<std::string> bands;  ///< "path=band"
  int draws = 10'000;
  unsigned seed = 1;
  bool asJson = false;
};

/// Returns an ExitCode: kAllHold if a design without a short verdict was found.
int runSweep(const SweepRequest& request);
/// Returns an ExitCode: kAllHold if every draw holds in every check.
int runTolerance(const ToleranceCommand& request);

}  // namespace jw

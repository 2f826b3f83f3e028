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
  std::size_t draws = 10'000;
  unsigned seed = 1;
  bool asJson = false;
};

struct SearchCommand {
  ProjectRequest project;
  std::string motors, reducers;  ///< catalogue files; empty = the bundled ones
  std::string stage;             ///< index that reducers are put at; empty = the leading stage
  std::string belt;              ///< "stage=range"; empty = none
  std::vector<std::string> filters;
  std::string sort = "mass";
  std::vector<std::string> pareto;   ///< none, or two figures
  std::vector<std::string> explain;  ///< none, or the names of a motor and a reducer
  std::string adopt;                 ///< file that gets the best as a further variant
  std::size_t most = 0;
  bool asCsv = false;
};

struct RemediesCommand {
  ProjectRequest project;
  std::string check;   ///< id; empty = every verdict
  std::string motors;  ///< catalogue file; empty = no motors are tried
  bool asJson = false;
};

/// Returns an ExitCode: kAllHold if a design without a short verdict was found.
int runSweep(const SweepRequest& request);
/// Returns an ExitCode: kAllHold if every draw holds in every check.
int runTolerance(const ToleranceCommand& request);
/// Returns an ExitCode: kAllHold if a combination was found.
int runSearch(const SearchCommand& request);
/// Returns an ExitCode as check does.
int runRemedies(const RemediesCommand& request);

}  // namespace jw

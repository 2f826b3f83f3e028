#pragma once

#include <CLI/CLI.hpp>

#include "app/study_commands.h"

namespace jw {

/// The options that every command on a project has.
void addFile(CLI::App& command, ProjectRequest& request);
void addSet(CLI::App& command, ProjectRequest& request);

/// What the commands of the studies are asked for.
struct StudyRequests {
  SweepRequest sweep;
  ToleranceCommand tolerance;
  SearchCommand search;
  RemediesCommand remedies;
};

/// Declares sweep, tolerance, search and remedies.
void addStudies(CLI::App& app, StudyRequests& requests);

}  // namespace jw

#pragma once

#include "app/commands.h"
#include "app/project_file.h"
#include "widgets/snapshot.h"

namespace jw {

/// The project of a command, with its settings made.
tl::expected<LoadedProject, InputError> loadRequested(const ProjectRequest& request);

/// Prints the error to standard error; returns kBadInput.
int reportBadInput(const InputError& error);

/// The project evaluated, as views show it.
Snapshot evaluateNow(Project project);

}  // namespace jw

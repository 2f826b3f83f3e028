#pragma once

#include <functional>
#include <span>
#include <string>
#include <vector>

#include <tl/expected.hpp>

#include "core/files/json_document.h"

namespace jw {

/// Brings a document of version `from` to version `from` + 1, in memory.
struct MigrationStep {
  int from = 0;
  std::string note;  ///< what it changes, for the person
  std::function<tl::expected<void, InputError>(Json&)> apply;
};

/// The steps of this version of the program, oldest first. Version 1 is the first, so none yet.
std::span<const MigrationStep> projectMigrations();

/// Brings `document` from version `from` to version `to` by applying every step between, oldest
/// first; returns a note for each. `steps` must hold one step for each version in between
/// (std::logic_error otherwise). On an error of a step the document is as that step left it.
tl::expected<std::vector<InputError>, InputError> migrate(Json& document, int from, int to,
                                                          std::span<const MigrationStep> steps);

}  // namespace jw

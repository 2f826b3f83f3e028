#include "core/files/migration.h"

#include <algorithm>
#include <stdexcept>

#include <fmt/format.h>

namespace jw {

std::span<const MigrationStep> projectMigrations() { return {}; }

tl::expected<std::vector<InputError>, InputError> migrate(Json& document, int from, int to,
                                                          std::span<const MigrationStep> steps) {
  std::vector<InputError> notes;
  for (int version = from; version < to; ++version) {
    const auto step = std::find_if(steps.begin(), steps.end(),
                                   [&](const MigrationStep& s) { return s.from == version; });
    if (step == steps.end()) {
      throw std::logic_error(fmt::format("no migration from version {}", version));
    }
    if (auto done = step->apply(document); !done) {
      return tl::unexpected(std::move(done.error()));
    }
    document["version"] = version + 1;
    notes.push_back(
        {fmt::format("brought from version {} to {}: {}", version, version + 1, step->note), "",
         "save to keep it in the new form"});
  }
  return notes;
}

}  // namespace jw

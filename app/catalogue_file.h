#pragma once

#include <string>
#include <string_view>
#include <vector>

#include <fmt/format.h>
#include <tl/expected.hpp>

#include "app/project_file.h"
#include "app/requested_project.h"

namespace jw {

/// Reads a catalogue with `read` (catalogue_table.h); the bundled one if no file is named. Notes go
/// to standard error.
template <class Entry, class Read>
tl::expected<std::vector<Entry>, InputError> readCatalogueFile(const std::string& file,
                                                               const char* bundled,
                                                               const Read& read) {
  const QString name = file.empty() ? QString(bundled) : QString::fromLocal8Bit(file.c_str());
  const auto bytes = readFile(name);
  if (!bytes) return tl::unexpected(bytes.error());
  auto catalogue = read(std::string_view(bytes->data(), static_cast<std::size_t>(bytes->size())),
                        name.toStdString());
  if (!catalogue) return tl::unexpected(catalogue.error());
  for (const InputError& note : catalogue->notes) fmt::print(stderr, "{}\n", describe(note));
  return std::move(catalogue->entries);
}

}  // namespace jw

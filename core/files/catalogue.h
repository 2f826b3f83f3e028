#pragma once

#include <string>
#include <string_view>
#include <vector>

#include <tl/expected.hpp>

#include "core/files/catalogue_table.h"

namespace jw {

enum class CatalogueKind { Motors, Reducers, Rules };

/// A catalogue that was read whole: one of the three lists is filled.
struct Catalogue {
  CatalogueKind kind = CatalogueKind::Motors;
  std::string name;  ///< of the file, or what stands for it
  std::string text;  ///< as it was read
  bool bundled = false;
  std::vector<MotorEntry> motors;
  std::vector<Stage> reducers;
  std::vector<FamilyRule> rules;
  std::vector<OwnColumn> own;     ///< of rules
  std::vector<InputError> notes;  ///< what was passed over

  std::size_t size() const { return motors.size() + reducers.size() + rules.size(); }
};

/// Reads a catalogue of that kind; errors as the readers of catalogue_table.h: nothing is taken
/// over by half.
tl::expected<Catalogue, InputError> readCatalogue(CatalogueKind kind, std::string text,
                                                  std::string name);

}  // namespace jw

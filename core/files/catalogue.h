#pragma once

#include <string>
#include <string_view>
#include <vector>

#include <tl/expected.hpp>

#include "core/files/catalogue_table.h"

namespace jw {

enum class CatalogueKind { Motors, Reducers, Rules };

/// What a person adds to the scaling rules in words or numbers of their own: a price, a noise, a
/// lubrication. Stands in the rules' file as a column titled "own:price [EUR]".
struct OwnColumn {
  std::string title;  ///< "price [EUR]"
  std::vector<std::pair<StageFamily, std::string>> cells;

  /// What is said of a family; empty if nothing.
  std::string_view of(StageFamily family) const;
};

/// Begins the title of a column of one's own.
inline constexpr std::string_view kOwnPrefix = "own:";

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

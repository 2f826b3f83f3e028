#pragma once

#include <span>
#include <string>
#include <string_view>
#include <vector>

#include <tl/expected.hpp>

#include "core/model/catalogue_entry.h"
#include "core/model/family_rule.h"
#include "core/quantity/quantity.h"

namespace jw {

// Catalogues as delimited text. The first line names the columns: "name", and fields of a motor or
// of a stage by key or label as 'jointwright fields' lists them, numbers with their unit in
// brackets: "rotorInertia [kg*cm^2]". A column without a unit is in the field's usual one; a cell
// may name its own ("3/8 in"). The column "origin" and lines that start with '#' are remarks; other
// columns are passed over with a note. Columns stand apart by tabs, semicolons or commas. An empty
// cell leaves the field unset or at its usual value. Every error names file, line and column.

/// Largest number of rows that is read.
inline constexpr std::size_t kMostCatalogueRows = 200'000;

template <class Entry>
struct ReadCatalogue {
  std::vector<Entry> entries;
  std::vector<InputError> notes;
};

/// Motors; each needs a name. Fails on unknown units, values that are not allowed, columns given
/// twice, surplus cells and on a text without rows. `file` is the name in messages.
tl::expected<ReadCatalogue<MotorEntry>, InputError> readMotorCatalogue(std::string_view text,
                                                                       std::string_view file);

/// Reducers, as readMotorCatalogue; each needs a name and a family.
tl::expected<ReadCatalogue<Stage>, InputError> readReducerCatalogue(std::string_view text,
                                                                    std::string_view file);

/// Scaling rules, a line for each family with all numbers of a FamilyRule by key. A family that is
/// left out keeps its default.
tl::expected<std::vector<FamilyRule>, InputError> readFamilyRules(std::string_view text,
                                                                  std::string_view file);

/// Commas and points; numbers to four digits, in the fields' usual units. Columns that nothing
/// fills are left out. `remark` goes before the titles, as lines of notes.
std::string writeMotorCatalogue(std::span<const MotorEntry> motors, std::string_view remark);
std::string writeReducerCatalogue(std::span<const Stage> reducers, std::string_view remark);
std::string writeFamilyRules(std::span<const FamilyRule> rules, std::string_view remark,
                             std::span<const OwnColumn> own = {});

/// Begins the title of a column of one's own.
inline constexpr std::string_view kOwnPrefix = "own:";

}  // namespace jw

#pragma once

#include <array>
#include <span>
#include <string_view>
#include <vector>

#include <tl/expected.hpp>

#include "core/quantity/quantity.h"

namespace jw {

/// A column that a table can have.
struct TableColumn {
  std::string_view title;                 ///< for messages
  std::array<std::string_view, 4> names;  ///< in small letters; the rest empty
  Quantity quantity;
  bool needed = false;
};

/// What a table of measured or computed rows looks like. The first column is the time, and needed.
struct TableForm {
  std::span<const TableColumn>
      columns;                    ///< in the order of a text without names, needed ones first
  std::string_view withoutNames;  ///< what such a text has to give, for a message
};

/// The values [internal unit] of each of the form's columns; empty if the text has no such column.
struct DelimitedTable {
  std::vector<std::vector<double>> columns;
};

/// Reads rows of numbers from text. `name` is the file's name, for messages.
///
/// Columns stand apart by tabs, semicolons or commas, whichever of these the first line has
/// (looked for in that order). Numbers take a decimal point, or a decimal comma where the comma
/// does not part columns. The first line may name the columns in any order, with units in brackets:
/// "time [s]; angle (deg)"; other names are passed over. A column without a unit, and every column
/// of a text without a line of names, is in internal units. Empty lines and lines that start with
/// '#' are passed over.
///
/// Fails, naming file, line and column, on text that is no number, on values that are missing,
/// surplus or not finite, on time that does not rise, and on unknown units.
tl::expected<DelimitedTable, InputError> readDelimitedTable(std::string_view text,
                                                            std::string_view name,
                                                            const TableForm& form);

}  // namespace jw

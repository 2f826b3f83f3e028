#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include <tl/expected.hpp>

#include "core/quantity/quantity.h"

namespace jw {

/// A log as text. It is not copied: it must outlive the calls it is given to.
struct LogSource {
  std::string_view text;
  std::string_view name;   ///< the file's name, for messages
  std::uint64_t size = 0;  ///< bytes that the file claims to have; 0 = those of `text`
};

/// How a log's text is laid out: guessed, shown and correctable.
struct LogLayout {
  char delimiter = ',';              ///< ',' ';' '|' or a tab; ' ' for runs of blanks
  char decimalSign = '.';            ///< '.' or ','
  std::size_t titleLine = 0;         ///< line of the column names, from 1; 0 = none
  std::size_t unitLine = 0;          ///< line of units below the names; 0 = none
  std::size_t firstRowLine = 1;      ///< line of the first row of numbers
  std::vector<std::string> titles;   ///< of each column; empty texts if there are none
  std::vector<std::string> units;    ///< of each column as the text gives them; may be empty texts
  std::vector<std::string> reasons;  ///< why so, a sentence each

  std::size_t columns() const { return titles.size(); }
};

/// Logs above this many bytes are refused: a table in memory is no place for them.
inline constexpr std::uint64_t kLargestLog = std::uint64_t{2} << 30;

/// Why no log can be read from `source` at all: cut short, too large, or no plain text.
std::optional<InputError> sourceError(const LogSource& source);

/// Guesses delimiter, decimal sign, names and first row from the first lines: the delimiter is the
/// one that parts the lines into most numbers, alike from line to line; names are the line in front
/// of the first row of numbers, with a '#' or not. Fails, saying where, on text that is empty, has
/// names but no rows, is one column only, is no UTF-8 text, or is larger than kLargestLog.
tl::expected<LogLayout, InputError> guessLayout(const LogSource& source);

/// Takes another delimiter or decimal sign than the guessed one and finds names and rows anew.
tl::expected<LogLayout, InputError> layoutWith(const LogSource& source, char delimiter,
                                               char decimalSign);

/// Takes other lines [from 1] for the names, 0 = none, and the first row than those in `layout`.
/// Fails if there is no such row, it has one column only, or the names would not stand above it.
tl::expected<LogLayout, InputError> layoutFrom(const LogSource& source, LogLayout layout,
                                               std::size_t titleLine, std::size_t firstRowLine);

/// The cells of the first `count` rows as they stand in the text, for a preview.
std::vector<std::vector<std::string>> previewRows(const LogSource& source, const LogLayout& layout,
                                                  std::size_t count);

}  // namespace jw

#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

// Lines, cells and numbers of delimited text, as views into it.

namespace jw::table_text {

using Cells = std::vector<std::string_view>;

/// Stands for a run of blanks between cells.
inline constexpr char kBlanks = ' ';

/// `text` without blanks and quotation marks at its ends.
std::string_view trimmed(std::string_view text);

/// ASCII capitals made small.
std::string smallLetters(std::string_view text);

/// Text from a file, fit for a message: short, and '?' for what cannot be printed.
std::string quoted(std::string_view text);

/// Goes through the lines of a text, a byte order mark left out.
class LineReader {
 public:
  explicit LineReader(std::string_view text);

  /// Whether there is a further line that is neither empty nor a note ('#'); then in line().
  bool next();
  /// As next(), notes included.
  bool nextOrNote();
  std::string_view line() const { return line_; }
  std::size_t number() const { return number_; }  ///< from 1
  bool atEnd() const { return rest_.empty(); }
  /// Whether a line end follows line().
  bool ended() const { return ended_; }

 private:
  std::string_view rest_, line_;
  std::size_t number_ = 0;
  bool ended_ = true;
};

/// The cells of a line, blanks and quotation marks at their ends left out. A delimiter between
/// quotation marks parts nothing. kBlanks takes every run of blanks for one delimiter.
void split(std::string_view line, char delimiter, Cells& cells);

/// The number that all of `cell` is with the given decimal sign, NaN and infinity included; nothing
/// if it is none. Never depends on the locale.
std::optional<double> readNumber(std::string_view cell, char decimalSign);

}  // namespace jw::table_text

#include "core/files/motion_table.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>
#include <optional>
#include <vector>

#include <fast_float/fast_float.h>
#include <fmt/format.h>
#include <fmt/ranges.h>

namespace jw {
namespace {

using MaybeError = std::optional<InputError>;
using Cells = std::vector<std::string_view>;

/// What a column can hold.
struct ColumnKind {
  std::string_view title;
  std::array<std::string_view, 4> names;  ///< in small letters; the rest empty
  Quantity quantity;
  std::vector<double> MotionTable::*values;
};

const std::array<ColumnKind, 4> kKinds{{
    {"time", {"time", "t"}, Quantity::Time, &MotionTable::time},
    {"angle", {"angle", "position", "pos", "q"}, Quantity::Angle, &MotionTable::angle},
    {"speed", {"speed", "velocity", "v"}, Quantity::AngularSpeed, &MotionTable::speed},
    {"acceleration",
     {"acceleration", "accel", "a"},
     Quantity::AngularAcceleration,
     &MotionTable::acceleration},
}};

/// A column of the text that is read.
struct Column {
  const ColumnKind* kind;
  std::size_t position;  ///< among the cells of a line
  double factor;         ///< to the internal unit
};

std::string_view trimmed(std::string_view text) {
  constexpr std::string_view kBlank = " \t\r\f\v\"";
  const std::size_t first = text.find_first_not_of(kBlank);
  if (first == std::string_view::npos) return {};
  return text.substr(first, text.find_last_not_of(kBlank) - first + 1);
}

std::string smallLetters(std::string_view text) {
  std::string result(text);
  for (char& c : result)
    if (c >= 'A' && c <= 'Z') c = static_cast<char>(c - 'A' + 'a');
  return result;
}

/// Bytes of the UTF-8 character at the front of `text`; 0 if there is none.
std::size_t characterLength(std::string_view text) {
  const auto lead = static_cast<unsigned char>(text.front());
  if (lead < 0x80) return lead < 0x20 || lead == 0x7f ? 0 : 1;
  const std::size_t length = lead >= 0xf0 ? 4 : lead >= 0xe0 ? 3 : 2;
  if (lead < 0xc2 || lead > 0xf4 || text.size() < length) return 0;
  for (const char c : text.substr(1, length - 1))
    if ((static_cast<unsigned char>(c) & 0xc0) != 0x80) return 0;
  return length;
}

/// Text from a file, fit for a message: short, and '?' for what cannot be printed.
std::string quoted(std::string_view text) {
  constexpr std::size_t kLongest = 40;
  std::string result = "\"";
  while (!text.empty() && result.size() < kLongest) {
    const std::size_t length = characterLength(text);
    length == 0 ? result += '?' : result += text.substr(0, length);
    text.remove_prefix(std::max<std::size_t>(length, 1));
  }
  return result + (text.empty() ? "\"" : "…\"");
}

/// Goes through the lines that count.
class LineReader {
 public:
  explicit LineReader(std::string_view text) : rest_(text) {
    constexpr std::string_view kByteOrderMark = "\xEF\xBB\xBF";
    if (rest_.starts_with(kByteOrderMark)) rest_.remove_prefix(kByteOrderMark.size());
  }

  /// Whether there is a further line, then in line().
  bool next() {
    while (!rest_.empty()) {
      const std::size_t end = std::min(rest_.find('\n'), rest_.size());
      line_ = rest_.substr(0, end);
      rest_.remove_prefix(std::min(end + 1, rest_.size()));
      ++number_;
      const std::string_view content = trimmed(line_);
      if (!content.empty() && content.front() != '#') return true;
    }
    return false;
  }

  std::string_view line() const { return line_; }
  std::size_t number() const { return number_; }  ///< from 1

 private:
  std::string_view rest_, line_;
  std::size_t number_ = 0;
};

char findDelimiter(std::string_view line) {
  for (const char c : {'\t', ';'})
    if (line.find(c) != std::string_view::npos) return c;
  return ',';
}

/// Empty cells at the end are dropped: many programs write them.
void split(std::string_view line, char delimiter, Cells& cells) {
  cells.clear();
  for (std::size_t begin = 0; begin <= line.size();) {
    const std::size_t end = std::min(line.find(delimiter, begin), line.size());
    cells.push_back(trimmed(line.substr(begin, end - begin)));
    begin = end + 1;
  }
  while (!cells.empty() && cells.back().empty()) cells.pop_back();
}

/// The number that `cell` is, NaN and infinity included; nothing if it is none.
std::optional<double> readNumber(std::string_view cell, char delimiter) {
  const bool comma = delimiter != ',' && cell.find(',') != std::string_view::npos;
  if (cell.starts_with('+')) cell.remove_prefix(1);
  double value = 0;
  const fast_float::parse_options options(fast_float::chars_format::general, comma ? ',' : '.');
  const auto [end, code] =
      fast_float::from_chars_advanced(cell.data(), cell.data() + cell.size(), value, options);
  if (end != cell.data() + cell.size() || cell.empty()) return std::nullopt;
  if (code != std::errc() && code != std::errc::result_out_of_range) return std::nullopt;
  return value;
}

/// Reads one text into a table.
class TableReader {
 public:
  TableReader(std::string_view csv, std::string_view name) : lines_(csv), name_(name) {}

  tl::expected<MotionTable, InputError> read() {
    if (!lines_.next())
      return tl::unexpected(
          InputError{"the file holds no lines", name_, "give a line for each point"});
    delimiter_ = findDelimiter(lines_.line());
    split(lines_.line(), delimiter_, cells_);
    const bool named = !cells_.empty() && !readNumber(cells_.front(), delimiter_);
    if (MaybeError e = named ? readHeader() : assumeHeader()) return tl::unexpected(*e);
    if (MaybeError e = readRows(named)) return tl::unexpected(*e);
    if (MaybeError e = finish()) return tl::unexpected(*e);
    return std::move(table_);
  }

 private:
  InputError error(const std::string& what, const std::string& remedy,
                   std::string_view column = {}) const {
    std::string where = fmt::format("{}, line {}", name_, lines_.number());
    if (!column.empty()) where += fmt::format(", column {}", column);
    return {what, where, remedy};
  }

  MaybeError readHeader() {
    width_ = cells_.size();
    for (std::size_t i = 0; i < width_; ++i)
      if (MaybeError e = readTitle(cells_[i], i)) return e;
    for (std::size_t k = 0; k < 2; ++k)
      if (!hasColumn(kKinds[k])) return missingColumn(kKinds[k]);
    return std::nullopt;
  }

  /// One column's title: "time", "time [s]", "time (s)".
  MaybeError readTitle(std::string_view title, std::size_t position) {
    const std::size_t open = title.find_first_of("[(");
    const std::string label = smallLetters(trimmed(title.substr(0, open)));
    const auto kind = std::find_if(kKinds.begin(), kKinds.end(), [&](const ColumnKind& k) {
      return !label.empty() && std::find(k.names.begin(), k.names.end(), label) != k.names.end();
    });
    if (kind == kKinds.end()) return std::nullopt;
    if (hasColumn(*kind))
      return error(fmt::format("there are two columns of {}", kind->title),
                   "name only one of them so", quoted(title));
    std::string_view unit = quantityInfo(kind->quantity).internalUnit;
    if (open != std::string_view::npos) {
      const std::size_t close = title.find_last_of("])");
      const std::size_t end =
          close == std::string_view::npos || close < open ? title.size() : close;
      unit = trimmed(title.substr(open + 1, end - open - 1));
    }
    if (!isUnitOf(unit, kind->quantity)) return unknownUnit(*kind, unit, title);
    columns_.push_back({&*kind, position, toInternal(1, unit, kind->quantity)});
    return std::nullopt;
  }

  InputError unknownUnit(const ColumnKind& kind, std::string_view unit,
                         std::string_view title) const {
    const QuantityInfo& info = quantityInfo(kind.quantity);
    return error(fmt::format("{} is no unit of {}", quoted(unit), info.name),
                 fmt::format("use one of {}", fmt::join(info.units, ", ")), quoted(title));
  }

  InputError missingColumn(const ColumnKind& kind) const {
    Cells names;
    std::copy_if(kind.names.begin(), kind.names.end(), std::back_inserter(names),
                 [](std::string_view n) { return !n.empty(); });
    return error(fmt::format("there is no column of {} in {}", kind.title, quoted(lines_.line())),
                 fmt::format("name a column {}", fmt::join(names, " or ")));
  }

  bool hasColumn(const ColumnKind& kind) const {
    return std::any_of(columns_.begin(), columns_.end(),
                       [&](const Column& c) { return c.kind == &kind; });
  }

  /// The columns of a text without a line of names.
  MaybeError assumeHeader() {
    width_ = cells_.size();
    if (width_ < 2 || width_ > kKinds.size())
      return error(fmt::format("a line without column names has {} values", width_),
                   "give time, angle, speed, acceleration (2 to 4 values), or put a line of "
                   "column names first, such as \"time [s], angle [deg]\"");
    for (std::size_t i = 0; i < width_; ++i) columns_.push_back({&kKinds[i], i, 1});
    return std::nullopt;
  }

  MaybeError readRows(bool named) {
    if (named && !lines_.next()) return std::nullopt;
    do {
      split(lines_.line(), delimiter_, cells_);
      if (MaybeError e = readRow()) return e;
    } while (lines_.next());
    return std::nullopt;
  }

  MaybeError readRow() {
    if (cells_.size() > width_)
      return error(fmt::format("{} values where there are {} columns", cells_.size(), width_),
                   "give one value for each column; where the comma parts columns, decimals take "
                   "a point");
    for (const Column& column : columns_)
      if (MaybeError e = readCell(column)) return e;
    return checkTime();
  }

  MaybeError readCell(const Column& column) {
    const std::string_view cell =
        column.position < cells_.size() ? cells_[column.position] : std::string_view{};
    if (cell.empty())
      return error("the value is missing", "give a number in every row", column.kind->title);
    const std::optional<double> number = readNumber(cell, delimiter_);
    if (!number)
      return error(fmt::format("{} is no number", quoted(cell)), "give a number such as 0.25",
                   column.kind->title);
    const double value = *number * column.factor;
    if (!std::isfinite(value))
      return error(fmt::format("{} is not a finite number", quoted(cell)), "give a finite number",
                   column.kind->title);
    (table_.*(column.kind->values)).push_back(value);
    return std::nullopt;
  }

  MaybeError checkTime() {
    const std::size_t n = table_.time.size();
    if (n < 2 || table_.time[n - 1] > table_.time[n - 2]) return std::nullopt;
    return error(fmt::format("the time goes from {:.9g} s to {:.9g} s", table_.time[n - 2],
                             table_.time[n - 1]),
                 "let the time rise from each line to the next", "time");
  }

  /// Shifts time and angle to start at 0.
  MaybeError finish() {
    if (table_.time.size() < 2)
      return InputError{fmt::format("there are too few points: {}", table_.time.size()), name_,
                        "give at least 2 lines with numbers"};
    for (std::vector<double>* column : {&table_.time, &table_.angle}) {
      const double first = column->front();
      for (double& value : *column) value -= first;
    }
    return checkShifted();
  }

  /// Differences of huge values can overflow, those of close times can vanish.
  MaybeError checkShifted() const {
    for (std::size_t i = 1; i < table_.time.size(); ++i) {
      if (!std::isfinite(table_.time[i]) || !std::isfinite(table_.angle[i]))
        return InputError{fmt::format("point {} is too far from the first one", i + 1), name_,
                          "give times and angles of a usable size"};
      if (!(table_.time[i] > table_.time[i - 1]))
        return InputError{fmt::format("points {} and {} are too close in time", i, i + 1), name_,
                          "let the time start nearer to 0, or rise more from line to line"};
    }
    return std::nullopt;
  }

  LineReader lines_;
  std::string name_;
  char delimiter_ = ',';
  Cells cells_;
  std::size_t width_ = 0;  ///< columns of the text
  std::vector<Column> columns_;
  MotionTable table_;
};

}  // namespace

tl::expected<MotionTable, InputError> readMotionTable(std::string_view csv, std::string_view name) {
  return TableReader(csv, name).read();
}

}  // namespace jw

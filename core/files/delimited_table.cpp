#include "core/files/delimited_table.h"

#include <algorithm>
#include <cmath>
#include <optional>

#include <fmt/format.h>
#include <fmt/ranges.h>

#include "core/files/table_text.h"

namespace jw {
namespace {

using MaybeError = std::optional<InputError>;
using table_text::Cells;
using table_text::LineReader;
using table_text::quoted;
using table_text::smallLetters;
using table_text::trimmed;

/// A column of the text that is read.
struct Column {
  std::size_t kind;
  std::size_t position;  ///< among the cells of a line
  double factor;         ///< to the internal unit
  double offset;         ///< of the internal unit's zero
};

char findDelimiter(std::string_view line) {
  for (const char c : {'\t', ';'})
    if (line.find(c) != std::string_view::npos) return c;
  return ',';
}

/// Empty cells at the end are dropped: many programs write them.
void splitRow(std::string_view line, char delimiter, Cells& cells) {
  table_text::split(line, delimiter, cells);
  while (!cells.empty() && cells.back().empty()) cells.pop_back();
}

/// As table_text::readNumber; a comma is a decimal sign where it does not part columns.
std::optional<double> readNumber(std::string_view cell, char delimiter) {
  const bool comma = delimiter != ',' && cell.find(',') != std::string_view::npos;
  return table_text::readNumber(cell, comma ? ',' : '.');
}

/// Reads one text into a table.
class TableReader {
 public:
  TableReader(std::string_view text, std::string_view name, const TableForm& form)
      : lines_(text), name_(name), form_(form) {
    table_.columns.resize(form.columns.size());
  }

  tl::expected<DelimitedTable, InputError> read() {
    if (!lines_.next())
      return tl::unexpected(
          InputError{"the file holds no lines", name_, "give a line for each point"});
    delimiter_ = findDelimiter(lines_.line());
    splitRow(lines_.line(), delimiter_, cells_);
    const bool named = !cells_.empty() && !readNumber(cells_.front(), delimiter_);
    if (MaybeError e = named ? readHeader() : assumeHeader()) return tl::unexpected(*e);
    if (MaybeError e = readRows(named)) return tl::unexpected(*e);
    return std::move(table_);
  }

 private:
  const TableColumn& kindOf(std::size_t index) const { return form_.columns[index]; }

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
    for (std::size_t k = 0; k < form_.columns.size(); ++k)
      if (kindOf(k).needed && !hasColumn(k)) return missingColumn(kindOf(k));
    return std::nullopt;
  }

  /// One column's title: "time", "time [s]", "time (s)".
  MaybeError readTitle(std::string_view title, std::size_t position) {
    const std::size_t open = title.find_first_of("[(");
    const std::string label = smallLetters(trimmed(title.substr(0, open)));
    const auto kind =
        std::find_if(form_.columns.begin(), form_.columns.end(), [&](const TableColumn& k) {
          return !label.empty() &&
                 std::find(k.names.begin(), k.names.end(), label) != k.names.end();
        });
    if (kind == form_.columns.end()) return std::nullopt;
    const auto index = static_cast<std::size_t>(kind - form_.columns.begin());
    if (hasColumn(index))
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
    const double offset = toInternal(0, unit, kind->quantity);
    columns_.push_back({index, position, toInternal(1, unit, kind->quantity) - offset, offset});
    return std::nullopt;
  }

  InputError unknownUnit(const TableColumn& kind, std::string_view unit,
                         std::string_view title) const {
    const QuantityInfo& info = quantityInfo(kind.quantity);
    return error(fmt::format("{} is no unit of {}", quoted(unit), info.name),
                 fmt::format("use one of {}", fmt::join(info.units, ", ")), quoted(title));
  }

  InputError missingColumn(const TableColumn& kind) const {
    Cells names;
    std::copy_if(kind.names.begin(), kind.names.end(), std::back_inserter(names),
                 [](std::string_view n) { return !n.empty(); });
    return error(fmt::format("there is no column of {} in {}", kind.title, quoted(lines_.line())),
                 fmt::format("name a column {}", fmt::join(names, " or ")));
  }

  bool hasColumn(std::size_t kind) const {
    return std::any_of(columns_.begin(), columns_.end(),
                       [&](const Column& c) { return c.kind == kind; });
  }

  /// The columns of a text without a line of names.
  MaybeError assumeHeader() {
    width_ = cells_.size();
    const auto least = static_cast<std::size_t>(std::count_if(
        form_.columns.begin(), form_.columns.end(), [](const TableColumn& c) { return c.needed; }));
    if (width_ < least || width_ > form_.columns.size())
      return error(fmt::format("a line without column names has {} values", width_),
                   std::string(form_.withoutNames));
    for (std::size_t i = 0; i < width_; ++i) columns_.push_back({i, i, 1, 0});
    return std::nullopt;
  }

  MaybeError readRows(bool named) {
    if (named && !lines_.next()) return std::nullopt;
    do {
      splitRow(lines_.line(), delimiter_, cells_);
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
      return error("the value is missing", "give a number in every row", kindOf(column.kind).title);
    const std::optional<double> number = readNumber(cell, delimiter_);
    if (!number)
      return error(fmt::format("{} is no number", quoted(cell)), "give a number such as 0.25",
                   kindOf(column.kind).title);
    const double value = *number * column.factor + column.offset;
    if (!std::isfinite(value))
      return error(fmt::format("{} is not a finite number", quoted(cell)), "give a finite number",
                   kindOf(column.kind).title);
    table_.columns[column.kind].push_back(value);
    return std::nullopt;
  }

  MaybeError checkTime() {
    const std::vector<double>& time = table_.columns.front();
    const std::size_t n = time.size();
    if (n < 2 || time[n - 1] > time[n - 2]) return std::nullopt;
    return error(fmt::format("the time goes from {:.9g} s to {:.9g} s", time[n - 2], time[n - 1]),
                 "let the time rise from each line to the next", "time");
  }

  LineReader lines_;
  std::string name_;
  const TableForm& form_;
  char delimiter_ = ',';
  Cells cells_;
  std::size_t width_ = 0;  ///< columns of the text
  std::vector<Column> columns_;
  DelimitedTable table_;
};

}  // namespace

tl::expected<DelimitedTable, InputError> readDelimitedTable(std::string_view text,
                                                            std::string_view name,
                                                            const TableForm& form) {
  return TableReader(text, name, form).read();
}

}  // namespace jw

#include "core/files/measured_log.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>
#include <optional>

#include <fmt/format.h>
#include <fmt/ranges.h>

#include "core/files/log_mending.h"
#include "core/files/log_titles.h"
#include "core/files/table_text.h"

namespace jw {
namespace {

using MaybeError = std::optional<InputError>;
using table_text::quoted;

constexpr double kNoNumber = std::numeric_limits<double>::quiet_NaN();

std::vector<double>& columnOf(MeasuredLog& log, LogRole role) {
  switch (role) {
    case LogRole::Time: return log.time;
    case LogRole::Position: return log.position;
    case LogRole::Speed: return log.speed;
    case LogRole::Acceleration: return log.acceleration;
    case LogRole::Torque: return log.torque;
    default: return log.current;
  }
}

/// Rows may do without these.
bool mayBeOpen(LogRole role) { return role == LogRole::Torque || role == LogRole::Current; }

std::string columnText(const LogColumns& columns, std::size_t index) {
  const std::string& title = columns.columns[index].title;
  return fmt::format("column {}{}", index + 1, title.empty() ? "" : " " + quoted(title));
}

/// A column of the text that is read.
struct Used {
  std::size_t position;  ///< among the cells of a row
  LogRole role;
  double scale;  ///< to the internal unit, sign and factor included
  std::vector<double>* values;
};

class LogReader {
 public:
  LogReader(const LogSource& source, const LogColumns& columns, const LogReading& reading)
      : source_(source),
        columns_(columns),
        layout_(columns.layout),
        reading_(reading),
        lines_(source.text) {
    for (std::size_t i = 0; i < columns.columns.size(); ++i) {
      const LogColumn& c = columns.columns[i];
      if (c.role == LogRole::Unused) continue;
      used_.push_back({i, c.role, c.sign * c.factor * toInternal(1, c.unit, quantityOf(c.role)),
                       &columnOf(raw_.log, c.role)});
      if (c.role == LogRole::Time) time_ = used_.size() - 1;
      if (c.sign < 0) noteSign(i);
    }
    row_.resize(used_.size());
  }

  tl::expected<MeasuredLog, InputError> read(const LogProgress& progress) {
    constexpr std::size_t kPerReport = 16'384;  // lines
    for (std::size_t count = 1; lines_.next(); ++count) {
      if (progress && count % kPerReport == 0 && !progress(shareRead()))
        return tl::unexpected(error("the reading was stopped", "open the log again"));
      if (lines_.number() < layout_.firstRowLine) continue;
      if (raw_.lines.empty()) reserve();
      if (MaybeError e = readRow()) return tl::unexpected(*e);
    }
    if (raw_.lines.size() < kFewestLogRows) return tl::unexpected(tooFew());
    noteEmptyCells();
    noteEnd();
    if (MaybeError e = mendLog(raw_, reading_, source_.name)) return tl::unexpected(*e);
    return std::move(raw_.log);
  }

 private:
  InputError error(std::string what, std::string remedy, std::size_t used = kNone) const {
    std::string where = fmt::format("{}, line {}", source_.name, lines_.number());
    if (used != kNone) where += ", " + columnText(columns_, used_[used].position);
    return {std::move(what), std::move(where), std::move(remedy)};
  }

  double shareRead() const {
    const auto read = static_cast<double>(lines_.line().data() - source_.text.data());
    return read / static_cast<double>(source_.text.size());
  }

  bool inLastLine() const { return lines_.atEnd() && !lines_.ended(); }

  std::string cutShort() const {
    return inLastLine() ? "; it is the last line and has no end: the file may be cut short" : "";
  }

  void noteSign(std::size_t column) {
    LogMend mend{LogMendKind::SignTurned, {}, 1, {}, {}};
    mend.text = fmt::format("the sign of the {} is turned ({})",
                            nameOf(columns_.columns[column].role), columnText(columns_, column));
    raw_.log.mends.push_back(std::move(mend));
  }

  void reserve() {
    const std::size_t rows =
        std::min(source_.text.size() / (lines_.line().size() + 1) * 11 / 10 + 16, kMostLogRows);
    raw_.lines.reserve(rows);
    for (const Used& u : used_) u.values->reserve(rows);
  }

  MaybeError readRow() {
    table_text::split(lines_.line(), layout_.delimiter, cells_);
    if (cells_.size() != columns_.columns.size())
      if (MaybeError e = checkWidth()) return e;
    std::size_t empty = kNone;
    for (std::size_t k = 0; k < used_.size(); ++k) {
      if (MaybeError e = readCell(k)) return e;
      if (std::isnan(row_[k]) && !mayBeOpen(used_[k].role)) empty = std::min(empty, k);
      if (std::isnan(row_[k]) && mayBeOpen(used_[k].role)) addPlace(open_, lines_.number(), rows());
    }
    if (empty != kNone) return leaveOut(empty);
    if (MaybeError e = checkTime()) return e;
    if (rows() == kMostLogRows)
      return error(fmt::format("there are more than {} rows", kMostLogRows),
                   "cut out the stretch that matters");
    for (std::size_t k = 0; k < used_.size(); ++k) used_[k].values->push_back(row_[k]);
    raw_.lines.push_back(static_cast<std::uint32_t>(lines_.number()));
    return std::nullopt;
  }

  MaybeError checkWidth() const {
    const std::size_t width = columns_.columns.size();
    if (cells_.size() == width + 1 && cells_.back().empty()) return std::nullopt;
    const bool commas = cells_.size() > width && layout_.delimiter == ',';
    return error(fmt::format("{} values where there are {} columns{}", cells_.size(), width,
                             cells_.size() < width ? cutShort() : ""),
                 commas ? "give one value for each column; where the comma parts columns, decimals "
                          "take a point"
                        : "give one value for each column");
  }

  MaybeError readCell(std::size_t k) {
    const std::string_view cell = cells_[used_[k].position];
    const std::optional<double> number = table_text::readNumber(cell, layout_.decimalSign);
    if (!number && !cell.empty()) return noNumber(k, cell);
    row_[k] = number ? *number * used_[k].scale : kNoNumber;
    if (std::isinf(row_[k]))
      return error(fmt::format("{} is not a finite number", quoted(cell)), "give a finite number",
                   k);
    if (used_[k].role == LogRole::Position && std::abs(row_[k]) > kLargestLogPosition)
      return error(fmt::format("the position is {:.4g} rad", row_[k]),
                   fmt::format("give positions within ±{:g} rad: check the column's unit",
                               kLargestLogPosition),
                   k);
    return std::nullopt;
  }

  InputError noNumber(std::size_t k, std::string_view cell) const {
    const bool comma = layout_.decimalSign == ',';
    if (table_text::readNumber(cell, comma ? '.' : ','))
      return error(fmt::format("{} has a decimal {}, the rows before a {}", quoted(cell),
                               comma ? "point" : "comma", comma ? "comma" : "point"),
                   "use one decimal sign in all rows", k);
    return error(fmt::format("{} is no number{}", quoted(cell), cutShort()),
                 "give a number such as 0.25, or leave the cell empty", k);
  }

  MaybeError leaveOut(std::size_t k) {
    if (reading_.emptyCells == EmptyCells::Refuse)
      return error("the value is missing", "give a number in every row", k);
    addPlace(leftOut_, lines_.number(), rows());
    leftOutRole_ = used_[k].role;
    return std::nullopt;
  }

  MaybeError checkTime() const {
    const double t = row_[time_];
    const std::vector<double>& time = raw_.log.time;
    if (time.empty()) return std::nullopt;
    if (t < time.back())
      return error(fmt::format("the time runs backwards from {:.9g} s to {:.9g} s", time.back(), t),
                   "sort the rows by time, or cut the log where it begins anew", time_);
    if (t - time.front() > kLongestLog)
      return error(fmt::format("the log lasts {:.4g} s up to here", t - time.front()),
                   "check the unit of the time", time_);
    return std::nullopt;
  }

  InputError tooFew() const {
    return {fmt::format("there are too few rows: {}", rows()), std::string(source_.name),
            fmt::format("give at least {} rows with time and position", kFewestLogRows)};
  }

  void noteEmptyCells() {
    if (leftOut_.count > 0) {
      leftOut_.text = fmt::format("{} of {} rows left out: a cell is empty or NaN, last the {}",
                                  leftOut_.count, leftOut_.count + rows(), nameOf(leftOutRole_));
      raw_.log.mends.push_back(leftOut_);
    }
    if (open_.count == 0) return;
    open_.text =
        fmt::format("{} values of torque or current are empty or NaN: left open", open_.count);
    raw_.log.mends.push_back(open_);
  }

  void noteEnd() {
    if (!inLastLine()) return;
    LogMend mend{LogMendKind::EndMissing, {}, 0, {}, {}};
    addPlace(mend, lines_.number(), rows() - 1);
    mend.text = "the last line has no end: if the file was cut short, its last number may be too";
    raw_.log.mends.push_back(std::move(mend));
  }

  std::size_t rows() const { return raw_.lines.size(); }

  static constexpr std::size_t kNone = std::numeric_limits<std::size_t>::max();
  const LogSource& source_;
  const LogColumns& columns_;
  const LogLayout& layout_;
  const LogReading& reading_;
  table_text::LineReader lines_;
  table_text::Cells cells_;
  std::vector<Used> used_;
  std::size_t time_ = 0;
  std::vector<double> row_;  ///< values of the columns used
  RawLog raw_;
  LogMend leftOut_{LogMendKind::EmptyCell, {}, 0, {}, {}};
  LogMend open_{LogMendKind::EmptyCell, {}, 0, {}, {}};
  LogRole leftOutRole_ = LogRole::Unused;
};

InputError columnError(const LogSource& source, const std::string& column, std::string what,
                       std::string remedy) {
  return {std::move(what),
          column.empty() ? std::string(source.name) : fmt::format("{}, {}", source.name, column),
          std::move(remedy)};
}

}  // namespace

tl::expected<void, InputError> checkColumns(const LogSource& source, const LogColumns& columns) {
  if (columns.columns.empty() || columns.columns.size() != columns.layout.columns())
    throw std::logic_error("a log is read with the columns of its own layout");
  std::array<int, 7> count{};
  for (std::size_t i = 0; i < columns.columns.size(); ++i) {
    const LogColumn& c = columns.columns[i];
    if (c.role == LogRole::Unused) continue;
    const QuantityInfo& info = quantityInfo(quantityOf(c.role));
    if (++count[static_cast<std::size_t>(c.role)] > 1)
      return tl::unexpected(columnError(source, columnText(columns, i),
                                        fmt::format("there are two columns of {}", nameOf(c.role)),
                                        "use only one of them so"));
    if (!isUnitOf(c.unit, info.quantity))
      return tl::unexpected(
          columnError(source, columnText(columns, i),
                      fmt::format("{} is no unit of {}", quoted(c.unit), info.name),
                      fmt::format("use one of {}", fmt::join(info.units, ", "))));
    if (!std::isfinite(c.factor) || c.factor == 0 || (c.sign != 1 && c.sign != -1))
      return tl::unexpected(columnError(source, columnText(columns, i),
                                        fmt::format("the factor is {:g}", c.sign * c.factor),
                                        "give a finite factor other than 0"));
  }
  for (const LogRole role : {LogRole::Time, LogRole::Position})
    if (count[static_cast<std::size_t>(role)] == 0)
      return tl::unexpected(
          columnError(source, {}, fmt::format("no column is the {}", nameOf(role)),
                      fmt::format("say which column holds the {}", nameOf(role))));
  return {};
}

tl::expected<MeasuredLog, InputError> readLog(const LogSource& source, const LogColumns& columns,
                                              const LogReading& reading,
                                              const LogProgress& progress) {
  if (auto valid = checkColumns(source, columns); !valid) return tl::unexpected(valid.error());
  if (auto error = sourceError(source)) return tl::unexpected(*error);
  return LogReader(source, columns, reading).read(progress);
}

}  // namespace jw

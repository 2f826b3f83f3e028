#include "core/files/log_sample.h"

#include <algorithm>
#include <cmath>
#include <limits>

#include "core/files/table_text.h"

namespace jw {
namespace {

constexpr std::size_t kStretches = 8;
constexpr std::size_t kRows = 500;
constexpr std::size_t kSpan = 20;  ///< rows over which changes are compared

/// Where the text of the rows begins.
std::size_t rowsBegin(std::string_view text, std::size_t line) {
  std::size_t at = 0;
  for (std::size_t k = 1; k < line && at < text.size(); ++k)
    at = std::min(text.find('\n', at), text.size() - 1) + 1;
  return at;
}

/// Adds rows from the beginning of `text`.
void addStretch(LogSample& sample, std::string_view text, const LogLayout& layout) {
  table_text::LineReader reader(text);
  table_text::Cells cells;
  sample.starts.push_back(sample.rows());
  for (std::size_t row = 0; row < kRows && reader.next(); ++row) {
    table_text::split(reader.line(), layout.delimiter, cells);
    for (std::size_t c = 0; c < sample.columns.size(); ++c) {
      const auto number =
          c < cells.size() ? table_text::readNumber(cells[c], layout.decimalSign) : std::nullopt;
      sample.columns[c].push_back(number.value_or(std::numeric_limits<double>::quiet_NaN()));
    }
  }
}

/// Sums for a line through the origin.
struct Sums {
  double xx = 0, xy = 0, yy = 0;
  void add(double x, double y) {
    if (!std::isfinite(x) || !std::isfinite(y)) return;
    xx += x * x;
    xy += x * y;
    yy += y * y;
  }
};

}  // namespace

LogSample sampleLog(const LogSource& source, const LogLayout& layout) {
  LogSample sample;
  sample.columns.resize(layout.columns());
  const std::string_view rows = source.text.substr(rowsBegin(source.text, layout.firstRowLine));
  std::size_t done = 0;
  for (std::size_t k = 0; k < kStretches; ++k) {
    std::size_t begin = rows.size() / kStretches * k;
    if (k > 0) begin = std::min(rows.find('\n', begin), rows.size() - 1) + 1;
    begin = std::max(begin, done);
    if (begin >= rows.size()) break;
    std::size_t end = begin;
    for (std::size_t row = 0; row < kRows && end < rows.size(); ++row)
      end = std::min(rows.find('\n', end), rows.size() - 1) + 1;
    addStretch(sample, rows.substr(begin, end - begin), layout);
    done = end;
  }
  return sample;
}

LogRelation relate(const LogSample& sample, std::size_t time, std::size_t position,
                   std::size_t speed) {
  const auto& t = sample.columns[time];
  const auto& x = sample.columns[position];
  const auto& v = sample.columns[speed];
  Sums sums;
  for (std::size_t k = 0; k < sample.starts.size(); ++k) {
    const std::size_t end = k + 1 < sample.starts.size() ? sample.starts[k + 1] : sample.rows();
    const std::size_t span = std::min(kSpan, (end - sample.starts[k]) / 4 + 1);
    for (std::size_t i = sample.starts[k]; i + span < end; i += span) {
      double area = 0;
      for (std::size_t j = i; j < i + span; ++j) area += (v[j] + v[j + 1]) / 2 * (t[j + 1] - t[j]);
      sums.add(area, x[i + span] - x[i]);
    }
  }
  if (!(sums.xx > 0 && sums.yy > 0)) return {};
  return {sums.xy / sums.xx, sums.xy / std::sqrt(sums.xx * sums.yy)};
}

bool neverFalls(const LogSample& sample, std::size_t column) {
  const auto& values = sample.columns[column];
  if (values.size() < 2 || !std::isfinite(values.front())) return false;
  for (std::size_t i = 1; i < values.size(); ++i)
    if (!(values[i] >= values[i - 1])) return false;
  return values.back() > values.front();
}

}  // namespace jw

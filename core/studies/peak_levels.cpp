#include "core/studies/peak_levels.h"

#include <algorithm>
#include <cassert>
#include <cmath>
#include <limits>

namespace jw {
namespace {

using Range = PeakLevels::Range;

constexpr std::size_t kFactor = 16;
constexpr double kNone = std::numeric_limits<double>::quiet_NaN();

/// fmin and fmax pass over NaN.
Range joined(const Range& a, const Range& b) {
  return {std::fmin(a.low, b.low), std::fmax(a.high, b.high)};
}

}  // namespace

PeakLevels::PeakLevels(std::span<const double> x, std::span<const double> y) : x_(x), y_(y) {
  assert(x.size() == y.size());
  std::vector<Range> level((y.size() + kFactor - 1) / kFactor, Range{kNone, kNone});
  for (std::size_t i = 0; i < y.size(); ++i)
    level[i / kFactor] = joined(level[i / kFactor], {y[i], y[i]});
  while (level.size() > kFactor) {
    std::vector<Range> above((level.size() + kFactor - 1) / kFactor, Range{kNone, kNone});
    for (std::size_t i = 0; i < level.size(); ++i)
      above[i / kFactor] = joined(above[i / kFactor], level[i]);
    levels_.push_back(std::move(level));
    level = std::move(above);
  }
  levels_.push_back(std::move(level));
}

PeakLevels::Range PeakLevels::range(std::size_t first, std::size_t last) const {
  Range result{kNone, kNone};
  const auto point = [&](std::size_t i) { result = joined(result, {y_[i], y_[i]}); };
  while (first < last && first % kFactor != 0) point(first++);
  while (last > first && last % kFactor != 0) point(--last);
  first /= kFactor;
  last /= kFactor;
  for (std::size_t k = 0; first < last; ++k) {
    const std::vector<Range>& level = levels_[k];
    const bool top = k + 1 == levels_.size();
    while (first < last && (top || first % kFactor != 0)) result = joined(result, level[first++]);
    while (last > first && last % kFactor != 0) result = joined(result, level[--last]);
    first /= kFactor;
    last /= kFactor;
  }
  return result;
}

std::vector<PeakColumn> PeakLevels::columns(double from, double to, std::size_t pixels) const {
  std::vector<PeakColumn> columns;
  if (!(to > from) || pixels == 0) return columns;
  columns.reserve(pixels);
  const double width = (to - from) / static_cast<double>(pixels);
  auto begin = std::lower_bound(x_.begin(), x_.end(), from);
  for (std::size_t p = 0; p < pixels && begin != x_.end(); ++p) {
    const double edge = p + 1 == pixels ? to : from + width * static_cast<double>(p + 1);
    const auto end = p + 1 == pixels ? std::upper_bound(begin, x_.end(), edge)
                                     : std::lower_bound(begin, x_.end(), edge);
    const auto first = static_cast<std::size_t>(begin - x_.begin());
    const auto last = static_cast<std::size_t>(end - x_.begin());
    begin = end;
    const Range found = range(first, last);
    if (std::isnan(found.low)) continue;
    columns.push_back({found.low, found.high, y_[first], y_[last - 1], edge - width / 2});
  }
  return columns;
}

}  // namespace jw

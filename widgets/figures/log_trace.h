#pragma once

#include <memory>
#include <span>
#include <vector>

#include <QPointF>

#include "core/studies/peak_levels.h"

namespace jw {

/// A curve of a measured log, prepared for drawing at any zoom with nothing lost from its peaks.
class LogTrace {
 public:
  /// `owner` keeps the spans alive; they are in SI units and of equal size, time rises.
  LogTrace(std::shared_ptr<const void> owner, std::span<const double> time,
           std::span<const double> values);

  /// The points to be joined for a picture of `from` to `to` [s], `pixels` wide: each row where
  /// there are fewer rows than twice the pixels, with the rows beside the stretch, else the first,
  /// lowest, highest and last value of each column of pixels. Values that are NaN and pauses of
  /// more than `longestStep` [s] give a point of NaN, at which the curve is broken.
  std::vector<QPointF> stroke(double from, double to, int pixels, double longestStep) const;

  /// Least and greatest value between `from` and `to` [s]; NaN if there is none.
  PeakLevels::Range range(double from, double to) const;
  /// The value at `time` [s], linear between rows; NaN outside.
  double at(double time) const;
  /// Whether a picture of this stretch has more rows than it can show one by one.
  bool isDense(double from, double to, int pixels) const;

  std::span<const double> time() const { return m_time; }
  std::span<const double> values() const { return m_values; }

 private:
  struct Rows {
    std::size_t first, last;  // one past the last
  };
  Rows rowsBetween(double from, double to) const;

  std::shared_ptr<const void> m_owner;
  std::span<const double> m_time, m_values;
  PeakLevels m_levels;
};

using LogTracePtr = std::shared_ptr<const LogTrace>;

}  // namespace jw

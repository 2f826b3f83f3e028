#pragma once

#include <cstddef>
#include <span>
#include <vector>

namespace jw {

/// What a curve does within one column of pixels. Drawn as a stroke from low to high, joined to its
/// neighbours by first and last, it looks as if every point had been drawn.
struct PeakColumn {
  double low = 0, high = 0;    ///< least and greatest value
  double first = 0, last = 0;  ///< of the points in the column
  double x = 0;                ///< middle of the column
};

/// A long curve prepared for drawing at any zoom without losing a peak: lowest and highest of every
/// 16 points, of every 16 of these, and so on. Building is O(n) and takes n/7.5 numbers; a drawing
/// of p pixels O(p log n). Points that are NaN do not count. The curve itself must outlive this.
class PeakLevels {
 public:
  /// `x` must not fall; equal sizes.
  PeakLevels(std::span<const double> x, std::span<const double> y);

  /// The columns of a drawing of x from `from` to `to`, `pixels` wide; columns without points are
  /// left out.
  std::vector<PeakColumn> columns(double from, double to, std::size_t pixels) const;

  /// Least and greatest value of the points `first` to before `last`; NaN if there are none.
  struct Range {
    double low, high;
  };
  Range range(std::size_t first, std::size_t last) const;

 private:
  std::span<const double> x_, y_;
  std::vector<std::vector<Range>> levels_;
};

}  // namespace jw

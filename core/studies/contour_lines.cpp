#include "core/studies/contour_lines.h"

#include <array>
#include <cmath>
#include <cstdint>
#include <iterator>
#include <unordered_map>
#include <utility>

namespace jw {
namespace {

using Eigen::Index;
using Eigen::Vector2d;

/// A side of the grid that a line crosses: each has its own number.
using Side = std::int64_t;

/// The pieces of line through all cells, joined by the sides on which they meet.
class Contour {
 public:
  Contour(const Eigen::ArrayXd& x, const Eigen::ArrayXd& y, const Eigen::ArrayXXd& values,
          double level)
      : x_(x), y_(y), values_(values), level_(level) {}

  std::vector<ContourLine> trace() {
    for (Index row = 0; row + 1 < y_.size(); ++row)
      for (Index column = 0; column + 1 < x_.size(); ++column) addCell(row, column);
    std::vector<ContourLine> lines;
    // Lines with ends first; what is left then is closed.
    for (const bool open : {true, false})
      for (const Side side : order_)
        if (neighbours_[side].size() == 1 || (!open && !neighbours_[side].empty()))
          lines.push_back(follow(side));
    return lines;
  }

 private:
  // Sides of a cell in turn: bottom, right, top, left.
  std::array<Side, 4> sidesOf(Index row, Index column) const {
    const Side width = x_.size();
    const auto along = [&](Index r, Index c) { return 2 * (r * width + c); };
    return {along(row, column), along(row, column + 1) + 1, along(row + 1, column),
            along(row, column) + 1};
  }

  bool isAbove(Index row, Index column) const { return values_(row, column) >= level_; }

  void addCell(Index row, Index column) {
    const double mean = values_.block<2, 2>(row, column).mean();
    if (std::isnan(mean)) return;
    const std::array<bool, 4> above{isAbove(row, column), isAbove(row, column + 1),
                                    isAbove(row + 1, column + 1), isAbove(row + 1, column)};
    const std::array<Side, 4> sides = sidesOf(row, column);
    std::vector<Side> crossed;  // side k lies between corners k and k + 1
    for (std::size_t k = 0; k < 4; ++k)
      if (above[k] != above[(k + 1) % 4]) crossed.push_back(sides[k]);
    if (crossed.size() == 2) join(crossed[0], crossed[1]);
    if (crossed.size() != 4) return;
    const bool turn = (mean >= level_) == above[0];
    join(crossed[0], crossed[turn ? 1 : 3]);
    join(crossed[2], crossed[turn ? 3 : 1]);
  }

  void join(Side a, Side b) {
    for (const Side side : {a, b})
      if (neighbours_[side].empty()) order_.push_back(side);
    neighbours_[a].push_back(b);
    neighbours_[b].push_back(a);
  }

  Vector2d crossing(Side side) const {
    const Index row = side / 2 / x_.size();
    const Index column = side / 2 % x_.size();
    const bool upright = side % 2 == 1;
    const Index nextRow = row + (upright ? 1 : 0);
    const Index nextColumn = column + (upright ? 0 : 1);
    const double from = values_(row, column);
    const double share = (level_ - from) / (values_(nextRow, nextColumn) - from);
    return {x_[column] + share * (x_[nextColumn] - x_[column]),
            y_[row] + share * (y_[nextRow] - y_[row])};
  }

  // Takes one line out of the net.
  ContourLine follow(Side start) {
    ContourLine line;
    for (Side at = start;;) {
      line.points.push_back(crossing(at));
      if (neighbours_[at].empty()) return line;
      const Side next = neighbours_[at].back();
      neighbours_[at].pop_back();
      std::erase(neighbours_[next], at);
      at = next;
    }
  }

  const Eigen::ArrayXd& x_;
  const Eigen::ArrayXd& y_;
  const Eigen::ArrayXXd& values_;
  double level_;
  std::unordered_map<Side, std::vector<Side>> neighbours_;
  std::vector<Side> order_;  ///< in which sides were met: the same lines each time
};

}  // namespace

std::vector<ContourLine> contourLines(const Eigen::ArrayXd& x, const Eigen::ArrayXd& y,
                                      const Eigen::ArrayXXd& values, double level) {
  return Contour(x, y, values, level).trace();
}

}  // namespace jw

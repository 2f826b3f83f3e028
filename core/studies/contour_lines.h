#pragma once

#include <vector>

#include <Eigen/Core>

namespace jw {

/// A line of equal value; closed if its last point is its first.
struct ContourLine {
  std::vector<Eigen::Vector2d> points;
};

/// The lines on which `values` is `level`. `values` has a row for each of `y` and a column for each
/// of `x`, both rising; cells with a corner that is NaN are left out. Marching squares: linear
/// along the sides of a cell, a saddle is parted by the mean of its corners (Lorensen and Cline
/// 1987 in two dimensions; from memory). Exact for a plane; off by the curvature over a cell
/// otherwise.
std::vector<ContourLine> contourLines(const Eigen::ArrayXd& x, const Eigen::ArrayXd& y,
                                      const Eigen::ArrayXXd& values, double level);

}  // namespace jw

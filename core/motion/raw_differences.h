#pragma once

#include <vector>

namespace jw {

/// Slope at every point of a measured curve, with no smoothing at all [unit of `values` over s]: of
/// the parabola through the point and its neighbours, at the ends of the first and last three.
/// `time` [s] rises; needs 3 points. O(n).
std::vector<double> rawSlope(const std::vector<double>& time, const std::vector<double>& values);

/// Curvature of the same parabola [unit of `values` over s²].
std::vector<double> rawCurvature(const std::vector<double>& time,
                                 const std::vector<double>& values);

}  // namespace jw

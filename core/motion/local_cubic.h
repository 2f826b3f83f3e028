#pragma once

#include <span>
#include <vector>

namespace jw {

/// A curve through noisy points, from a local fit at each of them.
struct SmoothedCurve {
  std::vector<double> value;   ///< [unit of y]
  std::vector<double> first;   ///< [unit of y per unit of x]
  std::vector<double> second;  ///< [unit of y per unit of x²]
};

/// Value, first and second derivative at every point by a least-squares cubic over the points
/// within half a `window` [unit of x] on either side: the fit of Savitzky & Golay, Anal. Chem. 36
/// (1964) 1627, with unequal steps allowed. Reproduces a cubic. Near the ends the window stays
/// whole and is read off its middle. A window with fewer than 5 points takes in the nearest ones.
/// Where the points are too bunched for a cubic the degree is lowered.
/// Needs x rising, at least 5 points, one y for each x, window > 0. O(n) whatever the window.
SmoothedCurve smoothByLocalCubic(std::span<const double> x, std::span<const double> y,
                                 double window);

}  // namespace jw

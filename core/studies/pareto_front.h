#pragma once

#include <cstddef>
#include <vector>

namespace jw {

/// Indices of the points that no other point beats in both figures at once, rising in the first.
/// Small is good; `moreIsBetter` turns a figure round. Points with a figure that is NaN are left
/// out; of equal points all are kept. O(n log n).
struct ParetoAxis {
  std::vector<double> value;
  bool moreIsBetter = false;
};
std::vector<std::size_t> paretoFront(const ParetoAxis& first, const ParetoAxis& second);

}  // namespace jw

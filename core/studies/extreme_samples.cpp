#include "core/studies/extreme_samples.h"

#include <algorithm>
#include <array>

namespace jw {
namespace {

using Eigen::ArrayXd;
using Eigen::Index;

/// The directions, those with fewest values in them first.
std::vector<std::array<double, 3>> directions() {
  std::vector<std::array<double, 3>> all;
  for (int parts = 1; parts <= 3; ++parts) {
    for (int code = 0; code < 27; ++code) {
      const std::array<double, 3> d{code % 3 - 1.0, code / 3 % 3 - 1.0, code / 9 - 1.0};
      if (std::count(d.begin(), d.end(), 0.0) == 3 - parts) all.push_back(d);
    }
  }
  return all;
}

double scale(const ArrayXd& values) {
  const double size = values.abs().maxCoeff();
  return size > 0 ? 1 / size : 0;
}

}  // namespace

std::vector<Index> extremeSamples(const ArrayXd& a, const ArrayXd& b, const ArrayXd& c,
                                  std::size_t most) {
  static const std::vector<std::array<double, 3>> kDirections = directions();
  std::vector<Index> found;
  const double sa = scale(a), sb = scale(b), sc = scale(c);
  for (const auto& d : kDirections) {
    if (found.size() == most) break;
    Index at = 0;
    (d[0] * sa * a + d[1] * sb * b + d[2] * sc * c).maxCoeff(&at);
    if (std::find(found.begin(), found.end(), at) == found.end()) found.push_back(at);
  }
  std::sort(found.begin(), found.end());
  return found;
}

}  // namespace jw

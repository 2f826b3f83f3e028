#include "core/studies/random_points.h"

#include <cmath>
#include <random>
#include <vector>

#include <boost/math/distributions/normal.hpp>
#include <boost/random/sobol.hpp>

namespace jw {
namespace {

/// From -1 to 1 about 0.
double triangular(double u) { return u < 0.5 ? std::sqrt(2 * u) - 1 : 1 - std::sqrt(2 * (1 - u)); }

}  // namespace

Eigen::ArrayXXd unitPoints(std::size_t count, std::size_t dimensions, std::uint64_t seed) {
  Eigen::ArrayXXd points(static_cast<Eigen::Index>(count), static_cast<Eigen::Index>(dimensions));
  if (dimensions == 0) return points;
  std::mt19937_64 random(seed);
  std::vector<std::uint64_t> shift(dimensions);
  for (std::uint64_t& word : shift) word = random();
  boost::random::sobol sequence(dimensions);
  for (Eigen::Index i = 0; i < points.rows(); ++i) {
    for (Eigen::Index j = 0; j < points.cols(); ++j) {
      const std::uint64_t word = sequence() ^ shift[static_cast<std::size_t>(j)];
      points(i, j) = (static_cast<double>(word >> 11) + 0.5) * 0x1p-53;
    }
  }
  return points;
}

double bandValue(const Band& band, double nominal, double u) {
  const double half = band.halfWidth(nominal);
  switch (band.shape) {
    case BandShape::Uniform: return nominal + half * (2 * u - 1);
    case BandShape::Triangular: return nominal + half * triangular(u);
    case BandShape::Normal:
      return nominal + half / 2 * boost::math::quantile(boost::math::normal(), u);
  }
  throw std::logic_error("unknown shape of a band");
}

}  // namespace jw

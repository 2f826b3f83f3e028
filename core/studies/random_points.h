#pragma once

#include <cstddef>
#include <cstdint>

#include <Eigen/Core>

#include "core/model/band.h"

namespace jw {

/// Points of the unit cube, a row each, 0 < u < 1: Sobol's sequence (Joe and Kuo's directions, of
/// Boost.Random) shifted digit by digit by a random word for each dimension, so that each point is
/// uniform and the seed gives another set (Owen 1995, from memory). The same seed gives the same
/// points everywhere. `dimensions` up to 3667.
Eigen::ArrayXXd unitPoints(std::size_t count, std::size_t dimensions, std::uint64_t seed);

/// The value at the share `u` of a band's distribution about `nominal`, internal unit.
double bandValue(const Band& band, double nominal, double u);

}  // namespace jw

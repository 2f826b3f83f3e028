#pragma once

#include <cmath>
#include <cstdint>
#include <limits>

#include <boost/math/tools/toms748_solve.hpp>

namespace jw {

/// Root of a continuous f between a and b, whose values there must differ in sign (or be 0), to
/// about 48 bits. Alefeld, Potra and Shi's algorithm 748 as Boost.Math has it. Where rounding
/// leaves both ends on one side, the end nearer to 0; NaN if f is NaN at an end.
template <class F>
double bracketedRoot(const F& f, double a, double b) {
  const double fa = f(a);
  const double fb = f(b);
  if (fa == 0) return a;
  if (fb == 0) return b;
  if (std::isnan(fa) || std::isnan(fb)) return std::numeric_limits<double>::quiet_NaN();
  if ((fa > 0) == (fb > 0)) return std::abs(fa) < std::abs(fb) ? a : b;
  std::uintmax_t iterations = 100;
  const auto [low, high] = boost::math::tools::toms748_solve(
      f, a, b, fa, fb, boost::math::tools::eps_tolerance<double>(48), iterations);
  return (low + high) / 2;
}

}  // namespace jw

#pragma once

#include <cstdint>

#include <boost/math/tools/toms748_solve.hpp>

namespace jw {

/// Root of a continuous f between a and b, whose values there must differ in sign (or be 0), to
/// about 48 bits. Alefeld, Potra and Shi's algorithm 748 as Boost.Math has it.
template <class F>
double bracketedRoot(const F& f, double a, double b) {
  const double fa = f(a);
  const double fb = f(b);
  if (fa == 0) return a;
  if (fb == 0) return b;
  std::uintmax_t iterations = 100;
  const auto [low, high] = boost::math::tools::toms748_solve(
      f, a, b, fa, fb, boost::math::tools::eps_tolerance<double>(48), iterations);
  return (low + high) / 2;
}

}  // namespace jw

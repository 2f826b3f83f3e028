#pragma once

namespace jw {

/// A fitted value and its standard uncertainty (JCGM 100, type A, linearized at the solution).
struct FittedValue {
  double value = 0;
  double uncertainty = 0;
};

}  // namespace jw

#include "core/studies/textbook_ratio.h"

#include <cmath>

#include "core/model/unset.h"

namespace jw {

double inertiaMatch(double loadInertia, double motorInertia) {
  return inertiaMatch(loadInertia, motorInertia, 0, 1);
}

double inertiaMatch(double loadInertia, double motorInertia, double loadTorque,
                    double acceleration) {
  const double square = (loadInertia + loadTorque / acceleration) / motorInertia;
  return motorInertia > 0 && square > 0 ? std::sqrt(square) : kUnset;
}

}  // namespace jw

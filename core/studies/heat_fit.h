#pragma once

#include <Eigen/Core>
#include <tl/expected.hpp>

#include "core/model/heat_curve.h"
#include "core/quantity/quantity.h"
#include "core/studies/fitted_value.h"

namespace jw {

struct HeatFit {
  FittedValue windingToHousing;  ///< R12 [K/W]
  FittedValue housingToAmbient;  ///< R2 [K/W]
  FittedValue windingCapacity;   ///< C1 [J/K]
  FittedValue housingCapacity;   ///< C2 [J/K]
  Eigen::ArrayXd winding;        ///< [°C] of the fitted network, at the curve's times
  Eigen::ArrayXd residual;       ///< [K] measured less fitted winding temperature
  double residualRms = 0;        ///< [K]
};

/// Least squares over the logarithms of the four values (Levenberg-Marquardt, Eigen's port of
/// MINPACK). The first row is taken as the start; an unmeasured housing starts at the winding's
/// temperature if the curve starts cold, else at rest with the first power. Fails, saying which row
/// or what is lacking, for too few rows, times that do not rise, values that are not finite, no
/// power and no fall, or a curve too short to tell the four values apart.
tl::expected<HeatFit, InputError> fitHeat(const HeatCurve& curve);

}  // namespace jw

#pragma once

#include "core/studies/ratio_sweep.h"

namespace jw {

/// Fills in the ratios of least loss, of lowest winding temperature and of the textbook's inertia
/// match. J_m is rotor and brake; J_L the largest load inertia. For the match with torque, tau_L
/// and alpha are taken at the instant of the largest inertia torque, tau_L all other torque then.
/// A sweep of one stage gets the match divided by the other stages' ratio.
void markRatios(const Project& project, const Evaluation& base, RatioSweep& sweep);

}  // namespace jw

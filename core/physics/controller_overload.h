#pragma once

#include "core/model/supply.h"
#include "core/motion/sampled_cycle.h"

namespace jw {

/// [A] continuous current at the assumed heat-sink temperature, in the controller's own measure: as
/// stated up to deratingStart, falling in a straight line to nothing at deratingEnd.
double deratedContinuousCurrent(const Controller& controller);

/// [W] loss of the electronics at an rms output current [A]: idle, proportional and square parts.
inline auto controllerLoss(const Controller& c, const auto& rmsCurrent) {
  return c.idlePower + c.lossPerAmpere * rmsCurrent + c.lossResistance * rmsCurrent * rmsCurrent;
}

/// How much of the allowed overload the cycle uses, 0..1 and over; +inf if it gathers from cycle to
/// cycle. Overload x' = I² - I_c², never below 0, may reach (I_pk² - I_c²) t_pk: a heat model with
/// the long time constant left out, as controllers' own supervision counts it (common practice, no
/// source). `current` [A] has the cycle's samples, in the controller's measure.
double overloadShare(const SampledCycle& cycle, const Eigen::ArrayXd& current, double continuous,
                     double peak, double peakTime);

}  // namespace jw

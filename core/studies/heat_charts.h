#pragma once

#include <Eigen/Core>

#include "core/physics/winding_heat.h"

namespace jw {

/// Temperatures [°C] over hours from cold, cycle by cycle.
struct WarmUp {
  Eigen::ArrayXd time;         ///< [s] at the start of a cycle
  Eigen::ArrayXd windingLow;   ///< lowest within that cycle
  Eigen::ArrayXd windingHigh;  ///< highest within that cycle
  Eigen::ArrayXd housing;      ///< at the start of that cycle
  double timeToLimit = 0;      ///< [s] until the winding first reaches its limit; +inf if never
};

/// Warm-up from the ambient over `duration` [s], at about `points` instants. Uses powers of the
/// cycle's map, so its cost does not grow with the hours. The ripple is read at the instants at
/// which the first and the periodic cycle have theirs.
WarmUp warmUp(const HeatNetwork& network, const HeatLoad& load, double limit, double duration,
              int points);

/// [J/K·K/W = s] the slower of the network's two time constants without copper feedback.
double slowTimeConstant(const HeatNetwork& network);

/// Copper loss [W] at 20 °C winding that rests the winding exactly at `limit` [°C] with `housing`
/// [W] of other loss; 0 if that loss alone is too much.
double lastingCopper20(const HeatNetwork& network, double housing, double limit);

/// Seconds that `copper20` [W] may last from the state `from` [°C] until the winding reaches
/// `limit`; +inf if it never does, 0 if it is there already. IEC 60034-1 S2 asks for this from
/// cold.
double timeToLimit(const HeatNetwork& network, double copper20, double housing,
                   const Eigen::Vector2d& from, double limit);

/// Torque allowed, as a multiple of the continuous one, when loaded for `duty` (0..1] of every
/// `period` [s] and idle for the rest: peak winding temperature at `limit`. `idleHousing` [W] is
/// the housing's loss while unloaded: 0 for IEC 60034-1 S3 (standing), the running loss for S6.
double allowedAtDuty(const HeatNetwork& network, double housing, double idleHousing, double limit,
                     double duty, double period);

/// Torque allowed for one stretch of `duration` [s] from the ambient (IEC 60034-1 S2), as a
/// multiple of the continuous one.
double allowedOnce(const HeatNetwork& network, double housing, double limit, double duration);

}  // namespace jw

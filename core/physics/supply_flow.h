#pragma once

#include <tl/expected.hpp>

#include "core/model/supply.h"
#include "core/motion/sampled_cycle.h"
#include "core/physics/bus_energy.h"
#include "core/physics/motor_demand.h"
#include "core/quantity/quantity.h"

namespace jw {

/// What the cycle asks of the supply and gives back.
struct SupplyFlow {
  BusModel bus;
  BusEnergy energy;           ///< of one repeated cycle
  double powerPeak = 0;       ///< [W] highest drawn from the bus, behind the source resistance
  double powerMean = 0;       ///< [W] mean drawn from the source, loss in its resistance included,
                              ///< less what it takes back
  double voltageLowest = 0;   ///< [V] with the sag at the highest power; NaN if it collapses
  double chargePerShift = 0;  ///< [C] net over the shift, i = P/V_0 of the source at the sagged
                              ///< voltage; NaN without a shift
  Eigen::ArrayXd duration;    ///< [s] of the steps between samples
};

/// [W] most that a source with resistance can give: V0² / (4 R); +inf without resistance.
double mostPower(const Supply& supply);

/// Follows the cycle's energy. Fails naming the field if power comes back, the source does not take
/// it and the bus capacitance is not given.
tl::expected<SupplyFlow, InputError> supplyFlow(const Supply& supply, const SampledCycle& cycle,
                                                const MotorDemand& demand);

}  // namespace jw

#pragma once

#include <vector>

#include <tl/expected.hpp>

#include "core/model/project.h"
#include "core/physics/motor_constants.h"
#include "core/physics/motor_demand.h"
#include "core/physics/stage_chain.h"
#include "core/physics/winding_heat.h"

namespace jw {

/// [°C] winding and magnet temperature for which currents and the peak envelope are computed.
double temperatureInUse(const Motor& motor);

/// [°C] highest winding temperature by thermal class or as stated.
double windingLimit(const Motor& motor);

/// [°C] the same, the rise over the ambient lowered by 1 % per 100 m above 1000 m of altitude
/// (IEC 60034-1, from memory); `altitude` [m] up to 4000.
double deratedLimit(double limit, double ambient, double altitude);

/// [K/W] housing to ambient: air and, in parallel, the plate it is mounted on.
double mountedResistance(const Motor& motor);

/// Every input that the motor's network still lacks, in the order of the form: resistances, and
/// heat capacities of which neither value nor time constant is given. Empty if it is complete.
std::vector<InputError> missingForHeat(const Motor& motor);

/// The motor's network as mounted. Fails naming the first field that missingForHeat lists.
tl::expected<HeatNetwork, InputError> heatNetwork(const Motor& motor, double ambient);

/// Heat over the repeated cycle.
struct MotorHeat {
  HeatNetwork network;
  HeatLoad load;        ///< steps between the cycle's samples, at the magnet's settled strength
  Eigen::ArrayXd time;  ///< [s] of the temperatures: 0 and the end of each step
  PeriodicHeat periodic;
  double limit = 0;       ///< [°C] winding limit, derated for altitude
  double fluxFactor = 1;  ///< magnet strength when settled over that used for the currents
};

/// The periodic state. The housing's mean temperature is taken as the magnet's; a weaker magnet
/// asks for more current, solved by the secant rule to 1e-7 K; if that never settles it is a
/// runaway. `inUse` [°C] is the winding and magnet temperature for which `demand` was computed.
tl::expected<MotorHeat, InputError> motorHeat(const Project& project, const SampledCycle& cycle,
                                              const StageChain& chain, const MotorDemand& demand,
                                              double inUse);

/// [°C] winding and housing at rest under mean losses [W], the copper's of a winding at 20 °C with
/// the magnet as strong as at `inUse` [°C]; the magnet is as hot as the housing. Not finite on
/// runaway.
Eigen::Vector2d settledMeanHeat(const Motor& motor, const HeatNetwork& network, double copper20,
                                double housing, double inUse);

}  // namespace jw

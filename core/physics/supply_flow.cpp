#include "core/physics/supply_flow.h"

#include <algorithm>
#include <cmath>
#include <limits>

namespace jw {
namespace {

constexpr double kInfinity = std::numeric_limits<double>::infinity();

BusModel busOf(const Supply& supply) {
  BusModel bus;
  bus.voltage = isSet(supply.voltageMax) ? supply.voltageMax : supply.voltage;
  bus.takesBack = supply.takesBack;
  bus.sourceVoltage = supply.voltage;
  bus.sourceResistance = supply.sourceResistance;
  bus.capacitance = isSet(supply.busCapacitance) ? supply.busCapacitance : 0;
  if (isSet(supply.brakeResistance) && isSet(supply.brakeVoltage)) {
    bus.brakeResistance = supply.brakeResistance;
    bus.brakeVoltage = supply.brakeVoltage;
  }
  return bus;
}

}  // namespace

double mostPower(const Supply& supply) {
  if (supply.sourceResistance == 0) return kInfinity;
  return supply.voltage * supply.voltage / (4 * supply.sourceResistance);
}

tl::expected<SupplyFlow, InputError> supplyFlow(const Supply& supply, const SampledCycle& cycle,
                                                const MotorDemand& demand) {
  if (!isSet(supply.voltage)) {
    return tl::unexpected(
        InputError{"the bus voltage is not given", "supply.voltage", "type it in"});
  }
  const bool returns = demand.supplyPower.minCoeff() < 0;
  if (returns && !supply.takesBack && !isSet(supply.busCapacitance)) {
    return tl::unexpected(
        InputError{"power comes back and the bus capacitance is not given", "supply.busCapacitance",
                   "capacitance of the controller's bus, e.g. 2 mF; or say that the source takes "
                   "power back"});
  }
  SupplyFlow flow;
  flow.bus = busOf(supply);
  const Eigen::Index n = cycle.size() - 1;
  flow.duration = cycle.time.tail(n) - cycle.time.head(n);
  const Eigen::ArrayXd power = (demand.supplyPower.head(n) + demand.supplyPower.tail(n)) / 2;
  flow.energy = followBus(flow.bus, power, flow.duration);
  flow.powerPeak = std::max(0.0, demand.supplyPower.maxCoeff());
  flow.powerMean = (flow.energy.drawn - flow.energy.returned) / cycle.period;
  flow.voltageLowest = saggedVoltage(supply.voltage, supply.sourceResistance, flow.powerPeak);
  flow.chargePerShift = flow.powerMean / supply.voltage * supply.shift;
  return flow;
}

}  // namespace jw

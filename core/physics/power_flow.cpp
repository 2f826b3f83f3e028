#include "core/physics/power_flow.h"

#include "core/motion/cycle_reading.h"

namespace jw {
namespace {

using Eigen::ArrayXd;

PowerStation station(StationKind kind, int stage, const ArrayXd& in, const ArrayXd& out,
                     const ArrayXd& loss) {
  return {kind, stage, in, out, loss, in - out - loss};
}

}  // namespace

std::vector<PowerStation> powerFlow(const SampledCycle& cycle, const LoadTorque& load,
                                    const StageChain& chain, const MotorDemand& demand) {
  const ArrayXd none = ArrayXd::Zero(cycle.size());
  const ArrayXd joint = load.total * cycle.speed;
  std::vector<PowerStation> flow;
  flow.push_back(station(StationKind::Supply, -1, demand.supplyPower, demand.supplyPower, none));
  flow.push_back(station(StationKind::Controller, -1, demand.supplyPower, demand.motorPower,
                         demand.controllerLoss));
  flow.push_back(station(StationKind::Motor, -1, demand.motorPower, demand.shaftPower,
                         demand.copperLoss + demand.dragLoss));
  ArrayXd in = demand.shaftPower;
  for (std::size_t k = 0; k < chain.stages.size(); ++k) {
    const StageLoad& stage = chain.stages[k];
    const bool last = k + 1 == chain.stages.size();
    ArrayXd out = last ? joint : ArrayXd(stage.outputTorque * stage.outputSpeed);
    flow.push_back(station(StationKind::Stage, static_cast<int>(k), in, out, stage.loss));
    in = std::move(out);
  }
  flow.push_back(station(StationKind::Joint, -1, joint, joint, none));
  return flow;
}

StationPower meanPower(const SampledCycle& cycle, const PowerStation& station) {
  return {cycleMean(cycle, station.in), cycleMean(cycle, station.out),
          cycleMean(cycle, station.loss), cycleMean(cycle, station.stored)};
}

StationPower powerAt(const SampledCycle& cycle, const PowerStation& station, double time) {
  return {valueAt(cycle, station.in, time), valueAt(cycle, station.out, time),
          valueAt(cycle, station.loss, time), valueAt(cycle, station.stored, time)};
}

}  // namespace jw

#include "core/physics/motor_heat.h"

#include <algorithm>
#include <array>
#include <cmath>

namespace jw {
namespace {

using Eigen::ArrayXd;
using Eigen::Index;

InputError missing(std::string_view key, std::string_view what) {
  return {std::string(what) + " is not given", "motor." + std::string(key),
          "take it from the motor's data sheet, or fit it to a measured heating curve"};
}

/// Mean of each pair of neighbouring samples.
ArrayXd between(const ArrayXd& samples) {
  const Index n = samples.size() - 1;
  return (samples.head(n) + samples.tail(n)) / 2;
}

/// Loss in the steps between samples.
HeatLoad lossSteps(const Project& project, const SampledCycle& cycle, const StageChain& chain,
                   const MotorDemand& demand, const Motor& motor, double inUseWinding) {
  const double a = motor.copperCoefficient;
  ArrayXd housing = demand.dragLoss;
  const auto& stages = project.active().transmission;
  for (std::size_t k = 0; k < stages.size(); ++k) {
    if (stages[k].heatShare > 0) housing += stages[k].heatShare * chain.stages[k].loss;
  }
  const Index n = cycle.size() - 1;
  return {between(demand.copperLoss) / (1 + a * (inUseWinding - 20)), between(housing),
          cycle.time.tail(n) - cycle.time.head(n)};
}

double fluxFactor(const Motor& motor, double magnet, double inUse) {
  const double a = motor.magnetCoefficient;
  return std::max(0.05, (1 + a * (magnet - 20)) / (1 + a * (inUse - 20)));
}

/// The periodic state with the magnet at `magnet` [°C].
PeriodicHeat withMagnetAt(double magnet, double inUse, const Motor& motor, const MotorHeat& heat) {
  const double factor = fluxFactor(motor, magnet, inUse);
  return periodicHeat(heat.network, heat.load, factor * factor);
}

/// Mean losses [W] at a magnet temperature in use [°C].
struct MeanLoss {
  double copper20, housing, inUse;
};

MeanLoss meanLoss(const HeatLoad& load, double inUse) {
  const ArrayXd& t = load.duration;
  return {(load.copper20 * t).sum() / t.sum(), (load.housing * t).sum() / t.sum(), inUse};
}

/// Steady network of mean losses with the magnet at `magnet` [°C]; not finite where it would run
/// away.
Eigen::Vector2d steadyAt(const Motor& motor, const HeatNetwork& network, const MeanLoss& loss,
                         double magnet) {
  const double factor = fluxFactor(motor, magnet, loss.inUse);
  return steadyHeat(network, loss.copper20 / (factor * factor), loss.housing);
}

/// [°C] magnet and housing agree, or not finite.
double settledMagnet(const Motor& motor, const HeatNetwork& network, const MeanLoss& loss) {
  double magnet = loss.inUse;
  for (int k = 0; k < 30 && std::isfinite(magnet); ++k) {
    const double before = magnet;
    magnet = steadyAt(motor, network, loss, magnet)[1];
    if (std::abs(magnet - before) < 1e-6) break;
  }
  return magnet;
}

/// A magnet temperature and how much the housing answers to it [K/K].
struct MagnetGuess {
  double temperature;
  double slope;
};

/// From mean losses; close to what the cycle gives, and cheap.
MagnetGuess guessMagnet(const Motor& motor, const MotorHeat& heat, double inUse) {
  const MeanLoss loss = meanLoss(heat.load, inUse);
  const double magnet = settledMagnet(motor, heat.network, loss);
  if (!std::isfinite(magnet)) return {inUse, 0};
  const auto housing = [&](double at) { return steadyAt(motor, heat.network, loss, at)[1]; };
  return {magnet, (housing(magnet + 0.01) - housing(magnet)) / 0.01};
}

PeriodicHeat runawayAt(double spectralRadius) {
  PeriodicHeat none;
  none.runaway = true;
  none.spectralRadius = spectralRadius;
  return none;
}

/// Makes the housing's mean and the magnet agree by the secant rule. A housing that answers with
/// more than one kelvin per kelvin never settles: runaway by the magnet.
void settle(const Motor& motor, double inUse, MotorHeat& heat) {
  auto [magnet, slope] = guessMagnet(motor, heat, inUse);
  heat.periodic = withMagnetAt(magnet, inUse, motor, heat);
  double housing = heat.periodic.housingMean;
  for (int pass = 0; pass < 20 && !heat.periodic.runaway; ++pass) {
    const double gap = housing - magnet;
    if (motor.magnetCoefficient == 0 || std::abs(gap) < 1e-7) break;
    if (!(slope < 1)) {
      heat.periodic = runawayAt(heat.periodic.spectralRadius);
      break;
    }
    const double before = housing;
    const double step = gap / (1 - slope);
    magnet += step;
    heat.periodic = withMagnetAt(magnet, inUse, motor, heat);
    housing = heat.periodic.housingMean;
    slope = (housing - before) / step;
  }
  heat.fluxFactor = fluxFactor(motor, magnet, inUse);
  heat.load.copper20 /= heat.fluxFactor * heat.fluxFactor;
}

}  // namespace

double temperatureInUse(const Motor& motor) {
  return isSet(motor.windingTemperature) ? motor.windingTemperature : motor.referenceTemperature;
}

double windingLimit(const Motor& motor) {
  constexpr std::array kLimits{105, 120, 130, 155, 180, 200, 220};
  if (motor.thermalClass == ThermalClass::Stated) return motor.windingTemperatureMax;
  return kLimits[static_cast<std::size_t>(motor.thermalClass) - 1];
}

double deratedLimit(double limit, double ambient, double altitude) {
  const double above = std::clamp(altitude, 1000.0, 4000.0) - 1000;
  return ambient + (limit - ambient) * (1 - 0.01 * above / 100);
}

double mountedResistance(const Motor& motor) {
  if (!isSet(motor.mountResistance)) return motor.thermalResistanceHousing;
  return 1 / (1 / motor.thermalResistanceHousing + 1 / motor.mountResistance);
}

std::vector<InputError> missingForHeat(const Motor& motor) {
  std::vector<InputError> all;
  if (!isSet(motor.thermalResistanceWinding)) {
    all.push_back(missing("thermalResistanceWinding", "the resistance winding to housing"));
  }
  if (!isSet(motor.thermalResistanceHousing)) {
    all.push_back(missing("thermalResistanceHousing", "the resistance housing to ambient"));
  }
  if (!isSet(motor.windingCapacity) && !isSet(motor.windingTimeConstant)) {
    all.push_back(missing("windingCapacity", "the winding's heat capacity"));
  }
  if (!isSet(motor.housingCapacity) && !isSet(motor.housingTimeConstant)) {
    all.push_back(missing("housingCapacity", "the housing's heat capacity"));
  }
  return all;
}

tl::expected<HeatNetwork, InputError> heatNetwork(const Motor& motor, double ambient) {
  const std::vector<InputError> lacking = missingForHeat(motor);
  if (!lacking.empty()) return tl::unexpected(lacking.front());
  HeatNetwork network;
  network.windingToHousing = motor.thermalResistanceWinding;
  network.housingToAmbient = mountedResistance(motor);
  network.windingCapacity = isSet(motor.windingCapacity)
                                ? motor.windingCapacity
                                : motor.windingTimeConstant / motor.thermalResistanceWinding;
  network.housingCapacity = isSet(motor.housingCapacity)
                                ? motor.housingCapacity
                                : motor.housingTimeConstant / motor.thermalResistanceHousing;
  network.copperCoefficient = motor.copperCoefficient;
  network.ambient = ambient;
  return network;
}

tl::expected<MotorHeat, InputError> motorHeat(const Project& project, const SampledCycle& cycle,
                                              const StageChain& chain, const MotorDemand& demand,
                                              double inUse) {
  const Motor& motor = project.active().motor;
  const Requirements& wanted = project.requirements;
  const auto network = heatNetwork(motor, wanted.ambient);
  if (!network) return tl::unexpected(network.error());
  MotorHeat heat;
  heat.network = *network;
  heat.load = lossSteps(project, cycle, chain, demand, motor, inUse);
  heat.time = cycle.time;
  heat.limit = deratedLimit(windingLimit(motor), wanted.ambient, wanted.altitude);
  settle(motor, inUse, heat);
  return heat;
}

Eigen::Vector2d settledMeanHeat(const Motor& motor, const HeatNetwork& network, double copper20,
                                double housing, double inUse) {
  const MeanLoss loss{copper20, housing, inUse};
  return steadyAt(motor, network, loss, settledMagnet(motor, network, loss));
}

}  // namespace jw

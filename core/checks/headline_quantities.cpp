#include "core/checks/headline_quantities.h"

#include <cmath>
#include <numbers>
#include <vector>

#include "core/checks/joint_figures.h"
#include "core/physics/backdriving.h"
#include "core/physics/plain_stages.h"
#include "core/physics/wind_up.h"

namespace jw {
namespace {

double peak(const Eigen::ArrayXd& values) { return values.abs().maxCoeff(); }

double mean(const SampledCycle& cycle, const Eigen::ArrayXd& values) {
  return (cycle.weight * values).sum() / cycle.period;
}

double rms(const SampledCycle& cycle, const Eigen::ArrayXd& values) {
  return std::sqrt(mean(cycle, values.square()));
}

/// [rad] sum of b_k / prod_{i>k} N_i; unset where a stage's is not given.
double jointBacklash(const std::vector<StageData>& stages) {
  double sum = 0;
  for (const StageData& one : stages) sum = sum / one.stage.ratio + one.stage.backlash;
  return sum;
}

double timeOf(const std::optional<Stop>& stop) { return stop ? stop->time : kUnset; }
double angleOf(const std::optional<Stop>& stop) { return stop ? stop->angle : kUnset; }
double energyOf(const std::optional<Stop>& stop) { return stop ? stop->energy : kUnset; }

/// [Hz] of a swing of motor side and load at the cycle's largest joint torque.
double resonance(const Project& project, const Evaluation& result,
                 double (TwoMass::*frequency)() const) {
  const auto two = twoMass(project, result, peak(result.load->total));
  return two ? ((*two).*frequency)() / (2 * std::numbers::pi) : kUnset;
}

/// [m] at the tool.
double toolError(const Project& project, const Evaluation& result,
                 double (ErrorBudget::*sum)() const) {
  const auto budget = errorBudget(project, result);
  return budget ? reachOf(project) * ((*budget).*sum)() : kUnset;
}

/// One headline figure: how it is called and how it is found in an evaluation.
struct Headline {
  std::string_view id;
  std::string_view label;
  Quantity quantity;
  std::string_view unit;
  bool (*known)(const Evaluation&);
  double (*value)(const Project&, const Evaluation&);
};

using P = const Project&;
using E = const Evaluation&;

bool hasLoad(E e) { return e.load.has_value(); }
bool hasStages(E e) { return e.stages.has_value(); }
bool hasChain(E e) { return e.chain.has_value(); }
bool hasChainAndMotor(E e) { return e.chain && e.motor; }
bool hasMotor(E e) { return e.motor.has_value(); }
bool hasDemand(E e) { return e.demand.has_value(); }
bool hasHeat(E e) { return e.heat.has_value() && !e.heat->periodic.runaway; }
bool hasSupply(E e) { return e.supply.has_value(); }
bool hasEnvelope(E e) { return e.envelope.has_value(); }

constexpr Headline kHeadlines[] = {
    {"joint.torque_peak", "Peak joint torque", Quantity::Torque, "N*m", hasLoad,
     [](P, E e) { return peak(e.load->total); }},
    {"joint.torque_rms", "Joint torque, root mean square", Quantity::Torque, "N*m", hasLoad,
     [](P, E e) { return rms(*e.cycle, e.load->total); }},
    {"joint.speed_peak", "Peak joint speed", Quantity::AngularSpeed, "rpm", hasLoad,
     [](P, E e) { return peak(e.cycle->speed); }},
    {"joint.acceleration_peak", "Peak joint acceleration", Quantity::AngularAcceleration, "rad/s^2",
     hasLoad, [](P, E e) { return peak(e.cycle->acceleration); }},
    {"joint.power_peak", "Peak power to the load", Quantity::Power, "W", hasLoad,
     [](P, E e) { return (e.load->total * e.cycle->speed).maxCoeff(); }},
    {"joint.power_mean", "Mean power to the load", Quantity::Power, "W", hasLoad,
     [](P, E e) { return mean(*e.cycle, e.load->total * e.cycle->speed); }},
    {"joint.inertia", "Largest load inertia", Quantity::Inertia, "kg*m^2", hasLoad,
     [](P, E e) { return e.load->largestInertia; }},
    {"cycle.period", "Cycle time", Quantity::Time, "s", hasLoad,
     [](P, E e) { return e.cycle->period; }},
    {"chain.ratio", "Ratio from motor to joint", Quantity::Ratio, "1", hasChain,
     [](P, E e) { return std::abs(e.chain->ratio); }},
    {"chain.inertia_at_motor", "Inertia at the motor shaft, motor included", Quantity::Inertia,
     "kg*m^2", hasDemand,
     [](P p, E e) {
       const Motor& motor = p.active().motor;
       return motor.rotorInertia + motor.brakeInertia + e.chain->inertiaAtMotor;
     }},
    {"chain.starting_torque", "Torque at the motor that starts the unloaded chain",
     Quantity::Torque, "N*m", hasChain, [](P, E e) { return startingTorqueAtMotor(*e.stages); }},
    {"chain.backdriving_torque", "Torque at the joint that drives everything back",
     Quantity::Torque, "N*m", hasChainAndMotor,
     [](P, E e) { return backdrivingTorqueAtJoint(*e.stages, e.motor->dragTorque); }},
    {"chain.stiffness", "Stiffness at the joint, at its peak torque", Quantity::TorsionalStiffness,
     "N*m/arcmin", hasChain,
     [](P, E e) {
       return chainStiffness(plainStages(*e.stages), peak(e.load->total)).value_or(kUnset);
     }},
    {"chain.backlash", "Backlash at the joint", Quantity::Angle, "arcmin", hasChain,
     [](P, E e) { return jointBacklash(*e.stages); }},
    {"motor.torque_peak", "Peak motor torque", Quantity::Torque, "N*m", hasDemand,
     [](P, E e) { return peak(e.demand->torque); }},
    {"motor.torque_rms", "Motor torque, root mean square", Quantity::Torque, "N*m", hasDemand,
     [](P, E e) { return e.demand->torqueRms; }},
    {"motor.speed_peak", "Peak motor speed", Quantity::AngularSpeed, "rpm", hasChain,
     [](P, E e) { return peak(e.chain->motorSpeed); }},
    {"motor.speed_rms", "Motor speed, root mean square", Quantity::AngularSpeed, "rpm", hasDemand,
     [](P, E e) { return e.demand->speedRms; }},
    {"motor.current_peak", "Peak phase current (amplitude)", Quantity::Current, "A", hasDemand,
     [](P, E e) { return peak(e.demand->current); }},
    {"motor.current_rms", "Phase current, root mean square", Quantity::Current, "A", hasDemand,
     [](P, E e) { return e.demand->currentRms; }},
    {"motor.copper_loss_mean", "Mean copper loss", Quantity::Power, "W", hasDemand,
     [](P, E e) { return mean(*e.cycle, e.demand->copperLoss); }},
    {"motor.torque_constant", "Torque constant in use, per ampere rms", Quantity::TorqueConstant,
     "N*m/A", hasMotor, [](P, E e) { return e.motor->torquePerRmsAmp(); }},
    {"envelope.stall_torque", "Peak torque at standstill", Quantity::Torque, "N*m", hasEnvelope,
     [](P, E e) { return e.envelope->stallTorque; }},
    {"envelope.corner_speed", "Corner speed", Quantity::AngularSpeed, "rpm", hasEnvelope,
     [](P, E e) { return e.envelope->cornerSpeed; }},
    {"envelope.no_load_speed", "No-load speed", Quantity::AngularSpeed, "rpm", hasEnvelope,
     [](P, E e) { return e.envelope->noLoadSpeed; }},
    {"envelope.continuous_stall_torque", "Continuous torque at standstill", Quantity::Torque, "N*m",
     hasEnvelope, [](P, E e) { return e.envelope->continuousTorque(0); }},
    {"motor.temperature_winding_peak", "Winding temperature, peak", Quantity::Temperature, "degC",
     hasHeat, [](P, E e) { return e.heat->periodic.windingPeak; }},
    {"motor.temperature_winding_mean", "Winding temperature, mean", Quantity::Temperature, "degC",
     hasHeat, [](P, E e) { return e.heat->periodic.windingMean; }},
    {"motor.temperature_housing_peak", "Housing temperature, peak", Quantity::Temperature, "degC",
     hasHeat, [](P, E e) { return e.heat->periodic.housingPeak; }},
    {"supply.energy_per_cycle", "Energy drawn per cycle", Quantity::Energy, "J", hasSupply,
     [](P, E e) { return e.supply->energy.drawn; }},
    {"supply.energy_regenerated", "Energy that comes back per cycle", Quantity::Energy, "J",
     hasSupply, [](P, E e) { return e.supply->energy.regenerated; }},
    {"supply.voltage_highest", "Highest bus voltage", Quantity::Voltage, "V", hasSupply,
     [](P, E e) { return e.supply->energy.voltagePeak; }},
    {"supply.voltage_lowest", "Lowest bus voltage, sagged", Quantity::Voltage, "V", hasSupply,
     [](P, E e) { return e.supply->voltageLowest; }},
    {"supply.charge_per_shift", "Charge drawn per shift", Quantity::Charge, "Ah", hasSupply,
     [](P, E e) { return e.supply->chargePerShift; }},
    {"supply.power_peak", "Peak power from the supply", Quantity::Power, "W", hasDemand,
     [](P, E e) { return e.demand->supplyPower.maxCoeff(); }},
    {"supply.power_mean", "Mean power from the supply", Quantity::Power, "W", hasSupply,
     [](P, E e) { return e.supply->powerMean; }},
    {"supply.energy_per_day", "Energy drawn per day", Quantity::Energy, "kWh", hasSupply,
     [](P p, E e) {
       const double power = e.mix ? e.mix->powerMean : e.supply->powerMean;
       return power * p.requirements.dutyPerDay;
     }},
    {"mix.idle_share", "Share of the day that is idle", Quantity::Fraction, "%", hasLoad,
     [](P, E e) { return e.mix ? e.mix->idle : 0; }},
    {"mix.motor_torque_rms", "Motor torque over the day, root mean square", Quantity::Torque, "N*m",
     hasDemand, [](P, E e) { return e.mix ? e.mix->torqueRms : e.demand->torqueRms; }},
    {"mix.temperature_winding_mean", "Winding temperature over the day, mean",
     Quantity::Temperature, "degC", hasHeat,
     [](P, E e) { return e.mix ? e.mix->windingMean : e.heat->periodic.windingMean; }},
    {"supply.power_returned_peak", "Peak power returned to the supply", Quantity::Power, "W",
     hasDemand, [](P, E e) { return std::max(0.0, -e.demand->supplyPower.minCoeff()); }},
    {"joint.stop_time_brake", "Time of a stop by the brake", Quantity::Time, "ms", hasChain,
     [](P p, E e) { return timeOf(stopOf(p, e, StopBy::Brake)); }},
    {"joint.stop_angle_brake", "Way of a stop by the brake", Quantity::Angle, "deg", hasChain,
     [](P p, E e) { return angleOf(stopOf(p, e, StopBy::Brake)); }},
    {"joint.stop_energy_brake", "Brake energy in a stop", Quantity::Energy, "J", hasChain,
     [](P p, E e) { return energyOf(stopOf(p, e, StopBy::Brake)); }},
    {"joint.stop_time_motor", "Time of a stop by the motor", Quantity::Time, "ms", hasChain,
     [](P p, E e) { return timeOf(stopOf(p, e, StopBy::Motor)); }},
    {"joint.stop_angle_motor", "Way of a stop by the motor", Quantity::Angle, "deg", hasChain,
     [](P p, E e) { return angleOf(stopOf(p, e, StopBy::Motor)); }},
    {"joint.collision_torque", "Joint torque of a collision", Quantity::Torque, "N*m", hasChain,
     [](P p, E e) { return collisionTorque(p, e); }},
    {"joint.resonance_locked", "Resonance, motor locked", Quantity::Frequency, "Hz", hasChain,
     [](P p, E e) { return resonance(p, e, &TwoMass::locked); }},
    {"joint.resonance_free", "Resonance, motor free", Quantity::Frequency, "Hz", hasChain,
     [](P p, E e) { return resonance(p, e, &TwoMass::free); }},
    {"joint.tool_error_worst", "Tool error, worst case", Quantity::Length, "mm", hasChain,
     [](P p, E e) { return toolError(p, e, &ErrorBudget::worst); }},
    {"joint.tool_error_rss", "Tool error, root sum of squares", Quantity::Length, "mm", hasChain,
     [](P p, E e) { return toolError(p, e, &ErrorBudget::rootSumSquare); }},
    {"joint.mass", "Mass of motor and transmission", Quantity::Mass, "kg", hasStages,
     [](P p, E) { return actuatorMass(p); }},
    {"joint.length", "Length of motor and transmission", Quantity::Length, "mm", hasStages,
     [](P p, E) { return actuatorLength(p); }},
};

}  // namespace

std::vector<NamedQuantity> headlineQuantities(const Project& project, const Evaluation& result) {
  std::vector<NamedQuantity> all;
  for (const Headline& headline : kHeadlines) {
    const double value = headline.known(result) ? headline.value(project, result) : kUnset;
    all.push_back({headline.id, headline.label, value, headline.quantity, headline.unit});
  }
  return all;
}

}  // namespace jw

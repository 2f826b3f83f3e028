// Headline figures of the supply and of the daily mix.
#include <array>
#include <cmath>
#include <span>
#include <string>

#include <fmt/format.h>

#include "core/checks/headline_rows.h"

namespace jw {
namespace {

using namespace headline;

/// The power of motor and controller at one sample.
void showPower(C context, W w, Eigen::Index at) {
  const std::string there = w.cycleOrigin(at);
  w.value(context.result.demand->motorPower[at],
          {"P_m", "Power of the motor there", Quantity::Power, "W", there});
  w.value(context.result.demand->controllerLoss[at],
          {"P_ctl", "Loss of the controller there", Quantity::Power, "W", there});
}

void supplyPeak(C context, W w) {
  Eigen::Index at = 0;
  context.result.demand->supplyPower.maxCoeff(&at);
  showPower(context, w, at);
  w.follows("P_m + P_ctl");
}

void returnedPeak(C context, W w) {
  Eigen::Index at = 0;
  context.result.demand->supplyPower.minCoeff(&at);
  showPower(context, w, at);
  w.follows("max(0, −(P_m + P_ctl))");
}

void supplyMean(C context, W w) {
  const SupplyFlow& flow = *context.result.supply;
  constexpr std::string_view kFrom = "from the repeated cycle";
  w.value(flow.energy.drawn, {"E_drawn", "Energy drawn per cycle", Quantity::Energy, "J", kFrom});
  w.value(flow.energy.returned,
          {"E_returned", "Energy taken back per cycle", Quantity::Energy, "J", kFrom});
  w.value(context.result.cycle->period,
          {"t_c", "Cycle time", Quantity::Time, "s", "from the cycle"});
  w.follows("(E_drawn − E_returned) / t_c");
}

void voltageLowest(C context, W w) {
  const Supply& supply = context.variant().supply;
  w.input(supply.voltage, "supply.voltage");
  if (!(supply.sourceResistance > 0)) return w.follows("V_dc");
  w.input(supply.sourceResistance, "supply.sourceResistance");
  w.value(context.result.supply->powerPeak,
          {"P", "Highest power drawn", Quantity::Power, "W", "from the cycle"});
  w.follows("(V_dc + \u221a(V_dc² − 4 · R_s · P)) / 2");
}

void charge(C context, W w) {
  const Supply& supply = context.variant().supply;
  w.value(context.result.supply->powerMean,
          {"P", "Mean power from the source", Quantity::Power, "W"});
  w.input(supply.voltage, "supply.voltage");
  w.input(supply.shift, "supply.shift");
  w.follows("P / V_dc · t_sh");
}

void energyPerDay(C context, W w) {
  const auto& mix = context.result.mix;
  w.value(mix ? mix->powerMean : context.result.supply->powerMean,
          {"P", "Mean power drawn", Quantity::Power, "W", w.meanOrigin()});
  w.input(context.project.requirements.dutyPerDay, "requirements.dutyPerDay");
  w.follows("P · t_d");
}

/// Shares of all cycles of the day.
std::string sharesOf(C context, W w) {
  std::string sum;
  int k = 0;
  for (const MixedCycle& cycle : context.result.mix->cycles) {
    const std::string symbol = fmt::format("s_{}", ++k);
    w.value(cycle.share, {symbol, "Share of " + cycle.title, Quantity::Fraction, "%", "typed"});
    sum += (k > 1 ? " + " : "") + symbol;
  }
  return sum;
}

void idleShare(C context, W w) {
  if (!w.explains()) return;
  if (!context.result.mix) {
    w.note("The cycle shown runs all day.");
    return w.follows("0");
  }
  w.follows("max(0, 1 − (" + sharesOf(context, w) + "))");
}

void dayTorque(C context, W w) {
  if (!w.explains()) return;
  if (!context.result.mix) {
    w.note("The cycle shown runs all day.");
    return meanSquareByMoves(context, w, context.result.demand->torque,
                             {"T_", "Motor torque, rms,", Quantity::Torque, "N*m"});
  }
  sharesOf(context, w);
  std::string sum;
  int k = 0;
  for (const MixedCycle& cycle : context.result.mix->cycles) {
    const std::string n = std::to_string(++k);
    w.value(cycle.torqueRms, {"T_" + n, "Motor torque, rms, in " + cycle.title, Quantity::Torque,
                              "N*m", "from that cycle"});
    sum += fmt::format("{}s_{} · T_{}²", k > 1 ? " + " : "", n, n);
  }
  w.follows("\u221a(" + sum + ")");
}

void dayWinding(C context, W w) {
  const auto& mix = context.result.mix;
  plain(w, mix ? mix->windingMean : context.result.heat->periodic.windingMean,
        {"T_w", "Winding, mean", Quantity::Temperature, "degC", w.meanOrigin()});
}

constexpr Headline kRows[] = {
    {"supply.energy_per_cycle", "Energy drawn per cycle", Quantity::Energy, "J", hasSupply,
     [](P, E e) { return e.supply->energy.drawn; }, "E = \u222b P dt while power is drawn",
     "Energy balance of the direct-voltage bus",
     [](C c, W w) {
       plain(
           w, c.result.supply->energy.drawn,
           {"E", "Energy drawn from the source", Quantity::Energy, "J", "from the repeated cycle"});
     }},
    {"supply.energy_regenerated", "Energy that comes back per cycle", Quantity::Energy, "J",
     hasSupply, [](P, E e) { return e.supply->energy.regenerated; },
     "E = \u2212\u222b P dt while power comes back", "Energy balance of the direct-voltage bus",
     [](C c, W w) {
       plain(w, c.result.supply->energy.regenerated,
             {"E", "Energy that comes back", Quantity::Energy, "J", "from the cycle"});
     }},
    {"supply.voltage_highest", "Highest bus voltage", Quantity::Voltage, "V", hasSupply,
     [](P, E e) { return e.supply->energy.voltagePeak; }, "C (V² \u2212 V_dc²) / 2 = E_back",
     "Energy balance of the direct-voltage bus",
     [](C c, W w) {
       plain(w, c.result.supply->energy.voltagePeak,
             {"V", "Highest bus voltage", Quantity::Voltage, "V", "from the repeated cycle"});
     }},
    {"supply.voltage_lowest", "Lowest bus voltage, sagged", Quantity::Voltage, "V", hasSupply,
     [](P, E e) { return e.supply->voltageLowest; },
     "V = (V_dc + \u221a(V_dc² \u2212 4 R_s P)) / 2",
     "Voltage divider of source resistance and a load of constant power", &voltageLowest},
    {"supply.charge_per_shift", "Charge drawn per shift", Quantity::Charge, "Ah", hasSupply,
     [](P, E e) { return e.supply->chargePerShift; }, "Q = P / V_dc t_sh",
     "Charge is current times time", &charge},
    {"supply.power_peak", "Peak power from the supply", Quantity::Power, "W", hasDemand,
     [](P, E e) { return e.demand->supplyPower.maxCoeff(); },
     "P = P_m + P_ctl, the largest of the cycle", "Energy balance of the direct-voltage bus",
     &supplyPeak},
    {"supply.power_mean", "Mean power from the supply", Quantity::Power, "W", hasSupply,
     [](P, E e) { return e.supply->powerMean; }, "P = (E_drawn \u2212 E_returned) / t_c",
     "Energy balance of the direct-voltage bus", &supplyMean},
    {"supply.energy_per_day", "Energy drawn per day", Quantity::Energy, "kWh", hasSupply,
     [](P p, E e) {
       const double power = e.mix ? e.mix->powerMean : e.supply->powerMean;
       return power * p.requirements.dutyPerDay;
     },
     "E = P t_d", "Definition", &energyPerDay},
    {"mix.idle_share", "Share of the day that is idle", Quantity::Fraction, "%", hasLoad,
     [](P, E e) { return e.mix ? e.mix->idle : 0; }, "s = 1 \u2212 \u2211 s_k", "Definition",
     &idleShare},
    {"mix.motor_torque_rms", "Motor torque over the day, root mean square", Quantity::Torque, "N*m",
     hasDemand, [](P, E e) { return e.mix ? e.mix->torqueRms : e.demand->torqueRms; },
     "T_rms = \u221a(\u2211 s_k T_k²)", kMeanSquare, &dayTorque},
    {"mix.temperature_winding_mean", "Winding temperature over the day, mean",
     Quantity::Temperature, "degC", hasHeat,
     [](P, E e) { return e.mix ? e.mix->windingMean : e.heat->periodic.windingMean; },
     "At the mean losses of the day", kHeatSource, &dayWinding},
    {"supply.power_returned_peak", "Peak power returned to the supply", Quantity::Power, "W",
     hasDemand, [](P, E e) { return std::max(0.0, -e.demand->supplyPower.minCoeff()); },
     "P = \u2212(P_m + P_ctl), the largest of the cycle",
     "Energy balance of the direct-voltage bus", &returnedPeak},
};

}  // namespace

std::span<const Headline> supplyHeadlines() { return kRows; }

}  // namespace jw

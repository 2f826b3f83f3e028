#include <algorithm>
#include <array>
#include <cmath>
#include <span>

#include <fmt/format.h>

#include "core/checks/check_writer.h"
#include "core/physics/supply_flow.h"

namespace jw {
namespace {

constexpr std::string_view kBalance = "Energy balance of the direct-voltage bus";

const SupplyFlow& flow(const CheckContext& context) { return *context.result.supply; }

void powerPeak(const CheckContext& context, CheckWriter& w) {
  w.formula("max P against the smaller of P_pk and V_dc\u00b2 / (4 R_s)");
  w.source(kBalance);
  w.note(
      "P is what the controller draws from the bus: shaft power, motor and controller losses; the "
      "source resistance takes its loss besides.");
  const Supply& supply = context.variant().supply;
  const double given = w.input(supply.powerPeak, "supply.powerPeak");
  w.optionalInput(supply.voltage, "supply.voltage");
  w.optionalInput(supply.sourceResistance, "supply.sourceResistance");
  if (!w.has(Part::Supply)) return;
  Eigen::Index at = 0;
  context.result.demand->supplyPower.maxCoeff(&at);
  w.at(at);
  w.value(flow(context).powerPeak,
          {"P", "Highest power drawn", Quantity::Power, "W", w.cycleOrigin(at)});
  w.value(flow(context).voltageLowest, {"V", "Bus voltage then, sagged", Quantity::Voltage, "V"});
  w.follows("P", supply.sourceResistance > 0 ? "min(P_pk, V_dc² / (4 · R_s))" : "P_pk");
  w.compare(flow(context).powerPeak, std::min(given, mostPower(supply)));
}

/// Share and mean power of every cycle of the day, and their sum as an expression.
std::string showShares(const CheckContext& context, CheckWriter& w) {
  std::string sum;
  if (!w.explains()) return sum;
  int k = 0;
  for (const MixedCycle& cycle : context.result.mix->cycles) {
    ++k;
    const std::string share = fmt::format("s_{}", k);
    const std::string power = fmt::format("P_{}", k);
    w.value(cycle.share, {share, "Share of " + cycle.title, Quantity::Fraction, "%", "typed"});
    w.value(cycle.powerMean,
            {power, "Mean power of " + cycle.title, Quantity::Power, "W", "from that cycle"});
    sum += fmt::format("{}{} · {}", sum.empty() ? "" : " + ", share, power);
  }
  return sum;
}

/// The same of a daily mix.
void powerOverTheDay(const CheckContext& context, CheckWriter& w, double limit) {
  w.formula("P_mean = \u2211 s_k P_k against P_c");
  w.note("Idle time draws nothing.");
  const double mean = context.result.mix->powerMean;
  // Of another cycle the flow may lack the capacitance that takes what comes back.
  if (!isSet(mean)) w.input(context.variant().supply.busCapacitance, "supply.busCapacitance");
  const std::string sum = showShares(context, w);
  w.value(mean, {"P_mean", "Mean power drawn", Quantity::Power, "W", w.meanOrigin(), sum});
  w.follows("max(0, P_mean)", "P_c");
  w.compare(std::max(0.0, mean), limit);
}

void powerMean(const CheckContext& context, CheckWriter& w) {
  w.formula("P_mean = (E_drawn \u2212 E_returned) / t_c against P_c");
  w.source(kBalance);
  w.note(
      "Both energies are the source's own: the loss R_s i\u00b2 in its resistance is drawn too.");
  const double limit = w.input(context.variant().supply.powerMean, "supply.powerMean");
  w.optionalInput(context.variant().supply.sourceResistance, "supply.sourceResistance");
  if (!w.has(Part::Supply) || !w.hasDay()) return;
  if (context.result.mix) return powerOverTheDay(context, w, limit);
  w.value(flow(context).energy.drawn,
          {"E_drawn", "Energy drawn per cycle", Quantity::Energy, "J", "from the cycle"});
  if (context.variant().supply.sourceResistance > 0) {
    w.value(flow(context).energy.sourceLoss, {"E_s", "Of it, lost in the source resistance",
                                              Quantity::Energy, "J", "from the cycle"});
  }
  w.value(flow(context).energy.returned,
          {"E_returned", "Energy taken back per cycle", Quantity::Energy, "J", "from the cycle"});
  w.value(context.result.cycle->period,
          {"t_c", "Cycle time", Quantity::Time, "s", "from the cycle"});
  w.value(flow(context).powerMean, {"P_mean", "Mean power drawn", Quantity::Power, "W", "derived",
                                    "(E_drawn − E_returned) / t_c"});
  w.follows("max(0, P_mean)", "P_c");
  w.compare(std::max(0.0, flow(context).powerMean), limit);
}

bool keepsEnergy(const CheckContext& context) { return !context.variant().supply.takesBack; }

bool canRise(const CheckContext& context) {
  return keepsEnergy(context) || isSet(context.variant().supply.busVoltageMax);
}

void voltageRise(const CheckContext& context, CheckWriter& w) {
  w.formula(
      "C (V\u00b2 \u2212 V_dc\u00b2) / 2 = E_back, held at V_br by the resistor as far as V_br\u00b2 / R_br "
      "allows; margin on the rise");
  w.source(kBalance);
  w.note("Stored energy stays on the bus after power-off: wait and measure before touching.");
  const Supply& supply = context.variant().supply;
  const double limit = w.input(supply.busVoltageMax, "supply.busVoltageMax");
  w.input(supply.voltage, "supply.voltage");
  w.optionalInput(supply.voltageMax, "supply.voltageMax");
  w.optionalInput(supply.busCapacitance, "supply.busCapacitance");
  w.optionalInput(supply.brakeVoltage, "supply.brakeVoltage");
  if (!w.has(Part::Supply)) return;
  const BusEnergy& energy = flow(context).energy;
  w.value(energy.regenerated,
          {"E_back", "Energy that comes back per cycle", Quantity::Energy, "J", "from the cycle"});
  w.value(energy.voltagePeak,
          {"V", "Highest bus voltage", Quantity::Voltage, "V", "from the repeated cycle"});
  w.follows("V", "V_lim");
  if (!energy.settles) w.note("The returned energy has no outlet: the voltage climbs every cycle.");
  w.compareRise(energy.voltagePeak, limit, supply.voltage);
}

bool hasResistor(const CheckContext& context) {
  return keepsEnergy(context) && isSet(context.variant().supply.brakeResistance);
}

void brakeResistor(const CheckContext& context, CheckWriter& w) {
  w.formula("mean and peak of what the resistor takes, against P_br,c and P_br");
  w.source(kBalance);
  w.note("The worse of both is shown, as a share of its rating. The resistor gets very hot.");
  const Supply& supply = context.variant().supply;
  w.input(supply.brakeVoltage, "supply.brakeVoltage");
  const double lasting = w.input(supply.brakePowerMean, "supply.brakePowerMean");
  const double peak = w.input(supply.brakePowerPeak, "supply.brakePowerPeak");
  if (!w.has(Part::Supply)) return;
  const BusEnergy& energy = flow(context).energy;
  w.value(energy.brakePowerMean,
          {"P_mean", "Mean power of the resistor", Quantity::Power, "W", "from the cycle"});
  w.value(energy.brakePowerPeak,
          {"P_peak", "Peak power of the resistor", Quantity::Power, "W", "from the cycle"});
  w.follows("max(P_mean / P_br,c, P_peak / P_br)", "1");
  w.compare(std::max(energy.brakePowerMean / lasting, energy.brakePowerPeak / peak), 1);
}

constexpr std::array kKinds{
    CheckKind{"supply.power_peak", "Supply peak power", Quantity::Power, "W", false, false, nullptr,
              &powerPeak},
    CheckKind{"supply.power_mean", "Supply mean power", Quantity::Power, "W", false, false, nullptr,
              &powerMean},
    CheckKind{"supply.voltage_rise", "Bus voltage rise", Quantity::Voltage, "V", false, false,
              &canRise, &voltageRise},
    CheckKind{"supply.brake_resistor", "Brake resistor load", Quantity::Fraction, "%", false, false,
              &hasResistor, &brakeResistor},
};

}  // namespace

std::span<const CheckKind> supplyChecks() { return kKinds; }

}  // namespace jw

#include <array>
#include <cmath>
#include <limits>
#include <span>

#include "core/checks/check_writer.h"
#include "core/physics/motor_heat.h"

namespace jw {
namespace {

constexpr std::string_view kNetworkSource =
    "Two-node thermal network, its periodic state by one affine solve (Hughes and Drury, Electric "
    "Motors and Drives; from memory)";
constexpr std::string_view kCycleMap =
    "T: both temperatures as the cycle begins; one cycle makes Φ T + c of them, and I is the unit "
    "matrix.";
/// 1 % of the rise less for every 100 m above 1000 m.
constexpr std::string_view kDerated =
    "T_a + (T_cl − T_a) · (1 − (min(max(h, 1000), 4000) − 1000) / 10000)";
constexpr double kInfinity = std::numeric_limits<double>::infinity();

const PeriodicHeat& periodic(const CheckContext& context) { return context.result.heat->periodic; }

/// The hottest that one node becomes, and where.
struct HottestNode {
  double peak = 0;           ///< [°C]; infinite on runaway
  bool ofCycleShown = true;  ///< whether it is an instant of the cycle shown
};

/// Over the cycle shown, or over every cycle of the day and their mean losses.
HottestNode hottestNode(const CheckContext& context, double PeriodicHeat::*peak,
                        double MixedHeat::*mixedPeak, double DailyMix::*mean) {
  const PeriodicHeat& shown = periodic(context);
  if (!context.result.mix) return {shown.runaway ? kInfinity : shown.*peak, true};
  const double day = context.result.mix.value().*mean;
  HottestNode worst{std::isfinite(day) ? day : kInfinity, false};
  for (const MixedCycle& cycle : context.result.mix->cycles) {
    if (!cycle.heat) continue;
    const double own = cycle.heat->runaway ? kInfinity : (*cycle.heat).*mixedPeak;
    if (own >= worst.peak) worst = {own, cycle.path == "cycle"};
  }
  return worst;
}

HottestNode hottestWinding(const CheckContext& context) {
  return hottestNode(context, &PeriodicHeat::windingPeak, &MixedHeat::windingPeak,
                     &DailyMix::windingMean);
}

HottestNode hottestHousing(const CheckContext& context) {
  return hottestNode(context, &PeriodicHeat::housingPeak, &MixedHeat::housingPeak,
                     &DailyMix::housingMean);
}

/// Whether heat is known, of every cycle of the day.
bool hasHeat(CheckWriter& w) {
  const bool heat = w.has(Part::Heat);
  return w.hasDay() && heat;
}

/// What the day's mean losses would settle at, and which cycle is judged.
void showDay(const CheckContext& context, CheckWriter& w, double DailyMix::*mean) {
  if (!context.result.mix) return;
  w.note("Judged is the hottest of its cycles, as if it were repeated for hours.");
  w.value(context.result.mix.value().*mean, {"T_day", "At the day's mean losses",
                                             Quantity::Temperature, "degC", "from the daily mix"});
}

/// Resistances, capacities and the ambient, for the working.
void showNetwork(const CheckContext& context, CheckWriter& w) {
  const HeatNetwork& n = context.result.heat->network;
  w.valueOf("motor.thermalResistanceWinding", n.windingToHousing,
            {"R_12", "Winding to housing", Quantity::ThermalResistance, "K/W"});
  w.valueOf("motor.thermalResistanceHousing", n.housingToAmbient,
            {"R_2", "Housing to ambient, as mounted", Quantity::ThermalResistance, "K/W"});
  w.valueOf("motor.windingCapacity", n.windingCapacity,
            {"C_1", "Winding", Quantity::HeatCapacity, "J/K"});
  w.valueOf("motor.housingCapacity", n.housingCapacity,
            {"C_2", "Housing", Quantity::HeatCapacity, "J/K"});
  w.input(n.ambient, "requirements.ambient");
  w.value(periodic(context).spectralRadius,
          {"\u03c1", "Share of a temperature offset that one cycle leaves", Quantity::Number, "1"});
}

/// Margin of temperatures counts from the ambient; a runaway is beyond every limit.
void compareHeat(const CheckContext& context, CheckWriter& w, double peak, double limit) {
  if (std::isinf(peak)) {
    w.note(
        "Thermal runaway: the copper's resistance, or the current that a weaker magnet asks for, "
        "grows faster than the cooling; every cycle ends hotter than the one before.");
  }
  w.compareRise(peak, limit, context.result.heat->network.ambient);
}

/// The instant at which a node of the repeated cycle is hottest; none if it never repeats.
void atHottest(const HottestNode& node, const Eigen::ArrayXd& temperature, CheckWriter& w) {
  if (!node.ofCycleShown || temperature.size() == 0) return;
  Eigen::Index at = 0;
  temperature.maxCoeff(&at);
  w.at(at);
}

double windingLimitThere(const CheckContext& context) {
  const Requirements& wanted = context.project.requirements;
  return deratedLimit(windingLimit(context.variant().motor), wanted.ambient, wanted.altitude);
}

void windingTemperature(const CheckContext& context, CheckWriter& w) {
  w.formula(
      "(I \u2212 \u03a6) T = c over the cycle; margin = (T_lim \u2212 T_a) / (T_peak \u2212 T_a) \u2212 1");
  w.source(kNetworkSource);
  w.note(kCycleMap);
  w.note(
      "Peak of the winding once the cycle has been repeated for hours, as the mean of all phases. "
      "At standstill one phase may carry the whole amplitude and gets hotter than that.");
  w.valueOf("motor.windingTemperatureMax", windingLimit(context.variant().motor),
            {"T_cl", "Limit of the winding's class, or as given", Quantity::Temperature, "degC"});
  w.input(context.project.requirements.ambient, "requirements.ambient");
  w.input(context.project.requirements.altitude, "requirements.altitude");
  const double limit =
      w.value(windingLimitThere(context), {"T_lim", "Winding limit, derated for altitude",
                                           Quantity::Temperature, "degC", "derived", kDerated});
  if (!hasHeat(w)) return;
  showNetwork(context, w);
  w.value(periodic(context).windingMean,
          {"T_mean", "Winding, mean", Quantity::Temperature, "degC", "from the cycle"});
  showDay(context, w, &DailyMix::windingMean);
  const HottestNode hottest = hottestWinding(context);
  w.value(hottest.peak, {"T_peak", "Winding, peak", Quantity::Temperature, "degC", w.meanOrigin()});
  atHottest(hottest, periodic(context).winding, w);
  w.follows("T_peak", "T_lim");
  compareHeat(context, w, hottest.peak, limit);
}

void housingTemperature(const CheckContext& context, CheckWriter& w) {
  w.formula(
      "(I \u2212 \u03a6) T = c over the cycle; margin = (T_h,max \u2212 T_a) / (T_peak \u2212 T_a) \u2212 1");
  w.source(kNetworkSource);
  w.note(kCycleMap);
  w.note("The housing carries bearings, encoder and grease, and what is mounted to it.");
  const double limit =
      w.input(context.variant().motor.housingTemperatureMax, "motor.housingTemperatureMax");
  if (!hasHeat(w)) return;
  showNetwork(context, w);
  showDay(context, w, &DailyMix::housingMean);
  const HottestNode hottest = hottestHousing(context);
  w.value(hottest.peak, {"T_peak", "Housing, peak", Quantity::Temperature, "degC", w.meanOrigin()});
  w.follows("T_peak", "T_h,max");
  atHottest(hottest, periodic(context).housing, w);
  compareHeat(context, w, hottest.peak, limit);
}

bool hasMagnetLimit(const CheckContext& context) {
  return isSet(context.variant().motor.demagnetizingCurrent);
}

void magnet(const CheckContext& context, CheckWriter& w) {
  w.formula("I_peak against I_dm (1 + \u03b1_dm (T_mag \u2212 T_dm))");
  w.source("Demagnetizing current as the motor's data state it; common practice, no source");
  w.note(
      "The magnet is taken to be as hot as the housing at its hottest, or as cold as the ambient. "
      "A short circuit or a lost "
      "encoder can drive a larger demagnetizing current than the cycle does.");
  const Motor& motor = context.variant().motor;
  const double stated = w.input(motor.demagnetizingCurrent, "motor.demagnetizingCurrent");
  w.input(motor.demagnetizingTemperature, "motor.demagnetizingTemperature");
  w.input(motor.demagnetizingCoefficient, "motor.demagnetizingCoefficient");
  if (!w.has(Part::Demand) || !w.has(Part::Heat)) return;
  Eigen::Index at = 0;
  const double peak = context.result.demand->current.abs().maxCoeff(&at);
  w.at(at);
  w.value(peak,
          {"I_peak", "Highest current, amplitude", Quantity::Current, "A", w.cycleOrigin(at)});
  const double hot =
      periodic(context).runaway ? motor.demagnetizingTemperature : periodic(context).housingPeak;
  // With a positive coefficient (ferrite) the cold magnet is the weaker one.
  const double cold = context.project.requirements.ambient;
  const double worst = motor.demagnetizingCoefficient > 0 ? std::min(cold, hot) : hot;
  const double factor =
      1 + motor.demagnetizingCoefficient * (worst - motor.demagnetizingTemperature);
  w.value(worst, {"T_mag", "Magnet, where it is weakest", Quantity::Temperature, "degC"});
  w.follows("I_peak", "max(0, I_dm · (1 + \u03b1_dm · (T_mag − T_dm)))");
  w.compare(peak, std::max(0.0, stated * factor));
}

bool isTouched(const CheckContext& context) {
  return context.project.requirements.touchContact != TouchContact::NotTouched;
}

/// Burn threshold of bare metal [°C].
double burnThreshold(TouchContact contact) {
  constexpr std::array kThresholds{65.0, 55.0, 51.0, 48.0, 43.0};
  return kThresholds[static_cast<std::size_t>(contact) - 1];
}

void touchTemperature(const CheckContext& context, CheckWriter& w) {
  w.formula("T_housing against the burn threshold of bare smooth metal");
  w.source("ISO 13732-1 burn thresholds, from memory: provisional, see the standard itself");
  w.note(
      "A caution, not an approval: thresholds differ with material, coating and contact time; "
      "the standard covers brief contact of small areas. Guard or mark hot surfaces.");
  const double limit =
      w.value(burnThreshold(context.project.requirements.touchContact),
              {"T_burn", "Burn threshold for that contact", Quantity::Temperature, "degC"});
  if (!hasHeat(w)) return;
  const HottestNode hottest = hottestHousing(context);
  w.value(hottest.peak,
          {"T_housing", "Housing, peak", Quantity::Temperature, "degC", w.meanOrigin()});
  atHottest(hottest, periodic(context).housing, w);
  w.follows("T_housing", "T_burn");
  compareHeat(context, w, hottest.peak, limit);
}

constexpr std::array kKinds{
    CheckKind{"motor.temperature_winding", "Winding temperature", Quantity::Temperature, "degC",
              false, false, nullptr, &windingTemperature},
    CheckKind{"motor.temperature_housing", "Housing temperature", Quantity::Temperature, "degC",
              false, false, nullptr, &housingTemperature},
    CheckKind{"motor.magnet", "Magnet current", Quantity::Current, "A", false, false,
              &hasMagnetLimit, &magnet},
    CheckKind{"motor.touch_temperature", "Touch temperature", Quantity::Temperature, "degC", false,
              false, &isTouched, &touchTemperature},
};

}  // namespace

std::span<const CheckKind> heatChecks() { return kKinds; }

}  // namespace jw

#include <array>
#include <cmath>
#include <numbers>
#include <span>

#include "core/checks/check_writer.h"
#include "core/physics/controller_overload.h"

namespace jw {
namespace {

constexpr std::string_view kSource =
    "Sine: T = 1.5 p \u03bb i_q in amplitude-invariant current, rms = amplitude / \u221a2; direct "
    "current: T = K_t I";

constexpr std::string_view kDerating = "I_c · (T_s2 − T_s) / (T_s2 − T_s1)";

/// Amperes in the controller's own measure per ampere of amplitude.
double measureFactor(const CheckContext& context) {
  const bool amplitude = context.variant().controller.currentMeasure == CurrentMeasure::Amplitude;
  return amplitude ? 1.0 : context.result.motor->rmsFactor();
}

std::string_view measureLabel(const CheckContext& context) {
  if (context.result.motor->direct) return "Motor current, direct";
  return context.variant().controller.currentMeasure == CurrentMeasure::Amplitude
             ? "Motor phase current, amplitude"
             : "Motor phase current, rms";
}

void currentPeak(const CheckContext& context, CheckWriter& w) {
  w.formula("I_peak = (T + T_drag) / K_t against I_pk");
  w.source(kSource);
  w.note("Both in the measure, rms or peak, that the controller's data use.");
  const double limit = w.input(context.variant().controller.currentPeak, "controller.currentPeak");
  if (!w.has(Part::Demand)) return;
  Eigen::Index at = 0;
  const double peak = context.result.demand->current.abs().maxCoeff(&at) * measureFactor(context);
  w.at(at);
  const MotorDemand& demand = *context.result.demand;
  const double speed = context.result.chain->motorSpeed[at];
  w.value(demand.torque[at],
          {"T", "Motor torque there", Quantity::Torque, "N*m", w.cycleOrigin(at)});
  w.value(context.result.motor->drag(speed),
          {"T_drag", "No-load torque there", Quantity::Torque, "N*m"});
  w.value(context.result.motor->torquePerAmp / measureFactor(context),
          {"K_t", "Torque constant in use, in that measure", Quantity::TorqueConstant, "N*m/A"});
  if (demand.weakening.size() > 0) {
    w.note("The field is weakened where the voltage asks for it: I_peak holds i_d and i_q.");
    w.value(demand.weakening[at] * measureFactor(context),
            {"I_d", "Weakening current there", Quantity::Current, "A"});
  }
  const bool weakened = demand.weakening.size() > 0;
  w.value(peak, {"I_peak", measureLabel(context), Quantity::Current, "A", w.cycleOrigin(at),
                 weakened ? "" : "|T + T_drag| / K_t"});
  w.follows("I_peak", "I_pk");
  w.compare(peak, limit);
}

std::string_view lastingSymbol(const CheckContext& context) {
  return isSet(context.variant().controller.heatSink) ? "I_c,s" : "I_c";
}

/// In the catalogue's symbols of heat sink, start and end.
std::string_view deratingExpression(const Controller& c) {
  if (!isSet(c.deratingStart) || !isSet(c.deratingEnd) || c.heatSink <= c.deratingStart) {
    return "I_c";
  }
  return c.heatSink >= c.deratingEnd ? "0" : kDerating;
}

/// Continuous current, derated if the heat sink's temperature is given.
double lastingCurrent(const CheckContext& context, CheckWriter& w) {
  const Controller& controller = context.variant().controller;
  const double stated = w.input(controller.currentContinuous, "controller.currentContinuous");
  if (!isSet(controller.heatSink)) return stated;
  w.input(controller.heatSink, "controller.heatSink");
  w.input(controller.deratingStart, "controller.deratingStart");
  w.input(controller.deratingEnd, "controller.deratingEnd");
  return w.value(deratedContinuousCurrent(controller),
                 {"I_c,s", "Continuous current at that heat sink", Quantity::Current, "A",
                  "derived", deratingExpression(controller)});
}

void currentRms(const CheckContext& context, CheckWriter& w) {
  w.formula("I_rms = \u221a(1/t_c \u222b I\u00b2 dt) against I_c");
  w.source(kSource);
  w.note("Both in the measure, rms or peak, that the controller's data use.");
  const double limit = lastingCurrent(context, w);
  if (!w.has(Part::Demand)) return;
  const double factor = measureFactor(context) / context.result.motor->rmsFactor();
  const double rms =
      w.value(context.result.demand->currentRms * factor,
              {"I_rms", measureLabel(context), Quantity::Current, "A", "from the cycle"});
  w.follows("I_rms", lastingSymbol(context));
  w.compare(rms, limit);
}

void overload(const CheckContext& context, CheckWriter& w) {
  w.formula(
      "max x / ((I_pk\u00b2 \u2212 I_c\u00b2) t_pk), x' = I\u00b2 \u2212 I_c\u00b2, x \u2265 0");
  w.source("I\u00b2t supervision with recovery; common practice, no source");
  w.note(
      "How much of the allowed overload the repeated cycle uses. x counts I\u00b2 \u2212 I_c\u00b2 over time "
      "as the supervision does: it grows above I_c and falls below.");
  const Controller& controller = context.variant().controller;
  const double peak = w.input(controller.currentPeak, "controller.currentPeak");
  const double time = w.input(controller.peakTime, "controller.peakTime");
  const double lasting = lastingCurrent(context, w);
  if (!w.has(Part::Demand) || !isSet(peak) || !isSet(time) || !isSet(lasting)) return;
  const Eigen::ArrayXd current = context.result.demand->current * measureFactor(context);
  const double share = w.value(
      overloadShare(*context.result.cycle, current, lasting, peak, time),
      {"x_max", "Share of the allowed overload", Quantity::Fraction, "%", "from the cycle"});
  w.follows("x_max", "1");
  w.compare(share, 1);
}

constexpr std::array kKinds{
    CheckKind{"controller.current_peak", "Controller peak current", Quantity::Current, "A", false,
              false, nullptr, &currentPeak},
    CheckKind{"controller.current_rms", "Controller rms current", Quantity::Current, "A", false,
              false, nullptr, &currentRms},
    CheckKind{"controller.overload", "Controller overload", Quantity::Fraction, "%", false, false,
              nullptr, &overload},
};

}  // namespace

std::span<const CheckKind> controllerChecks() { return kKinds; }

}  // namespace jw

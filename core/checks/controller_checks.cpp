#include <array>
#include <cmath>
#include <numbers>
#include <span>

#include "core/checks/check_writer.h"

namespace jw {
namespace {

constexpr std::string_view kSource =
    "T = 1.5 p lambda i_q with amplitude-invariant current; rms = amplitude / sqrt(2)";

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
          {"T", "Motor torque there", Quantity::Torque, "N*m", "from the cycle"});
  w.value(context.result.motor->drag(speed),
          {"T_drag", "No-load torque there", Quantity::Torque, "N*m"});
  w.value(context.result.motor->torquePerAmp / measureFactor(context),
          {"K_t", "Torque constant in use, in that measure", Quantity::TorqueConstant, "N*m/A"});
  w.value(peak, {"I_peak", measureLabel(context), Quantity::Current, "A", "from the cycle"});
  w.compare(peak, limit);
}

void currentRms(const CheckContext& context, CheckWriter& w) {
  w.formula("I_rms = sqrt(1/t_c \u222b I\u00b2 dt) against I_c");
  w.source(kSource);
  w.note("Both in the measure, rms or peak, that the controller's data use.");
  const double limit =
      w.input(context.variant().controller.currentContinuous, "controller.currentContinuous");
  if (!w.has(Part::Demand)) return;
  const double factor = measureFactor(context) / context.result.motor->rmsFactor();
  const double rms =
      w.value(context.result.demand->currentRms * factor,
              {"I_rms", measureLabel(context), Quantity::Current, "A", "from the cycle"});
  w.compare(rms, limit);
}

constexpr std::array kKinds{
    CheckKind{"controller.current_peak", "Controller peak current", Quantity::Current, "A", false,
              false, nullptr, &currentPeak},
    CheckKind{"controller.current_rms", "Controller rms current", Quantity::Current, "A", false,
              false, nullptr, &currentRms},
};

}  // namespace

std::span<const CheckKind> controllerChecks() {
  return kKinds;
}

}  // namespace jw

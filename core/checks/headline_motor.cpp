// Headline figures of motor and envelope.
#include <array>
#include <cmath>
#include <span>
#include <string>

#include "core/checks/headline_rows.h"

namespace jw {
namespace {

using namespace headline;

constexpr Derived kTorque{"T_", "Motor torque, rms,", Quantity::Torque, "N*m"};

void torquePeak(C context, W w) {
  const Eigen::Index at = peakAt(context.result.demand->torque);
  const std::string there = w.cycleOrigin(at);
  const Motor& motor = context.variant().motor;
  w.value(context.result.chain->motorTorque[at],
          {"T_ch", "Asked by the chain there", Quantity::Torque, "N*m", there});
  w.input(motor.rotorInertia, "motor.rotorInertia");
  w.input(motor.brakeInertia, "motor.brakeInertia");
  w.value(context.result.chain->motorAcceleration[at],
          {"\u03b1", "Motor acceleration there", Quantity::AngularAcceleration, "rad/s^2", there});
  w.follows("|T_ch + (J_m + J_b) · \u03b1|");
}

void speedPeak(C context, W w) {
  const Eigen::Index at = peakAt(context.result.chain->motorSpeed);
  w.value(context.result.chain->motorSpeed[at],
          {"n", "Motor speed there", Quantity::AngularSpeed, "rpm", w.cycleOrigin(at)});
  w.follows("|n|");
}

void currentPeak(C context, W w) {
  const MotorDemand& demand = *context.result.demand;
  const Eigen::Index at = peakAt(demand.current);
  const std::string there = w.cycleOrigin(at);
  if (demand.weakening.size() > 0) {
    w.note(
        "The field is weakened where the voltage asks for it: I holds i_d "
        "and i_q.");
    w.value(demand.current[at], {"I", "Phase current there", Quantity::Current, "A", there});
    return w.follows("|I|");
  }
  w.value(demand.torque[at], {"T", "Motor torque there", Quantity::Torque, "N*m", there});
  w.value(context.result.motor->drag(context.result.chain->motorSpeed[at]),
          {"T_drag", "No-load torque there", Quantity::Torque, "N*m", there});
  w.value(
      context.result.motor->torquePerAmp,
      {"K", "Torque constant in use, per ampere of amplitude", Quantity::TorqueConstant, "N*m/A"});
  w.follows("|T + T_drag| / K");
}

void torqueConstant(C context, W w) {
  const MotorConstants& machine = *context.result.motor;
  if (machine.direct) {
    w.value(machine.emfPerSpeed, {"K_e", "Voltage constant at the temperature in use",
                                  Quantity::VoltageConstant, "V*s/rad"});
    return w.follows("K_e");
  }
  w.value(machine.polePairs, {"p", "Pole pairs", Quantity::Number, "1", "typed"});
  w.value(machine.fluxLinkage(),
          {"\u03bb", "Flux linkage, peak, at the temperature in use", Quantity::FluxLinkage, "Wb"});
  w.follows("1.5 · p · \u03bb · \u221a(2)");
}

constexpr Headline kRows[] = {
    {"motor.torque_peak", "Peak motor torque", Quantity::Torque, "N*m", hasDemand,
     [](P, E e) { return peak(e.demand->torque); }, "T = largest |T_ch + (J_m + J_b) \u03b1|",
     "Newton and Euler about a fixed axis", &torquePeak},
    {"motor.torque_rms", "Motor torque, root mean square", Quantity::Torque, "N*m", hasDemand,
     [](P, E e) { return e.demand->torqueRms; }, "T_rms = \u221a(\u2211 t_k T_k² / t_c)",
     kMeanSquare, [](C c, W w) { meanSquareByMoves(c, w, c.result.demand->torque, kTorque); }},
    {"motor.speed_peak", "Peak motor speed", Quantity::AngularSpeed, "rpm", hasChain,
     [](P, E e) { return peak(e.chain->motorSpeed); }, "n = largest |n| of the cycle", "Definition",
     &speedPeak},
    {"motor.speed_rms", "Motor speed, root mean square", Quantity::AngularSpeed, "rpm", hasDemand,
     [](P, E e) { return e.demand->speedRms; }, "n_rms = \u221a(\u2211 t_k n_k² / t_c)",
     kMeanSquare,
     [](C c, W w) {
       meanSquareByMoves(c, w, c.result.chain->motorSpeed,
                         {"n_", "Motor speed, rms,", Quantity::AngularSpeed, "rpm"});
     }},
    {"motor.current_peak", "Peak phase current (amplitude)", Quantity::Current, "A", hasDemand,
     [](P, E e) { return peak(e.demand->current); }, "I = largest |T + T_drag| / K",
     "Sine: T = 1.5 p \u03bb i_q in amplitude-invariant current; direct "
     "current: T = K_t I",
     &currentPeak},
    {"motor.current_rms", "Phase current, root mean square", Quantity::Current, "A", hasDemand,
     [](P, E e) { return e.demand->currentRms; }, "I_rms = \u221a(\u2211 t_k I_k² / t_c)",
     kMeanSquare,
     [](C c, W w) {
       meanSquareByMoves(c, w, c.result.demand->current * c.result.motor->rmsFactor(),
                         {"I_", "Phase current, rms,", Quantity::Current, "A"});
     }},
    {"motor.copper_loss_mean", "Mean copper loss", Quantity::Power, "W", hasDemand,
     [](P, E e) { return mean(*e.cycle, e.demand->copperLoss); }, "P_Cu = \u2211 t_k P_k / t_c",
     kMean,
     [](C c, W w) {
       meanByMoves(c, w, c.result.demand->copperLoss,
                   {"P_", "Mean copper loss", Quantity::Power, "W"});
     }},
    {"motor.torque_constant", "Torque constant in use, per ampere rms", Quantity::TorqueConstant,
     "N*m/A", hasMotor, [](P, E e) { return e.motor->torquePerRmsAmp(); },
     "K_t = 1.5 p \u03bb \u221a2 per ampere rms; direct current: K_t = K_e",
     "Sine: T = 1.5 p \u03bb i_q in amplitude-invariant current", &torqueConstant},
    {"envelope.stall_torque", "Peak torque at standstill", Quantity::Torque, "N*m", hasEnvelope,
     [](P, E e) { return e.envelope->stallTorque; },
     "T_0 = largest torque within voltage and current limit at n = 0", kEnvelopeSource,
     [](C c, W w) {
       plain(w, c.result.envelope->stallTorque,
             {"T_0", "Peak torque at standstill", Quantity::Torque, "N*m", "from the envelope"});
     }},
    {"envelope.corner_speed", "Corner speed", Quantity::AngularSpeed, "rpm", hasEnvelope,
     [](P, E e) { return e.envelope->cornerSpeed; }, "n_c: the voltage begins to limit the torque",
     kEnvelopeSource,
     [](C c, W w) {
       plain(w, c.result.envelope->cornerSpeed,
             {"n_c", "Corner speed", Quantity::AngularSpeed, "rpm", "from the envelope"});
     }},
    {"envelope.no_load_speed", "No-load speed", Quantity::AngularSpeed, "rpm", hasEnvelope,
     [](P, E e) { return e.envelope->noLoadSpeed; }, "n_0: the voltage leaves no shaft torque",
     kEnvelopeSource,
     [](C c, W w) {
       plain(w, c.result.envelope->noLoadSpeed,
             {"n_0", "No-load speed", Quantity::AngularSpeed, "rpm", "from the envelope"});
     }},
    {"envelope.continuous_stall_torque", "Continuous torque at standstill", Quantity::Torque, "N*m",
     hasEnvelope, [](P, E e) { return e.envelope->continuousTorque(0); },
     "T_c = least that heat, controller and voltage let last at n = 0", kEnvelopeSource,
     [](C c, W w) {
       plain(w, c.result.envelope->continuousTorque(0),
             {"T_c", "Continuous torque at standstill", Quantity::Torque, "N*m",
              "from the envelope"});
     }},
    {"motor.temperature_winding_peak", "Winding temperature, peak", Quantity::Temperature, "degC",
     hasHeat, [](P, E e) { return e.heat->periodic.windingPeak; },
     "(I \u2212 \u03a6) T = c over the cycle", kHeatSource,
     [](C c, W w) {
       plain(w, c.result.heat->periodic.windingPeak,
             {"T_w", "Winding, peak", Quantity::Temperature, "degC", "from the repeated cycle"});
     }},
    {"motor.temperature_winding_mean", "Winding temperature, mean", Quantity::Temperature, "degC",
     hasHeat, [](P, E e) { return e.heat->periodic.windingMean; },
     "(I \u2212 \u03a6) T = c over the cycle", kHeatSource,
     [](C c, W w) {
       plain(w, c.result.heat->periodic.windingMean,
             {"T_w", "Winding, mean", Quantity::Temperature, "degC", "from the repeated cycle"});
     }},
    {"motor.temperature_housing_peak", "Housing temperature, peak", Quantity::Temperature, "degC",
     hasHeat, [](P, E e) { return e.heat->periodic.housingPeak; },
     "(I \u2212 \u03a6) T = c over the cycle", kHeatSource,
     [](C c, W w) {
       plain(w, c.result.heat->periodic.housingPeak,
             {"T_h", "Housing, peak", Quantity::Temperature, "degC", "from the repeated cycle"});
     }},
};

}  // namespace

std::span<const Headline> motorHeadlines() { return kRows; }

}  // namespace jw

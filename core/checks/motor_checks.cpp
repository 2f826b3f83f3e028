#include <array>
#include <cmath>
#include <span>

#include "core/checks/check_writer.h"

namespace jw {
namespace {

/// What the envelope was made with.
std::string_view machineSource(const CheckContext& context) {
  if (context.variant().motor.kind != MotorKind::Sinusoidal) {
    return "Direct-current machine V = R I + K_e n (Krause, Wasynczuk and Sudhoff, Analysis of "
           "Electric Machinery; from memory)";
  }
  return context.variant().controller.fieldWeakening
             ? "Permanent-magnet machine with field weakening: most torque per ampere, then per "
               "volt, within both limit curves (Krause, Wasynczuk and Sudhoff, Analysis of Electric "
               "Machinery; from memory)"
             : "Permanent-magnet machine with i_d = 0: voltage and current limit circles (Krause, "
               "Wasynczuk and Sudhoff, Analysis of Electric Machinery; from memory)";
}

/// The voltage that the verdict counts with, and what pulls it down.
void showVoltage(const CheckContext& context, CheckWriter& w) {
  const Supply& supply = context.variant().supply;
  w.optionalInput(supply.voltageMin, "supply.voltageMin");
  if (!isSet(supply.voltageMin)) w.optionalInput(supply.voltage, "supply.voltage");
  if (supply.sourceResistance > 0) {
    w.optionalInput(supply.sourceResistance, "supply.sourceResistance");
  }
}

/// A cycle that asks for nothing at all.
void nothingAsked(const CheckContext& context, CheckWriter& w) {
  const double stall = w.value(context.result.envelope->stallTorque,
                               {"T_stall", "Peak torque at standstill", Quantity::Torque, "N*m"});
  w.follows("0", "T_stall");
  w.compare(0, stall);
}

void motorTorque(const CheckContext& context, CheckWriter& w) {
  w.formula("margin = f \u2212 1, f (n, T) on the edge of the envelope");
  w.source(machineSource(context));
  w.note(
      "The instant of the cycle that comes nearest to the peak envelope along the ray from the "
      "origin, speed and torque growing together, at the lowest bus voltage given. Heat is not looked "
      "at here.");
  showVoltage(context, w);
  const bool envelope = w.has(Part::Envelope);
  if (!w.has(Part::Demand) || !envelope) return;
  const TightestPoint& tightest = *context.result.tightest;
  if (tightest.sample < 0) return nothingAsked(context, w);
  const MotorDemand& demand = *context.result.demand;
  w.at(tightest.sample);
  const std::string there = w.cycleOrigin(tightest.sample);
  w.value(context.result.chain->motorSpeed[tightest.sample],
          {"n", "Motor speed there", Quantity::AngularSpeed, "rpm", there});
  const double torque =
      w.value(demand.torque[tightest.sample],
              {"T", "Motor torque there, rotor inertia included", Quantity::Torque, "N*m", there});
  const double factor =
      w.value(tightest.factor, {"f", "Factor to the edge of the envelope", Quantity::Number, "1"});
  w.follows("|T|", "f · |T|");
  w.compare(std::abs(torque), factor * std::abs(torque), factor - 1);
}

void motorSpeed(const CheckContext& context, CheckWriter& w) {
  w.formula("n_peak against the smaller of n_0 and n_max");
  w.source(machineSource(context));
  w.note("n_0 is the speed at which the lowest bus voltage given leaves no shaft torque.");
  const bool envelope = w.has(Part::Envelope);
  if (!w.has(Part::Chain) || !envelope) return;
  Eigen::Index at = 0;
  const double peak = context.result.chain->motorSpeed.abs().maxCoeff(&at);
  w.at(at);
  w.value(peak,
          {"n_peak", "Highest motor speed", Quantity::AngularSpeed, "rpm", w.cycleOrigin(at)});
  showVoltage(context, w);
  w.value(context.result.envelope->lowest.noLoadSpeed,
          {"n_0", "No-load speed", Quantity::AngularSpeed, "rpm"});
  const bool stated = isSet(w.optionalInput(context.variant().motor.maxSpeed, "motor.maxSpeed"));
  w.follows("n_peak", stated ? "min(n_0, n_max)" : "n_0");
  w.compare(peak, context.result.envelope->lowest.speed);
}

/// The way of the heat, from the winding's limit to the ambient.
void showHeatPath(const CheckContext& context, CheckWriter& w) {
  w.input(context.project.requirements.ambient, "requirements.ambient");
  if (!context.result.envelope || !context.result.envelope->continuous) return;
  const ContinuousLimit& limit = *context.result.envelope->continuous;
  w.valueOf("motor.thermalResistanceWinding", limit.winding,
            {"R_12", "Winding to housing", Quantity::ThermalResistance, "K/W"});
  w.value(limit.housing, {"R_2", "Housing to ambient", Quantity::ThermalResistance, "K/W"});
  if (limit.winding == 0) {
    w.note("R_2 stands for the whole way to the ambient, found from the continuous torque.");
  }
  w.value(limit.ambient + limit.rise,
          {"T_w,max", "Winding limit, derated for altitude", Quantity::Temperature, "degC"});
}

void motorContinuous(const CheckContext& context, CheckWriter& w) {
  w.formula(
      "T_rms against T_c(n_rms) = K_t I_c \u2212 T_drag, P_Cu(I_c) (R_12 + R_2) + P_drag R_2 = "
      "T_w,max \u2212 T_a");
  w.source(
      "Steady heat flow through two thermal resistances; rms torque as mean heating "
      "(IEC 60034-1 equivalent continuous duty, from memory)");
  w.note(
      "Heat alone: the controller's continuous current has a check of its own. Good when the cycle is "
      "much shorter than the winding's time constant. Hot surfaces: a "
      "motor at its limit burns skin; see ISO 13732-1.");
  showHeatPath(context, w);
  const bool continuous = w.has(Part::Continuous);
  const bool envelope = w.has(Part::Envelope);
  if (!w.has(Part::Demand) || !envelope || !continuous) return;
  const ContinuousLimit& limit = *context.result.envelope->continuous;
  const MotorDemand& demand = *context.result.demand;
  w.value(demand.torqueRms,
          {"T_rms", "Root-mean-square motor torque", Quantity::Torque, "N*m", "from the cycle"});
  const double speed = w.value(demand.speedRms, {"n_rms", "Root-mean-square motor speed",
                                                 Quantity::AngularSpeed, "rpm", "from the cycle"});
  const double current = limit.current(speed);
  w.value(current * limit.machine.rmsFactor(),
          {"I_c", "Continuous phase current at that speed, rms", Quantity::Current, "A"});
  w.value(limit.machine.torquePerRmsAmp(),
          {"K_t", "Torque constant, warm, per ampere rms", Quantity::TorqueConstant, "N*m/A"});
  const double drag =
      w.value(limit.machine.drag(speed), {"T_drag", "No-load torque", Quantity::Torque, "N*m"});
  w.value(limit.machine.copperLoss(current),
          {"P_Cu", "Copper loss at the winding limit", Quantity::Power, "W"});
  w.value(drag * speed, {"P_drag", "No-load loss", Quantity::Power, "W"});
  w.follows("T_rms", "max(0, K_t · I_c − T_drag)");
  w.compare(demand.torqueRms, std::max(0.0, limit.machine.torquePerAmp * current - drag));
}

constexpr std::array kKinds{
    CheckKind{"motor.torque", "Motor torque at speed", Quantity::Torque, "N*m", false, false,
              nullptr, &motorTorque},
    CheckKind{"motor.speed", "Motor speed", Quantity::AngularSpeed, "rpm", false, false, nullptr,
              &motorSpeed},
    CheckKind{"motor.continuous", "Motor continuous torque", Quantity::Torque, "N*m", false, false,
              nullptr, &motorContinuous},
};

}  // namespace

std::span<const CheckKind> motorChecks() { return kKinds; }

}  // namespace jw

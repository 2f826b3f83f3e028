// Field catalogue of supply, controller and motor.
#include <array>

#include "core/model/field_access.h"

namespace jw {
namespace {

using namespace access;

constexpr ChoiceItem kCurrentMeasures[] = {{"rms", "A rms"}, {"peak", "A peak"}};
constexpr ChoiceItem kModulations[] = {
    {"spaceVector", "space vector"}, {"sineTriangle", "sine-triangle"}, {"sixStep", "six-step"}};
constexpr ChoiceItem kMotorKinds[] = {{"sinusoidal", "three-phase, sine"},
                                      {"block", "three-phase, block"},
                                      {"brushedDc", "brushed DC"}};
constexpr ChoiceItem kConnections[] = {{"star", "star"}, {"delta", "delta"}};
constexpr ChoiceItem kWindingMeasures[] = {{"lineToLine", "line to line"}, {"phase", "one phase"}};
constexpr ChoiceItem kVoltageMeasures[] = {{"lineToLinePeak", "line to line, peak"},
                                           {"lineToLineRms", "line to line, rms"},
                                           {"phasePeak", "phase, peak"},
                                           {"phaseRms", "phase, rms"}};

bool isSine(const Motor& m) {
  return m.kind == MotorKind::Sinusoidal;
}
bool isThreePhase(const Motor& m) {
  return m.kind != MotorKind::BrushedDc;
}
bool hasBrake(const Motor& m) {
  return isSet(m.brakeTorque);
}
bool hasRating(const Motor& m) {
  return isSet(m.continuousTorque);
}
constexpr Applies kSine = &appliesTo<Motor, isSine>;
constexpr Applies kThreePhase = &appliesTo<Motor, isThreePhase>;
constexpr Applies kBrake = &appliesTo<Motor, hasBrake>;
constexpr Applies kRated = &appliesTo<Motor, hasRating>;

const auto& supplyFields() {
  static const std::array kFields{
      number<&Supply::voltage>({"voltage", "Bus voltage", "V_dc",
                                "Direct voltage at the controller; sets the highest speed."},
                               Quantity::Voltage, "V", {0, 1e5, true}),
  };
  return kFields;
}

const auto& controllerFields() {
  static const std::array kFields{
      number<&Controller::currentPeak>(
          {"currentPeak", "Peak current", "I_pk",
           "Largest phase current the controller gives for a short time; caps the peak torque."},
          Quantity::Current, "A", {0, 1e6, true}),
      number<&Controller::currentContinuous>(
          {"currentContinuous", "Continuous current", "I_c",
           "Phase current the controller gives for ever; against the rms of the cycle."},
          Quantity::Current, "A", {0, 1e6, true}),
      choice<&Controller::currentMeasure>(
          {"currentMeasure", "Currents stated in", "",
           "Whether the two currents are rms values or the amplitude of the sine. A direct current "
           "is both."},
          kCurrentMeasures),
      choice<&Controller::modulation>(
          {"modulation", "Modulation", "",
           "Largest phase voltage: V/\u221a3 space vector, V/2 sine-triangle, 2V/\u03c0 six-step.",
           "Holmes and Lipo, Pulse Width Modulation for Power Converters; from memory"},
          kModulations),
      number<&Controller::idlePower>(
          {"idlePower", "Idle power", "P_0", "Power that the electronics draw with no output."},
          Quantity::Power, "W", {0, 1e6}),
      number<&Controller::lossPerAmpere>(
          {"lossPerAmpere", "Loss per ampere", "k_I",
           "Loss proportional to the rms output current, in watts per ampere (volts)."},
          Quantity::Voltage, "V", {0, 1e3}),
      number<&Controller::lossResistance>(
          {"lossResistance", "Loss resistance", "r_I",
           "Loss proportional to the square of the rms output current."},
          Quantity::Resistance, "ohm", {0, 1e3}),
  };
  return kFields;
}

const auto& motorFields() {
  static const std::array kFields{
      choice<&Motor::kind>({"kind", "Kind", "",
                            "Sine currents, block (six-step) commutation, or brushes. The last two "
                            "count as one direct current."},
                           kMotorKinds),
      choice<&Motor::connection>(
          {"connection", "Winding", "", "Star or delta; matters only for figures of one phase."},
          kConnections, kThreePhase),
      integer<&Motor::polePairs>(
          {"polePairs", "Pole pairs", "p", "Pole pairs; electrical over mechanical frequency."},
          {1, 1000}, kThreePhase),
      number<&Motor::torqueConstant>(
          {"torqueConstant", "Torque constant", "K_t",
           "Torque per ampere. One of K_t, K_e, K_v and flux linkage is enough; K_t wins."},
          Quantity::TorqueConstant, "N*m/A", {0, 1e6, true}),
      choice<&Motor::torqueConstantMeasure>(
          {"torqueConstantMeasure", "K_t per", "",
           "Whether the data sheet's ampere is rms or the amplitude of the sine."},
          kCurrentMeasures, kSine),
      number<&Motor::backEmfConstant>({"backEmfConstant", "Back-EMF constant", "K_e",
                                       "Voltage per speed with the terminals open."},
                                      Quantity::VoltageConstant, "V/krpm", {0, 1e9, true}),
      choice<&Motor::backEmfMeasure>(
          {"backEmfMeasure", "K_e measured", "", "Between which points, peak or rms."},
          kVoltageMeasures, kThreePhase),
      number<&Motor::speedConstant>(
          {"speedConstant", "Speed constant", "K_v", "Speed per volt, the inverse of K_e."},
          Quantity::SpeedConstant, "rpm/V", {0, 1e9, true}),
      choice<&Motor::speedConstantMeasure>(
          {"speedConstantMeasure", "K_v measured", "", "Which voltage the speed constant counts."},
          kVoltageMeasures, kThreePhase),
      number<&Motor::fluxLinkage>({"fluxLinkage", "Flux linkage", "\u03bb",
                                   "Peak flux linkage of one phase winding: K_t = 1.5 p \u03bb."},
                                  Quantity::FluxLinkage, "Wb", {0, 1e6, true}, kSine),
      number<&Motor::resistance>(
          {"resistance", "Resistance", "R", "Winding resistance at the data-sheet temperature."},
          Quantity::Resistance, "ohm", {0, 1e6, true}),
      choice<&Motor::resistanceMeasure>({"resistanceMeasure", "R measured", "",
                                         "Between two terminals, or of one phase winding."},
                                        kWindingMeasures, kThreePhase),
      number<&Motor::inductance>(
          {"inductance", "Inductance", "L",
           "Winding inductance; with pole pairs and speed it takes voltage. Not given = 0."},
          Quantity::Inductance, "mH", {0, 1e3}, kSine),
      choice<&Motor::inductanceMeasure>({"inductanceMeasure", "L measured", "",
                                         "Between two terminals, or of one phase winding."},
                                        kWindingMeasures, kSine),
      number<&Motor::rotorInertia>(
          {"rotorInertia", "Rotor inertia", "J_m", "Inertia of the rotor about its shaft."},
          Quantity::Inertia, "kg*cm^2", {0, 1e6, true}),
      number<&Motor::maxSpeed>({"maxSpeed", "Highest speed", "n_max",
                                "Mechanical speed limit. Not given = only the voltage limits."},
                               Quantity::AngularSpeed, "rpm", {0, 1e9, true}),
      number<&Motor::currentPeak>({"currentPeak", "Peak current", "I_max",
                                   "Winding or demagnetization limit. Not given = only the "
                                   "controller limits."},
                                  Quantity::Current, "A", {0, 1e6, true}),
      choice<&Motor::currentPeakMeasure>(
          {"currentPeakMeasure", "Peak current in", "", "Rms or the amplitude of the sine."},
          kCurrentMeasures, kSine),
      number<&Motor::continuousTorque>(
          {"continuousTorque", "Continuous torque", "T_c",
           "Lasting torque at standstill and rating ambient; gives the thermal resistance when "
           "that is not stated."},
          Quantity::Torque, "N*m", {0, 1e9, true}),
      number<&Motor::ratingAmbient>({"ratingAmbient", "Rating ambient", "T_a,r",
                                     "Ambient at which the continuous torque is stated.",
                                     "40 \u00b0C reference: IEC 60034-1, from memory"},
                                    Quantity::Temperature, "degC", {-60, 200}, kRated),
      number<&Motor::windingTemperatureMax>(
          {"windingTemperatureMax", "Winding limit", "T_w,max",
           "Highest winding temperature, by thermal class: B 130, F 155, H 180 \u00b0C.",
           "IEC 60085; read second-hand"},
          Quantity::Temperature, "degC", {0, 400}),
      number<&Motor::thermalResistanceWinding>(
          {"thermalResistanceWinding", "Winding to housing", "R_12",
           "Thermal resistance from winding to housing."},
          Quantity::ThermalResistance, "K/W", {0, 1e6, true}),
      number<&Motor::thermalResistanceHousing>(
          {"thermalResistanceHousing", "Housing to ambient", "R_2",
           "Thermal resistance from housing to ambient, as mounted."},
          Quantity::ThermalResistance, "K/W", {0, 1e6, true}),
      number<&Motor::dragTorque>({"dragTorque", "No-load torque", "T_0",
                                  "Constant part of the no-load torque (bearings, hysteresis)."},
                                 Quantity::Torque, "N*m", {0, 1e6}),
      number<&Motor::dragDamping>({"dragDamping", "No-load damping", "b_m",
                                   "Part of the no-load torque that grows with speed."},
                                  Quantity::TorsionalDamping, "N*m*s/rad", {0, 1e6}),
      number<&Motor::referenceTemperature>(
          {"referenceTemperature", "Data-sheet temperature", "T_ref",
           "Temperature at which resistance and constants are stated."},
          Quantity::Temperature, "degC", {-60, 400}),
      number<&Motor::windingTemperature>(
          {"windingTemperature", "Temperature in use", "T_w",
           "Winding and magnet temperature assumed for the peak envelope and the currents. Not "
           "given = the data-sheet temperature."},
          Quantity::Temperature, "degC", {-60, 400}),
      number<&Motor::copperCoefficient>(
          {"copperCoefficient", "Copper coefficient", "\u03b1_Cu",
           "Rise of resistance per kelvin at 20 \u00b0C.", "IEC 60028; from memory"},
          Quantity::TemperatureCoefficient, "1/K", {0, 0.1}),
      number<&Motor::magnetCoefficient>({"magnetCoefficient", "Magnet coefficient", "\u03b1_B",
                                         "Change of flux per kelvin at 20 \u00b0C: about "
                                         "\u22120.0012 NdFeB, \u22120.002 ferrite.",
                                         "common practice, no source"},
                                        Quantity::TemperatureCoefficient, "1/K", {-0.02, 0.02}),
      number<&Motor::brakeTorque>({"brakeTorque", "Brake holding torque", "T_b",
                                   "Holding torque of a brake on the motor shaft."},
                                  Quantity::Torque, "N*m", {0, 1e9, true}),
      number<&Motor::brakeInertia>({"brakeInertia", "Brake inertia", "J_b",
                                    "Inertia of the brake's rotor on the motor shaft."},
                                   Quantity::Inertia, "kg*cm^2", {0, 1e6}, kBrake),
  };
  return kFields;
}

}  // namespace

template <>
const StructInfo& structInfo<Supply>() {
  static const StructInfo kInfo{"supply", "Supply", supplyFields(), &getAsWritten<Supply>};
  return kInfo;
}

template <>
const StructInfo& structInfo<Controller>() {
  static const StructInfo kInfo{"controller", "Controller", controllerFields(),
                                &getAsWritten<Controller>};
  return kInfo;
}

template <>
const StructInfo& structInfo<Motor>() {
  static const StructInfo kInfo{"motor", "Motor", motorFields(), &getAsWritten<Motor>};
  return kInfo;
}

}  // namespace jw

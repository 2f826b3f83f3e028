// Field catalogue of the motor.
#include <vector>

#include "core/model/choices.h"
#include "core/model/field_access.h"

namespace jw {
namespace {

using namespace access;

constexpr ChoiceItem kMotorKinds[] = {{"sinusoidal", "three-phase, sine"},
                                      {"block", "three-phase, block"},
                                      {"brushedDc", "brushed DC"}};
constexpr ChoiceItem kConnections[] = {{"star", "star"}, {"delta", "delta"}};
constexpr ChoiceItem kWindingMeasures[] = {{"lineToLine", "line to line"}, {"phase", "one phase"}};
constexpr ChoiceItem kVoltageMeasures[] = {{"lineToLinePeak", "line to line, peak"},
                                           {"lineToLineRms", "line to line, rms"},
                                           {"phasePeak", "phase, peak"},
                                           {"phaseRms", "phase, rms"}};

constexpr ChoiceItem kThermalClasses[] = {
    {"stated", "as stated below"}, {"A105", "A, 105 \u00b0C"}, {"E120", "E, 120 \u00b0C"},
    {"B130", "B, 130 \u00b0C"},    {"F155", "F, 155 \u00b0C"}, {"H180", "H, 180 \u00b0C"},
    {"N200", "N, 200 \u00b0C"},    {"R220", "R, 220 \u00b0C"}};

bool isSine(const Motor& m) { return m.kind == MotorKind::Sinusoidal; }
bool isThreePhase(const Motor& m) { return m.kind != MotorKind::BrushedDc; }
bool hasRating(const Motor& m) { return isSet(m.continuousTorque); }
constexpr Applies kSine = &appliesTo<Motor, isSine>;
constexpr Applies kThreePhase = &appliesTo<Motor, isThreePhase>;
constexpr Applies kRated = &appliesTo<Motor, hasRating>;

bool hasMagnetLimit(const Motor& m) { return isSet(m.demagnetizingCurrent); }
bool statesLimit(const Motor& m) { return m.thermalClass == ThermalClass::Stated; }
bool wantsTimeConstant1(const Motor& m) { return !isSet(m.windingCapacity); }
bool wantsTimeConstant2(const Motor& m) { return !isSet(m.housingCapacity); }
bool hasNoLoad(const Motor& m) { return isSet(m.noLoadCurrent); }
bool hasNoLoad2(const Motor& m) { return hasNoLoad(m) && isSet(m.noLoadCurrent2); }
bool statesDrag(const Motor& m) { return !hasNoLoad(m); }
constexpr Applies kMagnet = &appliesTo<Motor, hasMagnetLimit>;
constexpr Applies kStatedLimit = &appliesTo<Motor, statesLimit>;
constexpr Applies kNoC1 = &appliesTo<Motor, wantsTimeConstant1>;
constexpr Applies kNoC2 = &appliesTo<Motor, wantsTimeConstant2>;
constexpr Applies kNoLoad = &appliesTo<Motor, hasNoLoad>;
constexpr Applies kNoLoad2 = &appliesTo<Motor, hasNoLoad2>;
constexpr Applies kStatedDrag = &appliesTo<Motor, statesDrag>;

std::vector<FieldInfo> mainFields() {
  return {
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
      number<&Motor::rotorInertia>(
          {"rotorInertia", "Rotor inertia", "J_m", "Inertia of the rotor about its shaft."},
          Quantity::Inertia, "kg*cm^2", {0, 1e6, true}),
      number<&Motor::maxSpeed>({"maxSpeed", "Highest speed", "n_max",
                                "Mechanical speed limit. Not given = only the voltage limits."},
                               Quantity::AngularSpeed, "rpm", {0, 1e9, true}),
  };
}

std::vector<FieldInfo> constantFields() {
  return {
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
  };
}

std::vector<FieldInfo> windingFields() {
  return {
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
      number<&Motor::inductanceQ>(
          {"inductanceQ", "Inductance, q axis", "L_q",
           "Across the magnet, where it differs; then the one above is along it. Not given = equal."},
          Quantity::Inductance, "mH", {0, 1e3}, kSine),
      choice<&Motor::inductanceMeasure>({"inductanceMeasure", "L measured", "",
                                         "Between two terminals, or of one phase winding."},
                                        kWindingMeasures, kSine),
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
  };
}

std::vector<FieldInfo> currentFields() {
  return {
      number<&Motor::currentPeak>({"currentPeak", "Peak current", "I_max",
                                   "Winding or demagnetization limit. Not given = only the "
                                   "controller limits."},
                                  Quantity::Current, "A", {0, 1e6, true}),
      choice<&Motor::currentPeakMeasure>(
          {"currentPeakMeasure", "Peak current in", "", "Rms or the amplitude of the sine."},
          kCurrentMeasures, kSine),
      number<&Motor::demagnetizingCurrent>(
          {"demagnetizingCurrent", "Magnet current limit", "I_dm",
           "Amplitude (direct current for brushed and block) that begins to harm the magnets."},
          Quantity::Current, "A", {0, 1e6, true}),
      number<&Motor::demagnetizingTemperature>(
          {"demagnetizingTemperature", "stated at", "T_dm", "Magnet temperature of that current."},
          Quantity::Temperature, "degC", {-60, 400}, kMagnet),
      number<&Motor::demagnetizingCoefficient>(
          {"demagnetizingCoefficient", "changing by", "\u03b1_dm",
           "I_dm (1 + \u03b1_dm (T \u2212 T_dm)): negative for NdFeB, positive for ferrite."},
          Quantity::TemperatureCoefficient, "1/K", {-0.1, 0.1}, kMagnet),
  };
}

std::vector<FieldInfo> heatFields() {
  return {
      number<&Motor::continuousTorque>(
          {"continuousTorque", "Continuous torque", "T_c",
           "Continuous torque at standstill and rating ambient; gives the thermal resistance when "
           "that is not stated."},
          Quantity::Torque, "N*m", {0, 1e9, true}),
      number<&Motor::ratingAmbient>({"ratingAmbient", "Rating ambient", "T_a,r",
                                     "Ambient at which the continuous torque is stated.",
                                     "40 \u00b0C reference: IEC 60034-1, from memory"},
                                    Quantity::Temperature, "degC", {-60, 200}, kRated),
      choice<&Motor::thermalClass>(
          {"thermalClass", "Thermal class", "", "Class of the insulation; sets the winding limit.",
           "IEC 60085; read second-hand"},
          kThermalClasses),
      number<&Motor::windingTemperatureMax>(
          {"windingTemperatureMax", "Winding limit", "T_w,max", "Highest winding temperature."},
          Quantity::Temperature, "degC", {0, 400}, kStatedLimit),
      number<&Motor::housingTemperatureMax>(
          {"housingTemperatureMax", "Housing limit", "T_h,max",
           "Highest housing temperature: bearings, encoder, grease."},
          Quantity::Temperature, "degC", {0, 400}),
      number<&Motor::thermalResistanceWinding>(
          {"thermalResistanceWinding", "Winding to housing", "R_12",
           "Thermal resistance from winding to housing."},
          Quantity::ThermalResistance, "K/W", {0, 1e6, true}),
      number<&Motor::thermalResistanceHousing>(
          {"thermalResistanceHousing", "Housing to ambient", "R_2",
           "Thermal resistance from housing to ambient, as mounted."},
          Quantity::ThermalResistance, "K/W", {0, 1e6, true}),
      number<&Motor::mountResistance>(
          {"mountResistance", "Housing to mount", "R_m",
           "Thermal resistance to a plate at ambient temperature, beside R_2. Not given = free air."},
          Quantity::ThermalResistance, "K/W", {0, 1e6, true}),
      number<&Motor::windingCapacity>(
          {"windingCapacity", "Winding heat capacity", "C_1", "Or give the time constant below."},
          Quantity::HeatCapacity, "J/K", {0, 1e9, true}),
      number<&Motor::windingTimeConstant>(
          {"windingTimeConstant", "Winding time constant", "\u03c4_1", "C_1 = \u03c4_1 / R_12."},
          Quantity::Time, "s", {0, 1e9, true}, kNoC1),
      number<&Motor::housingCapacity>(
          {"housingCapacity", "Housing heat capacity", "C_2", "Or give the time constant below."},
          Quantity::HeatCapacity, "J/K", {0, 1e9, true}),
      number<&Motor::housingTimeConstant>({"housingTimeConstant", "Housing time constant",
                                           "\u03c4_2", "C_2 = \u03c4_2 / R_2, in free air."},
                                          Quantity::Time, "min", {0, 1e9, true}, kNoC2),
  };
}

std::vector<FieldInfo> lossFields() {
  return {
      number<&Motor::noLoadCurrent>(
          {"noLoadCurrent", "No-load current", "I_0",
           "Counted as K_t is; gives the no-load torque in place of the two below."},
          Quantity::Current, "A", {0, 1e6, true}),
      number<&Motor::noLoadSpeed>(
          {"noLoadSpeed", "at a speed of", "n_01", "Speed at which the no-load current was read."},
          Quantity::AngularSpeed, "rpm", {0, 1e9, true}, kNoLoad),
      number<&Motor::noLoadCurrent2>({"noLoadCurrent2", "No-load current, second", "I_02",
                                      "A second reading splits the torque into constant and "
                                      "speed-dependent."},
                                     Quantity::Current, "A", {0, 1e6, true}, kNoLoad),
      number<&Motor::noLoadSpeed2>(
          {"noLoadSpeed2", "second at a speed of", "n_02", "Speed of the second reading."},
          Quantity::AngularSpeed, "rpm", {0, 1e9, true}, kNoLoad2),
      number<&Motor::dragTorque>({"dragTorque", "No-load torque", "T_0",
                                  "Constant part of the no-load torque (bearings, hysteresis)."},
                                 Quantity::Torque, "N*m", {0, 1e6}, kStatedDrag),
      number<&Motor::dragDamping>({"dragDamping", "No-load damping", "b_m",
                                   "Part of the no-load torque that grows with speed."},
                                  Quantity::TorsionalDamping, "N*m*s/rad", {0, 1e6}, kStatedDrag),
  };
}

std::vector<FieldInfo> brakeFields() {
  return {
      number<&Motor::brakeTorque>({"brakeTorque", "Brake holding torque", "T_b",
                                   "Holding torque of a brake on the motor shaft."},
                                  Quantity::Torque, "N*m", {0, 1e9, true}),
      number<&Motor::brakeInertia>({"brakeInertia", "Brake inertia", "J_b",
                                    "Inertia of the brake's rotor on the motor shaft."},
                                   Quantity::Inertia, "kg*cm^2", {0, 1e6}),
      number<&Motor::brakeDelay>(
          {"brakeDelay", "Brake delay", "t_b", "From the order to stop until the brake grips."},
          Quantity::Time, "ms", {0, 1e6}),
      number<&Motor::brakeStopEnergy>({"brakeStopEnergy", "Brake energy a stop", "W_b",
                                       "Energy that the brake may take up in one stop."},
                                      Quantity::Energy, "J", {0, 1e12, true}),
      number<&Motor::brakePower>(
          {"brakePower", "Brake power", "P_b", "Mean power that the brake can shed."},
          Quantity::Power, "W", {0, 1e9, true}),
  };
}

std::vector<FieldInfo> encoderFields() {
  return {
      integer<&Motor::encoderSteps>(
          {"encoderSteps", "Encoder steps", "z_m", "Of the motor's encoder, a turn; 0 = none."},
          {0, 1e9}),
      integer<&Motor::jointEncoderSteps>({"jointEncoderSteps", "Joint encoder steps", "z_J",
                                          "Of an encoder at the joint, a turn; 0 = none."},
                                         {0, 1e9}),
  };
}

std::vector<FieldInfo> bodyFields() {
  return {
      number<&Motor::mass>({"mass", "Mass", "m_m", "With encoder and brake."}, Quantity::Mass, "kg",
                           {0, 1e6, true}),
      number<&Motor::length>({"length", "Length", "l_m", "Along the axis, with encoder and brake."},
                             Quantity::Length, "mm", {0, 1e6, true}),
      number<&Motor::diameter>({"diameter", "Outside diameter", "D_m", "Of the housing."},
                               Quantity::Length, "mm", {0, 1e6, true}),
  };
}

const std::vector<FieldInfo>& motorFields() {
  static const std::vector<FieldInfo> kFields = joined({
      {"", mainFields()},
      {"Torque and voltage constants", constantFields()},
      {"Winding", windingFields()},
      {"Current limits", currentFields()},
      {"Heat", heatFields()},
      {"No-load loss", lossFields()},
      {"Brake", brakeFields()},
      {"Encoders", encoderFields()},
      {"Mass and size", bodyFields()},
  });
  return kFields;
}

}  // namespace

template <>
const StructInfo& structInfo<Motor>() {
  static const StructInfo kInfo{"motor", "Motor", motorFields(), &getAsWritten<Motor>};
  return kInfo;
}

}  // namespace jw

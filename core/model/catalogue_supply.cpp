// Field catalogue of supply and controller.
#include <array>

#include "core/model/choices.h"
#include "core/model/field_access.h"

namespace jw {
namespace {

using namespace access;

constexpr ChoiceItem kModulations[] = {
    {"spaceVector", "space vector"}, {"sineTriangle", "sine-triangle"}, {"sixStep", "six-step"}};

bool keepsEnergy(const Supply& s) { return !s.takesBack; }
bool brakes(const Supply& s) { return !s.takesBack && isSet(s.brakeResistance); }
bool derates(const Controller& c) { return isSet(c.heatSink); }
constexpr Applies kKeeps = &appliesTo<Supply, keepsEnergy>;
constexpr Applies kBrakes = &appliesTo<Supply, brakes>;
constexpr Applies kDerates = &appliesTo<Controller, derates>;

const auto& supplyFields() {
  static const std::array kFields{
      number<&Supply::voltage>({"voltage", "Bus voltage", "V_dc",
                                "Direct voltage at the controller; sets the highest speed."},
                               Quantity::Voltage, "V", {0, 1e5, true}),
      number<&Supply::voltageMin>({"voltageMin", "Lowest voltage", "V_min",
                                   "E.g. battery nearly empty. Not given = the bus voltage."},
                                  Quantity::Voltage, "V", {0, 1e5, true}),
      number<&Supply::voltageMax>({"voltageMax", "Highest voltage", "V_max",
                                   "E.g. battery full. Not given = the bus voltage."},
                                  Quantity::Voltage, "V", {0, 1e5, true}),
      number<&Supply::sourceResistance>(
          {"sourceResistance", "Source resistance", "R_s",
           "Of source and leads; the bus sags: V = (V_0 + \u221a(V_0\u00b2 \u2212 4 R_s P)) / 2."},
          Quantity::Resistance, "ohm", {0, 1e4}),
      number<&Supply::powerPeak>(
          {"powerPeak", "Peak power", "P_pk", "What the source gives for a moment."},
          Quantity::Power, "W", {0, 1e9, true}),
      number<&Supply::powerMean>(
          {"powerMean", "Continuous power", "P_c", "What the source gives for ever."}, Quantity::Power,
          "W", {0, 1e9, true}),
      number<&Supply::shift>(
          {"shift", "Shift", "t_sh", "Running time between charges; for the charge drawn."},
          Quantity::Time, "h", {0, 1e5, true}),
      flag<&Supply::takesBack>({"takesBack", "Takes power back", "",
                                "Whether the source accepts returned power, as a battery does."}),
      number<&Supply::busCapacitance>(
          {"busCapacitance", "Bus capacitance", "C",
           "Stores returned energy: C (V\u00b2 \u2212 V_dc\u00b2) / 2."},
          Quantity::Capacitance, "mF", {0, 1e6, true}, kKeeps),
      number<&Supply::busVoltageMax>({"busVoltageMax", "Voltage limit", "V_lim",
                                      "Highest voltage that everything on the bus stands."},
                                     Quantity::Voltage, "V", {0, 1e5, true}),
      number<&Supply::brakeVoltage>({"brakeVoltage", "Resistor switches at", "V_br",
                                     "Bus voltage at which the brake resistor is switched on."},
                                    Quantity::Voltage, "V", {0, 1e5, true}, kKeeps),
      number<&Supply::brakeResistance>({"brakeResistance", "Brake resistor", "R_br",
                                        "Turns returned energy into heat. Not given = none."},
                                       Quantity::Resistance, "ohm", {0, 1e6, true}, kKeeps),
      number<&Supply::brakePowerPeak>({"brakePowerPeak", "Resistor peak power", "P_br",
                                       "What resistor and switch take for a moment."},
                                      Quantity::Power, "W", {0, 1e9, true}, kBrakes),
      number<&Supply::brakePowerMean>({"brakePowerMean", "Resistor continuous power", "P_br,c",
                                       "What the resistor takes for ever."},
                                      Quantity::Power, "W", {0, 1e9, true}, kBrakes),
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
      flag<&Controller::fieldWeakening>(
          {"fieldWeakening", "Field weakening", "",
           "Whether the controller weakens the magnet's field to go faster: most torque per ampere, "
           "then most torque per volt. No = i_d = 0."}),
      number<&Controller::voltageReserve>(
          {"voltageReserve", "Voltage reserve", "r_V",
           "Share of the voltage that is left to the current controller."},
          Quantity::Fraction, "%", {0, 50}),
      number<&Controller::peakTime>(
          {"peakTime", "Peak current lasts", "t_pk",
           "How long the peak current may last: (I_pk\u00b2 \u2212 I_c\u00b2) t_pk is what may gather."},
          Quantity::Time, "s", {0, 1e6, true}),
      number<&Controller::heatSink>({"heatSink", "Heat-sink temperature", "T_s",
                                     "Assumed in use; with the two below it derates I_c."},
                                    Quantity::Temperature, "degC", {-60, 300}),
      number<&Controller::deratingStart>({"deratingStart", "Derating starts", "T_s1",
                                          "Heat-sink temperature up to which I_c holds."},
                                         Quantity::Temperature, "degC", {-60, 300}, kDerates),
      number<&Controller::deratingEnd>({"deratingEnd", "Derating ends", "T_s2",
                                        "Heat-sink temperature at which no current is left."},
                                       Quantity::Temperature, "degC", {-60, 300}, kDerates),
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

}  // namespace jw

// Field catalogue of a transmission stage.
#include <vector>

#include "core/model/field_access.h"

namespace jw {

namespace catalogue {
std::vector<FieldInfo> geometryFields();  // catalogue_geometry.cpp
}

namespace {

using namespace access;
using Fields = std::vector<FieldInfo>;

constexpr ChoiceItem kFamilies[] = {{"planetary", "planetary"},
                                    {"cycloidal", "cycloidal"},
                                    {"strainWave", "strain wave"},
                                    {"traction", "traction"},
                                    {"belt", "belt"},
                                    {"coupling", "coupling"},
                                    {"givenRatio", "given ratio"},
                                    {"parallelShaft", "parallel shaft"}};
constexpr ChoiceItem kRollingElements[] = {{"ball", "balls"}, {"roller", "rollers"}};

template <StageFamily... Families>
bool isOneOf(const Stage& s) {
  return ((s.family == Families) || ...);
}
template <StageFamily... Families>
constexpr Applies kOnly = &appliesTo<Stage, &isOneOf<Families...>>;

bool isReducer(const Stage& s) { return !isOneOf<StageFamily::Belt, StageFamily::Coupling>(s); }
bool needsRating(const Stage& s) { return isReducer(s) || s.dragTorque != 0; }

constexpr Applies kReducer = &appliesTo<Stage, isReducer>;
constexpr Applies kRating = &appliesTo<Stage, needsRating>;

Fields mainFields() {
  return {
      text<&Stage::name>({"name", "Name", "", "A name of your own for this stage."}),
      choice<&Stage::family>({"family", "Family", "", "What kind of stage this is."}, kFamilies),
      number<&Stage::ratio>({"ratio", "Ratio", "N",
                             "Input speed over output speed. Not given = from teeth, pins or "
                             "diameters."},
                            Quantity::Ratio, "1", {0.001, 1e5}),
      flag<&Stage::reverses>(
          {"reverses", "Output reversed", "", "Whether the output turns against the input."}),
  };
}

Fields frictionFields() {
  return {
      number<&Stage::efficiency>(
          {"efficiency", "Efficiency at rated", "\u03b7",
           "Overall efficiency at rated torque and speed, motor driving, drag included. Not given "
           "= from the friction of the parts."},
          Quantity::Fraction, "1", {0, 1, true}),
      number<&Stage::backdrivingEfficiency>(
          {"backdrivingEfficiency", "Back-driving efficiency", "\u03b7_b",
           "Load-dependent efficiency with the load driving; 0 or less locks itself. Not given = "
           "2 \u2212 1/\u03b7.",
           "2 \u2212 1/\u03b7: common practice, no source"},
          Quantity::Fraction, "1", {-100, 1}),
      number<&Stage::dragTorque>({"dragTorque", "No-load torque", "T_d",
                                  "Torque that turns the unloaded stage slowly, at its input."},
                                 Quantity::Torque, "N*m", {0, 1e6}),
      number<&Stage::dragDamping>(
          {"dragDamping", "No-load torque per speed", "b_d",
           "Rise of the no-load torque with the input speed. Not given = none."},
          Quantity::TorsionalDamping, "N*m*s/rad", {0, 1e6}),
      text<&Stage::greaseTable>(
          {"greaseTable", "Grease factors", "",
           "Factors on the no-load torque by temperature, from the maker's curve: \"-20 degC 2.4; "
           "0 degC 1.5; 20 degC 1\"."}),
      number<&Stage::greaseTemperature>({"greaseTemperature", "Grease temperature", "T_g",
                                         "For the grease factors. Not given = ambient."},
                                        Quantity::Temperature, "degC", {-100, 300}),
      number<&Stage::startingTorque>({"startingTorque", "Starting torque", "T_0",
                                      "Breaks the unloaded stage loose, at its input."},
                                     Quantity::Torque, "N*m", {0, 1e6}),
      number<&Stage::backdrivingTorque>({"backdrivingTorque", "Back-driving start torque", "T_b0",
                                         "Breaks the unloaded stage loose from its output."},
                                        Quantity::Torque, "N*m", {0, 1e9}),
      number<&Stage::heatShare>(
          {"heatShare", "Loss into the motor", "s",
           "Share of this stage's loss that heats the motor's housing; near 1 "
           "in an integrated actuator."},
          Quantity::Fraction, "1", {0, 1}),
  };
}

Fields inertiaFields() {
  return {
      number<&Stage::inertia>({"inertia", "Inertia at input", "J_in",
                               "Turns with the input shaft. Not given = from teeth, module and "
                               "width where they are, else none."},
                              Quantity::Inertia, "kg*cm^2", {0, 1e6}),
      number<&Stage::outputInertia>({"outputInertia", "Inertia at output", "J_out",
                                     "Inertia that turns with the output shaft."},
                                    Quantity::Inertia, "kg*cm^2", {0, 1e6}),
      number<&Stage::mass>({"mass", "Mass", "m", "Of the stage alone."}, Quantity::Mass, "kg",
                           {0, 1e6, true}),
      number<&Stage::length>({"length", "Length", "l", "Along the axis."}, Quantity::Length, "mm",
                             {0, 1e6, true}),
      number<&Stage::diameter>({"diameter", "Outside diameter", "D", "Of the housing."},
                               Quantity::Length, "mm", {0, 1e6, true}),
  };
}

Fields ratingFields() {
  return {
      number<&Stage::ratedTorque>({"ratedTorque", "Rated torque", "T_r",
                                   "Output torque for which life and efficiency are stated."},
                                  Quantity::Torque, "N*m", {0, 1e9, true}, kRating),
      number<&Stage::averageTorque>({"averageTorque", "Average torque limit", "T_A",
                                     "Limit of the mean output torque. Not given = rated torque."},
                                    Quantity::Torque, "N*m", {0, 1e9, true}, kReducer),
      number<&Stage::peakTorque>({"peakTorque", "Repeated peak torque", "T_p",
                                  "Output torque allowed at every start and stop."},
                                 Quantity::Torque, "N*m", {0, 1e9, true}),
      number<&Stage::momentaryTorque>(
          {"momentaryTorque", "Momentary torque", "T_m",
           "Output torque allowed a few times in its life: emergency stop, collision."},
          Quantity::Torque, "N*m", {0, 1e9, true}),
      number<&Stage::averageSpeed>(
          {"averageSpeed", "Average input speed", "n_A", "Limit of the mean input speed."},
          Quantity::AngularSpeed, "rpm", {0, 1e9, true}, kReducer),
      number<&Stage::peakSpeed>(
          {"peakSpeed", "Highest input speed", "n_p", "Limit of the input speed at any time."},
          Quantity::AngularSpeed, "rpm", {0, 1e9, true}),
      number<&Stage::ratedSpeed>(
          {"ratedSpeed", "Rated input speed", "n_r", "Input speed for which the life is stated."},
          Quantity::AngularSpeed, "rpm", {0, 1e9, true}, kReducer),
      number<&Stage::ratedLife>({"ratedLife", "Rated life", "L_r",
                                 "Running hours at rated torque and speed, at 90 % reliability."},
                                Quantity::Time, "h", {0, 1e9, true}, kReducer),
      number<&Stage::lifeExponent>({"lifeExponent", "Life exponent", "p",
                                    "Exponent of torque in life: 3 ball, 10/3 roller bearings.",
                                    "ISO 281; read second-hand"},
                                   Quantity::Number, "1", {1, 12}, kReducer),
  };
}

Fields precisionFields() {
  constexpr Range kStiff{0, 1e12, true};
  return {
      number<&Stage::backlash>(
          {"backlash", "Backlash", "b", "Whole play at the output with the input held."},
          Quantity::Angle, "arcmin", {0, 3600}),
      number<&Stage::hysteresis>({"hysteresis", "Hysteresis", "h",
                                  "Width of the wind-up loop at no torque, without the play."},
                                 Quantity::Angle, "arcmin", {0, 3600}),
      number<&Stage::transmissionError>({"transmissionError", "Transmission error", "e",
                                         "Peak to peak at the output over a turn, unloaded."},
                                        Quantity::Angle, "arcsec", {0, 3600}),
      number<&Stage::stiffness, &PiecewiseStiffness::first>(
          {"stiffness", "Stiffness", "K_1",
           "Output torque over wind-up, below the first torque or throughout. Not given = rigid, "
           "or from the belt's spans."},
          Quantity::TorsionalStiffness, "N*m/arcmin", kStiff),
      number<&Stage::stiffness, &PiecewiseStiffness::firstTorque>(
          {"stiffnessTorque1", "First torque", "T_1", "Up to here K_1 holds."}, Quantity::Torque,
          "N*m", {0, 1e9, true}),
      number<&Stage::stiffness, &PiecewiseStiffness::second>(
          {"stiffness2", "Stiffness above it", "K_2", "Slope between first and second torque."},
          Quantity::TorsionalStiffness, "N*m/arcmin", kStiff),
      number<&Stage::stiffness, &PiecewiseStiffness::secondTorque>(
          {"stiffnessTorque2", "Second torque", "T_2", "Up to here K_2 holds."}, Quantity::Torque,
          "N*m", {0, 1e9, true}),
      number<&Stage::stiffness, &PiecewiseStiffness::third>(
          {"stiffness3", "Stiffness above that", "K_3", "Slope above the second torque."},
          Quantity::TorsionalStiffness, "N*m/arcmin", kStiff),
  };
}

Fields bearingFields() {
  return {
      choice<&Stage::bearing, &OutputBearing::element>(
          {"bearingElement", "Rolling elements", "",
           "Life falls with load cubed for balls, to the power 10/3 for rollers.", "ISO 281"},
          kRollingElements),
      number<&Stage::bearing, &OutputBearing::dynamicRating>(
          {"bearingDynamicRating", "Dynamic load rating", "C",
           "Load for a million turns at 90 % reliability.", "ISO 281"},
          Quantity::Force, "kN", {0, 1e6, true}),
      number<&Stage::bearing, &OutputBearing::staticRating>(
          {"bearingStaticRating", "Static load rating", "C_0", "Static load rating.", "ISO 76"},
          Quantity::Force, "kN", {0, 1e6, true}),
      number<&Stage::bearing, &OutputBearing::pitchDiameter>(
          {"bearingPitchDiameter", "Pitch diameter", "d_pw", "Circle of the rolling elements."},
          Quantity::Length, "mm", {0, 1e5, true}),
      number<&Stage::bearing, &OutputBearing::allowedMoment>(
          {"bearingMoment", "Tilting moment allowed", "M_c", "As the data sheet states it."},
          Quantity::Torque, "N*m", {0, 1e9, true}),
      number<&Stage::bearing, &OutputBearing::staticFactor>(
          {"bearingStaticFactor", "Static safety wanted", "s_0",
           "C_0 over the static equivalent load. Not given = 1.5.", "common practice, no source"},
          Quantity::Number, "1", {0.5, 20}),
  };
}

}  // namespace

template <>
const StructInfo& structInfo<Stage>() {
  static const Fields kFields = [] {
    Fields all = joined({{"", mainFields()},
                         {"Efficiency and friction", frictionFields()},
                         {"Rating and life", ratingFields()},
                         {"Stiffness and play", precisionFields()},
                         {"Output bearing", bearingFields()},
                         {"Inertia, mass and size", inertiaFields()}});
    const Fields geometry = catalogue::geometryFields();
    all.insert(all.begin() + 4, geometry.begin(), geometry.end());
    return all;
  }();
  static const StructInfo kInfo{"transmission", "Drive", kFields, &getAsWritten<Stage>};
  return kInfo;
}

}  // namespace jw

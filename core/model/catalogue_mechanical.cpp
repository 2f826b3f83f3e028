// Field catalogue of stages, load, cycle, requirements, variant and project.
#include <array>

#include "core/model/field_access.h"

namespace jw {
namespace {

using namespace access;

constexpr ChoiceItem kFamilies[] = {
    {"planetary", "planetary"},   {"cycloidal", "cycloidal"}, {"strainWave", "strain wave"},
    {"traction", "traction"},     {"belt", "belt"},           {"coupling", "coupling"},
    {"givenRatio", "given ratio"}};
constexpr ChoiceItem kLaws[] = {{"trapezoidal", "trapezoidal speed"},
                                {"jerkLimited", "jerk-limited"},
                                {"polynomial345", "3-4-5 polynomial"},
                                {"polynomial4567", "4-5-6-7 polynomial"},
                                {"sineAcceleration", "sine acceleration"},
                                {"harmonic", "simple harmonic"},
                                {"modifiedTrapezoid", "modified trapezoid"},
                                {"modifiedSine", "modified sine"},
                                {"sinusoid", "steady sinusoid"},
                                {"dwell", "dwell"},
                                {"table", "table"}};
constexpr ChoiceItem kTouchContacts[] = {{"notTouched", "not touched"}, {"oneSecond", "1 s"},
                                         {"tenSeconds", "10 s"},        {"oneMinute", "1 min"},
                                         {"tenMinutes", "10 min"},      {"eightHours", "8 h"}};
constexpr ChoiceItem kHoldingMeans[] = {
    {"brake", "brake on the motor shaft"}, {"motor", "motor torque"}, {"notNeeded", "not needed"}};

bool isReducer(const Stage& s) {
  return s.family != StageFamily::Belt && s.family != StageFamily::Coupling;
}
bool needsRating(const Stage& s) { return isReducer(s) || s.dragTorque != 0; }
bool travels(const Segment& s) { return s.law != MotionLaw::Dwell && s.law != MotionLaw::Table; }
bool hasDuration(const Segment& s) { return s.law != MotionLaw::Table; }
bool hasRamps(const Segment& s) {
  return s.law == MotionLaw::Trapezoidal || s.law == MotionLaw::JerkLimited;
}
bool hasJerk(const Segment& s) { return s.law == MotionLaw::JerkLimited; }
bool isSinusoid(const Segment& s) { return s.law == MotionLaw::Sinusoid; }
bool isTable(const Segment& s) { return s.law == MotionLaw::Table; }
bool mustHold(const Requirements& r) { return r.holdingMeans != HoldingMeans::NotNeeded; }

constexpr Applies kReducer = &appliesTo<Stage, isReducer>;
constexpr Applies kRating = &appliesTo<Stage, needsRating>;
constexpr Applies kTravels = &appliesTo<Segment, travels>;
constexpr Applies kTimed = &appliesTo<Segment, hasDuration>;
constexpr Applies kRamps = &appliesTo<Segment, hasRamps>;
constexpr Applies kJerk = &appliesTo<Segment, hasJerk>;
constexpr Applies kSinusoid = &appliesTo<Segment, isSinusoid>;
constexpr Applies kTable = &appliesTo<Segment, isTable>;
constexpr Applies kHolds = &appliesTo<Requirements, mustHold>;

const auto& stageFields() {
  static const std::array kFields{
      text<&Stage::name>({"name", "Name", "", "A name of your own for this stage."}),
      choice<&Stage::family>({"family", "Family", "", "What kind of stage this is."}, kFamilies),
      number<&Stage::ratio>({"ratio", "Ratio", "N", "Input speed over output speed."},
                            Quantity::Ratio, "1", {0.001, 1e5}),
      flag<&Stage::reverses>(
          {"reverses", "Output reversed", "", "Whether the output turns against the input."}),
      number<&Stage::efficiency>(
          {"efficiency", "Efficiency at rated", "\u03b7",
           "Overall efficiency at rated torque and speed, motor driving, drag included."},
          Quantity::Fraction, "1", {0, 1, true}),
      number<&Stage::backdrivingEfficiency>(
          {"backdrivingEfficiency", "Back-driving efficiency", "\u03b7_b",
           "Load-dependent efficiency with the load driving; 0 or less locks itself. Not given = "
           "2 \u2212 1/\u03b7.",
           "2 \u2212 1/\u03b7: common practice, no source"},
          Quantity::Fraction, "1", {-100, 1}),
      number<&Stage::dragTorque>({"dragTorque", "No-load torque", "T_d",
                                  "Torque that turns the unloaded stage, at its input."},
                                 Quantity::Torque, "N*m", {0, 1e6}),
      number<&Stage::heatShare>(
          {"heatShare", "Loss into the motor", "s",
           "Share of this stage's loss that heats the motor's housing; near 1 "
           "in an integrated actuator."},
          Quantity::Fraction, "1", {0, 1}),
      number<&Stage::inertia>(
          {"inertia", "Inertia at input", "J_in", "Inertia that turns with the input shaft."},
          Quantity::Inertia, "kg*cm^2", {0, 1e6}),
      number<&Stage::outputInertia>({"outputInertia", "Inertia at output", "J_out",
                                     "Inertia that turns with the output shaft."},
                                    Quantity::Inertia, "kg*cm^2", {0, 1e6}),
      number<&Stage::ratedTorque>({"ratedTorque", "Rated torque", "T_r",
                                   "Output torque for which life and efficiency are stated."},
                                  Quantity::Torque, "N*m", {0, 1e9, true}, kRating),
      number<&Stage::averageTorque>({"averageTorque", "Average torque limit", "T_A",
                                     "Limit of the mean output torque. Not given = rated torque."},
                                    Quantity::Torque, "N*m", {0, 1e9, true}, kReducer),
      number<&Stage::peakTorque>({"peakTorque", "Repeated peak torque", "T_p",
                                  "Output torque allowed at every start and stop."},
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
  return kFields;
}

const auto& loadFields() {
  static const std::array kFields{
      number<&Load::inertia>({"inertia", "Link inertia", "J_L",
                              "Inertia of the moved link about the joint axis, without payload."},
                             Quantity::Inertia, "kg*m^2", {0, 1e9}),
      number<&Load::linkMass>({"linkMass", "Link mass", "m_L", "Mass of the moved link."},
                              Quantity::Mass, "kg", {0, 1e7}),
      number<&Load::linkDistance>(
          {"linkDistance", "Link centre", "r_L", "From the axis to the link's centre of mass."},
          Quantity::Length, "m", {0, 1e4}),
      number<&Load::linkAngle>({"linkAngle", "Link offset angle", "\u03c6_L",
                                "Of the link's centre of mass against the joint angle."},
                               Quantity::Angle, "deg", {-360, 360}),
      number<&Load::payloadMass>(
          {"payloadMass", "Payload", "m", "Mass carried; a move may differ."}, Quantity::Mass, "kg",
          {0, 1e7}),
      number<&Load::payloadDistance>(
          {"payloadDistance", "Reach", "r", "From the axis to the payload's centre of mass."},
          Quantity::Length, "m", {0, 1e4}),
      number<&Load::payloadAngle>({"payloadAngle", "Payload offset angle", "\u03c6",
                                   "Of the payload against the joint angle."},
                                  Quantity::Angle, "deg", {-360, 360}),
      number<&Load::payloadInertia>({"payloadInertia", "Payload inertia", "J_p",
                                     "Of the payload about its own centre of mass."},
                                    Quantity::Inertia, "kg*m^2", {0, 1e9}),
      number<&Load::axisTilt>(
          {"axisTilt", "Axis tilt", "\u03b2",
           "0 = axis horizontal, full gravity; 90\u00b0 = axis vertical, none."},
          Quantity::Angle, "deg", {-180, 180}),
      number<&Load::gravity>({"gravity", "Gravity", "g", "Acceleration of free fall.",
                              "9.80665 m/s\u00b2: ISO 80000-3, from memory"},
                             Quantity::Acceleration, "m/s^2", {0, 1000}),
      number<&Load::coulombFriction>({"coulombFriction", "Dry friction", "c_c",
                                      "Constant friction at the joint, opposing motion."},
                                     Quantity::Torque, "N*m", {0, 1e9}),
      number<&Load::viscousFriction>(
          {"viscousFriction", "Viscous friction", "c_v", "Friction at the joint per speed."},
          Quantity::TorsionalDamping, "N*m*s/rad", {0, 1e9}),
      number<&Load::springStiffness>({"springStiffness", "Spring stiffness", "k_s",
                                      "Counterbalance torsion spring: torque k_s (q \u2212 q_0)."},
                                     Quantity::TorsionalStiffness, "N*m/rad", {0, 1e9}),
      number<&Load::springAngle>({"springAngle", "Spring slack angle", "q_0",
                                  "Joint angle at which the spring gives no torque."},
                                 Quantity::Angle, "deg", {-3600, 3600}),
      number<&Load::balanceTorque>({"balanceTorque", "Balance torque", "T_bal",
                                    "Constant counterbalance; positive helps lifting."},
                                   Quantity::Torque, "N*m", {-1e9, 1e9}),
      number<&Load::externalTorque>({"externalTorque", "External torque", "T_ext",
                                     "Constant process torque; positive opposes positive motion."},
                                    Quantity::Torque, "N*m", {-1e9, 1e9}),
  };
  return kFields;
}

const auto& segmentFields() {
  static const std::array kFields{
      text<&Segment::name>({"name", "Name", "", "A name of your own for this move."}),
      choice<&Segment::law>({"law", "Motion law", "", "How the move speeds up and slows down."},
                            kLaws),
      number<&Segment::travel>({"travel", "Travel", "\u0394q",
                                "End angle less start angle; the amplitude of a steady sinusoid."},
                               Quantity::Angle, "deg", {-1e7, 1e7}, kTravels),
      number<&Segment::duration>({"duration", "Duration", "t", "Time that the move takes."},
                                 Quantity::Time, "s", {0, 1e9, true}, kTimed),
      number<&Segment::accelShare>(
          {"accelShare", "Share speeding up", "a_1", "Share of the duration spent speeding up."},
          Quantity::Fraction, "1", {0, 1, true}, kRamps),
      number<&Segment::decelShare>(
          {"decelShare", "Share slowing down", "a_2", "Share of the duration spent slowing down."},
          Quantity::Fraction, "1", {0, 1, true}, kRamps),
      number<&Segment::jerkShare>({"jerkShare", "Jerk share", "a_j",
                                   "Share of each speed change spent in each of its jerk phases."},
                                  Quantity::Fraction, "1", {0, 0.5, true}, kJerk),
      number<&Segment::periods>({"periods", "Periods", "n", "Full periods within the duration."},
                                Quantity::Number, "1", {0, 1e6, true}, kSinusoid),
      number<&Segment::smoothing>({"smoothing", "Smoothing window", "t_s",
                                   "Window of the least-squares fit that gives speed and "
                                   "acceleration where the table has none.",
                                   "Savitzky and Golay, Anal. Chem. 36 (1964) 1627; from memory"},
                                  Quantity::Time, "s", {0, 1e6, true}, kTable),
      number<&Segment::payloadMass>(
          {"payloadMass", "Payload in this move", "m", "Not given = the load's payload."},
          Quantity::Mass, "kg", {0, 1e7}),
      number<&Segment::externalTorque>({"externalTorque", "External torque", "T_ext",
                                        "Added to the load's; positive opposes positive motion."},
                                       Quantity::Torque, "N*m", {-1e9, 1e9}),
  };
  return kFields;
}

const auto& cycleFields() {
  static const std::array kFields{
      number<&Cycle::startAngle>({"startAngle", "Start angle", "q_s",
                                  "Joint angle at the start; 0 = link horizontal, positive up."},
                                 Quantity::Angle, "deg", {-1e7, 1e7}),
      integer<&Cycle::samples>(
          {"samples", "Samples", "n", "Samples over the cycle; tables keep every row."}, {5, 1e7}),
  };
  return kFields;
}

const auto& requirementFields() {
  static const std::array kFields{
      number<&Requirements::targetMargin>(
          {"targetMargin", "Target margin", "m",
           "A check whose margin is smaller is close; negative is short."},
          Quantity::Fraction, "%", {0, 1000}),
      number<&Requirements::life>({"life", "Wanted life", "L_w", "Running hours of the cycle."},
                                  Quantity::Time, "h", {0, 1e9, true}),
      number<&Requirements::ambient>({"ambient", "Ambient", "T_a", "Air around the actuator."},
                                     Quantity::Temperature, "degC", {-60, 200}),
      number<&Requirements::altitude>({"altitude", "Altitude", "h",
                                       "Above 1000 m thin air lowers the permissible rise by 1 % "
                                       "per 100 m.",
                                       "IEC 60034-1, from memory"},
                                      Quantity::Length, "m", {-500, 4000}),
      number<&Requirements::onTime>({"onTime", "Intermittent on-time", "t_on",
                                     "Draws the torque that may last this long from cold, S2.",
                                     "IEC 60034-1 duty type S2, read second-hand"},
                                    Quantity::Time, "min", {0, 1e6, true}),
      choice<&Requirements::touchContact>(
          {"touchContact", "Housing touched for", "",
           "How long bare skin may rest on the bare metal of the housing.",
           "ISO 13732-1, from memory: provisional"},
          kTouchContacts),
      number<&Requirements::inertiaRatioMax>(
          {"inertiaRatioMax", "Inertia ratio limit", "\u03ba_max",
           "Reflected load inertia over motor inertia; a guideline for control.",
           "common practice, no source"},
          Quantity::Number, "1", {0, 1e9, true}),
      choice<&Requirements::holdingMeans>(
          {"holdingMeans", "Held by", "", "What holds the joint against gravity."}, kHoldingMeans),
      number<&Requirements::holdingFactor>(
          {"holdingFactor", "Holding factor", "S_h", "Factor on the largest static torque."},
          Quantity::Number, "1", {1, 100}, kHolds),
      number<&Requirements::travelMin>(
          {"travelMin", "Lowest angle", "q_min", "For holding. Not given = the cycle's lowest."},
          Quantity::Angle, "deg", {-1e7, 1e7}, kHolds),
      number<&Requirements::travelMax>(
          {"travelMax", "Highest angle", "q_max", "For holding. Not given = the cycle's highest."},
          Quantity::Angle, "deg", {-1e7, 1e7}, kHolds),
  };
  return kFields;
}

const auto& variantFields() {
  static const std::array kFields{
      text<&Variant::name>({"name", "Variant", "", "A name for this way to build the actuator."})};
  return kFields;
}

const auto& projectFields() {
  static const std::array kFields{
      text<&Project::title>({"title", "Title", "", "What this joint is."}),
      text<&Project::note>({"note", "Note", "", "Anything worth keeping."})};
  return kFields;
}

}  // namespace

template <>
const StructInfo& structInfo<Stage>() {
  static const StructInfo kInfo{"transmission", "Drive", stageFields(), &getAsWritten<Stage>};
  return kInfo;
}

template <>
const StructInfo& structInfo<Load>() {
  static const StructInfo kInfo{"load", "Load", loadFields(), &getAsWritten<Load>};
  return kInfo;
}

template <>
const StructInfo& structInfo<Segment>() {
  static const StructInfo kInfo{"segments", "Move", segmentFields(), &getAsWritten<Segment>};
  return kInfo;
}

template <>
const StructInfo& structInfo<Cycle>() {
  static const StructInfo kInfo{"cycle", "Cycle", cycleFields(), &getAsWritten<Cycle>};
  return kInfo;
}

template <>
const StructInfo& structInfo<Requirements>() {
  static const StructInfo kInfo{"requirements", "Requirements", requirementFields(),
                                &getAsWritten<Requirements>};
  return kInfo;
}

template <>
const StructInfo& structInfo<Variant>() {
  static const StructInfo kInfo{"variant", "Variant", variantFields(), &getAsWritten<Variant>};
  return kInfo;
}

template <>
const StructInfo& structInfo<Project>() {
  static const StructInfo kInfo{"project", "Project", projectFields(), &getAsWritten<Project>};
  return kInfo;
}

}  // namespace jw

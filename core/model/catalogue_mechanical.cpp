// Field catalogue of load, requirements, variant and project.
#include <array>
#include <vector>

#include "core/model/field_access.h"

namespace jw {
namespace {

using namespace access;

constexpr ChoiceItem kTouchContacts[] = {{"notTouched", "not touched"}, {"oneSecond", "1 s"},
                                         {"tenSeconds", "10 s"},        {"oneMinute", "1 min"},
                                         {"tenMinutes", "10 min"},      {"eightHours", "8 h"}};
constexpr ChoiceItem kHoldingMeans[] = {
    {"brake", "brake on the motor shaft"}, {"motor", "motor torque"}, {"notNeeded", "not needed"}};

bool mustHold(const Requirements& r) { return r.holdingMeans != HoldingMeans::NotNeeded; }

constexpr Applies kHolds = &appliesTo<Requirements, mustHold>;

std::vector<FieldInfo> jointLoadFields() {
  return {
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
}

std::vector<FieldInfo> bearingLoadFields() {
  return {
      number<&Load::overhang>({"overhang", "Overhang", "l",
                               "From the output bearing's middle to the masses, along the axis; "
                               "their weight tilts the bearing."},
                              Quantity::Length, "m", {-1e4, 1e4}),
      number<&Load::radialForce>({"radialForce", "Process force across", "F_r",
                                  "On the output bearing, across the axis, on top of the weights."},
                                 Quantity::Force, "N", {0, 1e9}),
      number<&Load::axialForce>({"axialForce", "Process force along", "F_a",
                                 "On the output bearing, along the axis, on top of the weights."},
                                Quantity::Force, "N", {0, 1e9}),
      number<&Load::tiltingMoment>(
          {"tiltingMoment", "Process tilting moment", "M_t",
           "On the output bearing, across the axis, on top of the weights' moment."},
          Quantity::Torque, "N*m", {0, 1e9}),
  };
}

const std::vector<FieldInfo>& loadFields() {
  static const std::vector<FieldInfo> kFields =
      joined({{"", jointLoadFields()}, {"On the output bearing", bearingLoadFields()}});
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
      number<&Requirements::reliability>(
          {"reliability", "Reliability", "R", "Share of joints that reach the wanted life.",
           "ISO 281 life modification a_1"},
          Quantity::Fraction, "%", {90, 99.95}),
      number<&Requirements::emergencyTorque>(
          {"emergencyTorque", "Emergency torque", "T_em",
           "At the joint, in an emergency stop or a collision. Not given = the cycle's peak."},
          Quantity::Torque, "N*m", {0, 1e9, true}),
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
const StructInfo& structInfo<Load>() {
  static const StructInfo kInfo{"load", "Load", loadFields(), &getAsWritten<Load>};
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

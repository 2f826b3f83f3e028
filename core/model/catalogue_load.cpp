// Field catalogue of the load and of the masses listed with it.
#include <array>
#include <vector>

#include "core/model/field_access.h"

namespace jw {
namespace {

using namespace access;

constexpr ChoiceItem kMountings[] = {{"tilt", "tilt of the axis"},
                                     {"direction", "direction of gravity"}};
constexpr ChoiceItem kExternals[] = {
    {"none", "constant only"}, {"time", "table over time"}, {"angle", "table over joint angle"}};

bool isTilted(const Load& load) { return load.mounting == Mounting::Tilt; }
bool isDirected(const Load& load) { return load.mounting == Mounting::Direction; }
bool hasBreakaway(const Load& load) { return isSet(load.breakawayFriction); }
bool hasTorsionSpring(const Load& load) { return load.springStiffness != 0; }
bool hasExtension(const Load& load) { return load.extensionRate > 0 || load.extensionPreload > 0; }
bool hasTable(const Load& load) { return load.externalOver != ExternalOver::None; }
bool hasStop(const Load& load) { return isSet(load.stopLow) || isSet(load.stopHigh); }

constexpr Applies kTilted = &appliesTo<Load, isTilted>;
constexpr Applies kDirected = &appliesTo<Load, isDirected>;
constexpr Applies kBreakaway = &appliesTo<Load, hasBreakaway>;
constexpr Applies kTorsion = &appliesTo<Load, hasTorsionSpring>;
constexpr Applies kExtension = &appliesTo<Load, hasExtension>;
constexpr Applies kHasTable = &appliesTo<Load, hasTable>;
constexpr Applies kStops = &appliesTo<Load, hasStop>;

std::vector<FieldInfo> bodyFields() {
  return {
      number<&Load::inertia>({"inertia", "Link inertia", "J_L",
                              "About the joint axis, without payload. Listed masses add their own "
                              "J + m r\u00b2; with them it may be left out."},
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
  };
}

std::vector<FieldInfo> gravityFields() {
  constexpr Range kAnyLength{-1e6, 1e6};
  return {
      choice<&Load::mounting>(
          {"mounting", "Mounting", "", "How the direction of gravity is stated."}, kMountings),
      number<&Load::axisTilt>(
          {"axisTilt", "Axis tilt", "\u03b2",
           "0 = axis horizontal, full gravity; 90\u00b0 = axis vertical, none."},
          Quantity::Angle, "deg", {-180, 180}, kTilted),
      number<&Load::downX>(
          {"downX", "Down, along the link", "d_x",
           "Where gravity points at joint angle 0; any length of (d_x, d_y, d_z)."},
          Quantity::Number, "1", kAnyLength, kDirected),
      number<&Load::downY>({"downY", "Down, turning way", "d_y",
                            "Across the link, positive towards positive turning."},
                           Quantity::Number, "1", kAnyLength, kDirected),
      number<&Load::downZ>(
          {"downZ", "Down, along the axis", "d_z",
           "Positive along the axis about which positive turning is counter-clockwise."},
          Quantity::Number, "1", kAnyLength, kDirected),
      number<&Load::gravity>({"gravity", "Gravity", "g", "Acceleration of free fall.",
                              "9.80665 m/s\u00b2: ISO 80000-3, from memory"},
                             Quantity::Acceleration, "m/s^2", {0, 1000}),
  };
}

std::vector<FieldInfo> frictionFields() {
  constexpr std::string_view kStribeck =
      "Armstrong-H\u00e9louvry, Dupont and Canudas de Wit, Automatica 30 (1994) 1083, from memory";
  return {
      number<&Load::coulombFriction>({"coulombFriction", "Dry friction", "c_c",
                                      "Constant friction at the joint, opposing motion."},
                                     Quantity::Torque, "N*m", {0, 1e9}),
      number<&Load::viscousFriction>(
          {"viscousFriction", "Viscous friction", "c_v", "Friction at the joint per speed."},
          Quantity::TorsionalDamping, "N*m*s/rad", {0, 1e9}),
      number<&Load::breakawayFriction>(
          {"breakawayFriction", "Friction at rest", "T_s",
           "Falls to dry friction as c_c + (T_s \u2212 c_c) exp(\u2212(\u03c9/\u03c9_s)\u00b2). "
           "Not given = no fall.",
           kStribeck},
          Quantity::Torque, "N*m", {0, 1e9}),
      number<&Load::stribeckSpeed>(
          {"stribeckSpeed", "Stribeck speed", "\u03c9_s",
           "Over which friction falls from that at rest to dry friction.", kStribeck},
          Quantity::AngularSpeed, "rad/s", {0, 1e6, true}, kBreakaway),
  };
}

std::vector<FieldInfo> springFields() {
  return {
      number<&Load::springStiffness>({"springStiffness", "Spring stiffness", "k_s",
                                      "Counterbalance torsion spring: torque k_s (q \u2212 q_0)."},
                                     Quantity::TorsionalStiffness, "N*m/rad", {0, 1e9}),
      number<&Load::springAngle>({"springAngle", "Spring slack angle", "q_0",
                                  "Joint angle at which the torsion spring gives no torque."},
                                 Quantity::Angle, "deg", {-3600, 3600}, kTorsion),
      number<&Load::balanceTorque>({"balanceTorque", "Balance torque", "T_bal",
                                    "Constant counterbalance; positive helps lifting."},
                                   Quantity::Torque, "N*m", {-1e9, 1e9}),
  };
}

std::vector<FieldInfo> extensionFields() {
  return {
      number<&Load::extensionRate>(
          {"extensionRate", "Extension spring", "k_e",
           "Pull F_0 + k_e (L \u2212 L_0) between an eye on the link and a fixed eye."},
          Quantity::Stiffness, "N/mm", {0, 1e9}),
      number<&Load::extensionPreload>({"extensionPreload", "Wound-in preload", "F_0",
                                       "Pull at which the spring begins to stretch."},
                                      Quantity::Force, "N", {0, 1e9}),
      number<&Load::extensionFreeLength>(
          {"extensionFreeLength", "Free length", "L_0",
           "Between the eyes when slack; loose below. 0 = spring of zero free length."},
          Quantity::Length, "mm", {0, 1e6}, kExtension),
      number<&Load::extensionArm>(
          {"extensionArm", "Arm on the link", "a", "From the joint axis to the link's eye."},
          Quantity::Length, "mm", {0, 1e6}, kExtension),
      number<&Load::extensionArmAngle>(
          {"extensionArmAngle", "Angle of the arm", "\u03c6_a", "Of that eye at joint angle 0."},
          Quantity::Angle, "deg", {-360, 360}, kExtension),
      number<&Load::extensionPost>(
          {"extensionPost", "Fixed eye", "b", "From the joint axis to the fixed eye."},
          Quantity::Length, "mm", {0, 1e6}, kExtension),
      number<&Load::extensionPostAngle>({"extensionPostAngle", "Angle of the fixed eye", "\u03c6_b",
                                         "0 = along the link at joint angle 0."},
                                        Quantity::Angle, "deg", {-360, 360}, kExtension),
  };
}

std::vector<FieldInfo> externalFields() {
  return {
      number<&Load::externalTorque>({"externalTorque", "External torque", "T_ext",
                                     "Constant process torque; positive opposes positive motion."},
                                    Quantity::Torque, "N*m", {-1e9, 1e9}),
      choice<&Load::externalOver>({"externalOver", "Varying torque", "",
                                   "A table on top; over time it repeats with the cycle."},
                                  kExternals),
      text<&Load::externalTable>(
          {"externalTable", "External torques", "",
           "Pairs such as 0.2 s 5 N*m; 1 s 12 N*m, or 0 deg 5 N*m; 90 deg 12 N*m. Straight between "
           "them, the end values beyond."},
          kHasTable),
  };
}

std::vector<FieldInfo> stopFields() {
  return {
      number<&Load::stopLow>(
          {"stopLow", "Lower end stop", "q_lo", "Joint angle at which the stop is touched."},
          Quantity::Angle, "deg", {-1e7, 1e7}),
      number<&Load::stopHigh>(
          {"stopHigh", "Upper end stop", "q_hi", "Joint angle at which the stop is touched."},
          Quantity::Angle, "deg", {-1e7, 1e7}),
      number<&Load::stopStiffness>(
          {"stopStiffness", "Stiffness of a stop", "k_st",
           "Running into it at \u03c9 gives \u03c9 \u221a(k_st J) at the joint."},
          Quantity::TorsionalStiffness, "N*m/rad", {0, 1e12, true}, kStops),
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
      joined({{"", bodyFields()},
              {"", gravityFields()},
              {"Friction", frictionFields()},
              {"Counterbalance", springFields()},
              {"Extension spring", extensionFields()},
              {"External torque", externalFields()},
              {"End stops", stopFields()},
              {"On the output bearing", bearingLoadFields()}});
  return kFields;
}

const auto& massFields() {
  constexpr Range kPlace{-1e4, 1e4};
  static const std::array kFields{
      text<&LoadMass::name>({"name", "Name", "", "A name of your own for this body."}),
      number<&LoadMass::mass>({"mass", "Mass", "m", "Of this body."}, Quantity::Mass, "kg",
                              {0, 1e7}),
      number<&LoadMass::x>(
          {"x", "Along the link", "x", "Centre of mass from the joint axis, at joint angle 0."},
          Quantity::Length, "m", kPlace),
      number<&LoadMass::y>({"y", "Across the link", "y", "Positive towards positive turning."},
                           Quantity::Length, "m", kPlace),
      number<&LoadMass::z>({"z", "Along the axis", "z", "From the output bearing's middle."},
                           Quantity::Length, "m", kPlace),
      number<&LoadMass::inertia>({"inertia", "Own inertia", "J_i",
                                  "About its own centre of mass, parallel to the joint axis."},
                                 Quantity::Inertia, "kg*m^2", {0, 1e9}),
  };
  return kFields;
}

}  // namespace

template <>
const StructInfo& structInfo<Load>() {
  static const StructInfo kInfo{"load", "Load", loadFields(), &getAsWritten<Load>};
  return kInfo;
}

template <>
const StructInfo& structInfo<LoadMass>() {
  static const StructInfo kInfo{"masses", "Mass", massFields(), &getAsWritten<LoadMass>};
  return kInfo;
}

}  // namespace jw

// Field catalogue of the load.
#include <vector>

#include "core/model/field_access.h"

namespace jw {
namespace {

using namespace access;

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

}  // namespace

template <>
const StructInfo& structInfo<Load>() {
  static const StructInfo kInfo{"load", "Load", loadFields(), &getAsWritten<Load>};
  return kInfo;
}

}  // namespace jw

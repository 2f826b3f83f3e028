// Field catalogue of the requirements.
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

std::vector<FieldInfo> stopFields() {
  return {
      number<&Requirements::stopTime>(
          {"stopTime", "Longest stopping time", "t_stop", "Time that an emergency stop may take."},
          Quantity::Time, "ms", {0, 1e9, true}),
      number<&Requirements::stopAngle>({"stopAngle", "Largest stopping angle", "q_stop",
                                        "Angle that an emergency stop may take."},
                                       Quantity::Angle, "deg", {0, 1e7, true}),
      number<&Requirements::stopsPerHour>({"stopsPerHour", "Stops an hour", "z",
                                           "Emergency stops that the brake takes in an hour."},
                                          Quantity::Number, "1", {0, 1e6}),
      number<&Requirements::collisionSpeed>(
          {"collisionSpeed", "Collision speed", "n_c", "Of the joint when it meets an obstacle."},
          Quantity::AngularSpeed, "rpm", {0, 1e9, true}),
  };
}

std::vector<FieldInfo> precisionAndSizeFields() {
  return {
      number<&Requirements::bandwidth>(
          {"bandwidth", "Wanted bandwidth", "f_b", "Of the position or speed loop."},
          Quantity::Frequency, "Hz", {0, 1e6, true}),
      number<&Requirements::toolError>(
          {"toolError", "Tool error", "e_max", "Largest error of the tool across its reach."},
          Quantity::Length, "mm", {0, 1e6, true}),
      number<&Requirements::reach>(
          {"reach", "Reach of the tool", "R", "From the axis. Not given = the payload's distance."},
          Quantity::Length, "m", {0, 1e4, true}),
      number<&Requirements::handTorque>(
          {"handTorque", "Torque by hand", "T_hand",
           "At the joint, that may move it by hand with the power off. Not given = not wanted."},
          Quantity::Torque, "N*m", {0, 1e9, true}),
      number<&Requirements::massMax>(
          {"massMax", "Largest mass", "m_max", "Of motor and transmission."}, Quantity::Mass, "kg",
          {0, 1e6, true}),
      number<&Requirements::lengthMax>(
          {"lengthMax", "Largest length", "l_max", "Of motor and transmission in line."},
          Quantity::Length, "mm", {0, 1e6, true}),
      number<&Requirements::diameterMax>(
          {"diameterMax", "Largest diameter", "D_max", "Of motor and every stage."},
          Quantity::Length, "mm", {0, 1e6, true}),
      number<&Requirements::acceptedBand>(
          {"acceptedBand", "Band of acceptance", "\u03b4_acc",
           "An accepted verdict reopens when its demand or capacity changes by more."},
          Quantity::Fraction, "%", {0, 1000}),
  };
}

std::vector<FieldInfo> mainFields() {
  return {
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
  };
}

std::vector<FieldInfo> holdingFields() {
  return {
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
      number<&Requirements::dutyPerDay>(
          {"dutyPerDay", "Duty per day", "t_d",
           "Time of the day that the daily mix and the energy per day count."},
          Quantity::Time, "h", {0, 24, true}),
  };
}

const std::vector<FieldInfo>& requirementFields() {
  static const std::vector<FieldInfo> kFields =
      joined({{"", mainFields()},
              {"", holdingFields()},
              {"Stop and collision", stopFields()},
              {"Precision and size", precisionAndSizeFields()}});
  return kFields;
}

}  // namespace

template <>
const StructInfo& structInfo<Requirements>() {
  static const StructInfo kInfo{"requirements", "Requirements", requirementFields(),
                                &getAsWritten<Requirements>};
  return kInfo;
}

}  // namespace jw

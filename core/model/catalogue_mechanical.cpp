// Field catalogue of requirements, variant and project.
#include <array>

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
      number<&Requirements::dutyPerDay>(
          {"dutyPerDay", "Duty per day", "t_d",
           "Time of the day that the daily mix and the energy per day count."},
          Quantity::Time, "h", {0, 24, true}),
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

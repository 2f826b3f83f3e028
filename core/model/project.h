#pragma once

#include <string>
#include <vector>

#include "core/model/as_written.h"
#include "core/model/cycle.h"
#include "core/model/load.h"
#include "core/model/motor.h"
#include "core/model/stage.h"
#include "core/model/supply.h"

namespace jw {

/// How long bare skin may rest on the actuator's housing.
enum class TouchContact { NotTouched, OneSecond, TenSeconds, OneMinute, TenMinutes, EightHours };

/// What the design has to satisfy.
struct Requirements {
  double targetMargin = 0.10;       ///< share by which a check should hold; inside it is "close"
  double life = kUnset;             ///< [s] wanted running life
  double reliability = 0.9;         ///< share of joints that reach it
  double emergencyTorque = kUnset;  ///< [N·m] at the joint, stop or collision; unset = cycle's peak
  double ambient = 40;              ///< [°C]
  double altitude = 0;              ///< [m]
  double onTime = kUnset;           ///< [s] for the intermittent curve
  TouchContact touchContact = TouchContact::NotTouched;
  double inertiaRatioMax = kUnset;  ///< reflected load inertia over motor inertia
  HoldingMeans holdingMeans = HoldingMeans::Brake;
  double holdingFactor = 1.5;      ///< safety factor on the gravity torque to hold
  double travelMin = kUnset;       ///< [rad] lowest joint angle; unset = the cycle's own
  double travelMax = kUnset;       ///< [rad] highest joint angle; unset = the cycle's own
  double dutyPerDay = 86400;       ///< [s] of the day that the daily mix describes
  double stopTime = kUnset;        ///< [s] longest emergency stop
  double stopAngle = kUnset;       ///< [rad] longest way of an emergency stop
  double stopsPerHour = kUnset;    ///< emergency stops by the brake
  double collisionSpeed = kUnset;  ///< [rad/s] of the joint when it meets an obstacle
  double bandwidth = kUnset;       ///< [Hz] wanted of the position or speed loop
  double toolError = kUnset;       ///< [m] allowed at the tool
  double reach = kUnset;           ///< [m] axis to the tool; unset = the load's
  double handTorque = kUnset;      ///< [N·m] that may move the joint by hand
  double massMax = kUnset;         ///< [kg] of motor and transmission
  double lengthMax = kUnset;       ///< [m]
  double diameterMax = kUnset;     ///< [m]
  double acceptedBand = 0.02;      ///< change of demand or capacity that reopens an acceptance
  AsWritten asWritten;
};

/// A verdict that someone has accepted as it stands.
struct Acceptance {
  std::string check;  ///< id of the check
  int stage = -1;     ///< index into the transmission, -1 if of none
  std::string note;
  std::string date;          ///< as given, ISO 8601
  double demand = kUnset;    ///< when it was accepted, internal unit
  double capacity = kUnset;  ///< likewise
  AsWritten asWritten;
};

/// One way to build the actuator for the same load, cycle and requirements.
struct Variant {
  std::string name = "A";
  Supply supply;
  Controller controller;
  Motor motor;
  std::vector<Stage> transmission;  ///< motor first, joint last; empty = direct drive
  std::vector<Acceptance> accepted;
  AsWritten asWritten;
};

/// One joint: its job and the variants that could do it. Never without a variant.
struct Project {
  std::string title;
  std::string note;
  Load load;
  Cycle cycle;                     ///< the one shown and judged instant by instant
  std::vector<Cycle> otherCycles;  ///< the rest of the daily mix
  Requirements requirements;
  std::vector<Variant> variants{Variant{}};
  int activeVariant = 0;  ///< index of the variant that is evaluated
  AsWritten asWritten;

  const Variant& active() const { return variants[static_cast<std::size_t>(activeVariant)]; }
  Variant& active() { return variants[static_cast<std::size_t>(activeVariant)]; }
};

/// Equality of every catalogued field (unset equals unset), name, text as typed and unknown key.
bool operator==(const Supply& a, const Supply& b);
bool operator==(const Controller& a, const Controller& b);
bool operator==(const Motor& a, const Motor& b);
bool operator==(const Stage& a, const Stage& b);
bool operator==(const LoadMass& a, const LoadMass& b);
bool operator==(const Load& a, const Load& b);
bool operator==(const Segment& a, const Segment& b);
bool operator==(const Cycle& a, const Cycle& b);
bool operator==(const Requirements& a, const Requirements& b);
bool operator==(const Variant& a, const Variant& b);
bool operator==(const Project& a, const Project& b);

}  // namespace jw

#pragma once

#include <string>
#include <string_view>

#include "core/model/measured_log.h"
#include "core/quantity/quantity.h"

namespace jw {

/// What a column of this role measures; LogRole::Unused has none and throws std::logic_error.
Quantity quantityOf(LogRole role);

/// "time", "position", "speed", "acceleration", "joint torque", "motor current", "not used".
std::string_view nameOf(LogRole role);

/// The role that `unit` is a unit of; Unused if it is none of a log.
LogRole roleOfUnit(std::string_view unit);

/// A unit as this program spells it ("rad/s^2") for the ways in which logs do ("rads2", "U/min",
/// "NM", "[deg]", a degree sign of Latin-1); empty if it is none of a log's quantities.
std::string unitIn(std::string_view asWritten);

/// What a column's name tells.
struct TitleMeaning {
  LogRole role = LogRole::Unused;  ///< Unused = the name tells none
  std::string unit;                ///< as unitIn; empty = the name tells none
  std::string strangeUnit;         ///< text that stands in the place of a unit and is none
  int rank = 0;                    ///< of two columns of one role the higher is meant: measured
                                   ///< values stand above wanted ones
  std::string reason;              ///< a sentence
};

/// Reads a name such as "q [deg]", "t_ms", "torque/Nm", "Angle in deg", "actualVelocity". A unit
/// outweighs the name: "T [N*m]" is a torque.
TitleMeaning readTitle(std::string_view title);

}  // namespace jw

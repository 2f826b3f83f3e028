#pragma once

#include <array>
#include <string_view>
#include <vector>

#include "core/model/cycle.h"

namespace jw::keys {

// The keys of a project document that hold structs; those of fields are in the catalogue.
inline constexpr std::string_view kBands = "bands";  ///< of any struct: field key -> band
inline constexpr std::string_view kFrom = "fromCatalogue";  ///< of a motor or stage: its entry
inline constexpr std::string_view kFromPart = "part";
inline constexpr std::string_view kFromCatalogue = "catalogue";
inline constexpr std::string_view kFromChanged = "changed";  ///< keys of fields
inline constexpr std::string_view kFormat = "format";
inline constexpr std::string_view kVersion = "version";
inline constexpr std::string_view kLoad = "load";
inline constexpr std::string_view kMasses = "masses";
inline constexpr std::string_view kCycle = "cycle";
inline constexpr std::string_view kOtherCycles = "otherCycles";
inline constexpr std::string_view kSegments = "segments";
inline constexpr std::string_view kTable = "table";
inline constexpr std::string_view kRequirements = "requirements";
inline constexpr std::string_view kVariants = "variants";
inline constexpr std::string_view kActiveVariant = "activeVariant";
inline constexpr std::string_view kSupply = "supply";
inline constexpr std::string_view kController = "controller";
inline constexpr std::string_view kMotor = "motor";
inline constexpr std::string_view kTransmission = "transmission";
inline constexpr std::string_view kAccepted = "accepted";

/// One list of a motion table in a document.
struct TableColumn {
  std::string_view key;
  SharedColumn MotionTable::*values;
  bool required;
};

inline constexpr std::array<TableColumn, 5> kTableColumns{{
    {"time [s]", &MotionTable::time, true},
    {"angle [rad]", &MotionTable::angle, true},
    {"speed [rad/s]", &MotionTable::speed, false},
    {"acceleration [rad/s^2]", &MotionTable::acceleration, false},
    {"external torque [N*m]", &MotionTable::torque, false},
}};

}  // namespace jw::keys

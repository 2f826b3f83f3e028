#pragma once

#include <array>
#include <cstddef>
#include <string_view>

namespace jw {

/// What every report and the window itself carry.
inline constexpr std::string_view kCaution =
    "Informs a design. Replaces no risk assessment, local code or licensed practice.";

/// The cautions in full. The standards of holding and of stored energy are named from memory.
inline constexpr std::array<std::string_view, 12> kCautions{
    "This program informs a design. It replaces no risk assessment (ISO 12100, ISO 10218), no local "
    "code and no licensed practice.",
    "Every verdict rests on the numbers typed in. Take them from the maker's data sheet, with the "
    "convention each was stated in, and check them.",
    "A verdict that holds says that one formula with its assumptions is met, not that the joint is "
    "safe or will last. Read the working.",
    "Holding: a joint under gravity falls when power, controller or brake fails. A brake that holds "
    "is not thereby fit for repeated emergency stops. Secure the load before working on it "
    "(risk assessment: ISO 12100; safety functions: ISO 13849-1).",
    "Stopping: time and angle of a stop, with the largest payload and at the highest speed, are for "
    "the risk assessment to judge (stop categories: IEC 60204-1).",
    "Stored energy: bus capacitors, springs and raised loads keep their energy after power-off. "
    "Discharge, relax or support them, and measure, before touching (dissipating stored energy: "
    "ISO 14118; residual voltage: IEC 60204-1).",
    "Hot surfaces: motor, reducer and brake resistor burn skin well below their own limits "
    "(burn thresholds: ISO 13732-1).",
    "Collision: a joint that strikes a person or an obstacle gives up its kinetic energy at once. Limits "
    "of force and pressure on people are for the risk assessment to set (ISO 10218, ISO/TS 15066).",
    "Runaway: a motor may run off at full torque when its encoder, its magnet or its controller fails. "
    "Monitored safety functions are a matter of their own (IEC 61800-5-2); none is computed here.",
    "Where a working says \"common practice\" or \"estimate\", no standard stands behind it.",
    "What is not modelled is not checked: shock, misuse, wear, contamination, assembly faults, "
    "control faults, fatigue of housings and fasteners.",
    "Try the design on a test stand before anyone relies on it."};

/// The caution that belongs beside a check; empty if none does.
constexpr std::string_view cautionOf(std::string_view check) {
  constexpr std::size_t kHolding = 3, kStopping = 4, kStored = 5, kHot = 6, kCollision = 7,
                        kRunaway = 8;
  if (check == "joint.holding" || check == "joint.backdrive") return kCautions[kHolding];
  if (check.substr(0, 14) == "joint.stopping") return kCautions[kStopping];
  if (check == "joint.collision" || check == "joint.end_stops") return kCautions[kCollision];
  if (check == "supply.voltage_rise") return kCautions[kStored];
  if (check == "motor.magnet" || check == "joint.positioning") return kCautions[kRunaway];
  const bool hot = check == "motor.touch_temperature" || check == "motor.temperature_housing" ||
                   check == "motor.temperature_winding" || check == "supply.brake_resistor";
  return hot ? kCautions[kHot] : std::string_view();
}

/// The caution that belongs on an exported figure besides kCaution, by its name; empty if none.
constexpr std::string_view cautionOfFigure(std::string_view figure) {
  if (figure == "heat" || figure == "overload") return cautionOf("motor.touch_temperature");
  if (figure == "power") return cautionOf("supply.voltage_rise");
  return figure == "cycle" ? cautionOf("joint.stopping") : std::string_view();
}

}  // namespace jw

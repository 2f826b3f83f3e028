#pragma once

#include <string>
#include <string_view>

#include "core/quantity/quantity.h"
#include "core/quantity/unit_system.h"

namespace jw::detail {

/// "type a torque, e.g. 12 N·m or 20 lbf·ft".
std::string askFor(Quantity quantity);

/// For unit text that is no unit at all.
InputError unknownUnit(double value, std::string_view typed, const UnitTextError& error,
                       Quantity quantity);

/// For a unit that measures something else than `quantity`.
InputError wrongUnit(double value, const UnitMeaning& unit, Quantity quantity);

}  // namespace jw::detail

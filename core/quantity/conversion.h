#pragma once

#include "core/quantity/quantity.h"
#include "core/quantity/unit_system.h"

namespace jw::detail {

/// Whether a unit of this meaning can be used for `quantity`.
bool measures(const UnitMeaning& unit, Quantity quantity);

/// Converts between a unit that measures `quantity` and the quantity's internal unit.
double convertIn(double value, const UnitMeaning& unit, Quantity quantity);
double convertOut(double internal, const UnitMeaning& unit, Quantity quantity);

/// The meaning of a unit the program itself names; std::logic_error if it is none of `quantity`.
SharedMeaning unitFor(std::string_view unit, Quantity quantity);

/// The dimension of the quantity's internal unit.
const Dimension& dimensionOf(Quantity quantity);

}  // namespace jw::detail

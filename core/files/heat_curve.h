#pragma once

#include <string_view>

#include <tl/expected.hpp>

#include "core/model/heat_curve.h"
#include "core/quantity/quantity.h"

namespace jw {

/// Reads a measured heating or cooling curve from text, one row a line, as readDelimitedTable does.
/// Columns: time or t; winding, temperature or temp; power, heat or loss; housing or case (may be
/// left out). A column without a unit is in s, degC, W. Without a line of names the columns stand
/// in this order. The ambient is not in the text: it is left as it is in a new HeatCurve. Fails as
/// readDelimitedTable does, and on no rows.
tl::expected<HeatCurve, InputError> readHeatCurve(std::string_view text, std::string_view name);

}  // namespace jw

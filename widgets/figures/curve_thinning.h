#pragma once

#include "widgets/figures/envelope_view.h"

namespace jw {

/// The curve without the points that no eye could tell are missing: none lies farther from what is
/// left than `tolerance`, as a share of the curve's own extent (Ramer 1972; Douglas and Peucker
/// 1973). NaN points stay, so gaps stay.
PlaneCurve thinned(const PlaneCurve& curve, double tolerance);

}  // namespace jw

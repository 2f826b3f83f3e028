#pragma once

#include "widgets/figures/cycle_view.h"
#include "widgets/figures/line_chart.h"

namespace jw {

/// What the heat figure shows, in display units and words.
struct HeatView {
  LineChart warmUp;    ///< from cold, hours or minutes; empty without studies
  CycleView cycle;     ///< temperatures over the repeated cycle; no rows on runaway
  LineChart overload;  ///< torque against the time that it may last
  LineChart duty;      ///< torque against the duty factor
  bool runaway = false;
  bool stale = false;

  bool empty() const { return cycle.empty(); }
};

/// The view of a snapshot; empty without heat in its evaluation.
HeatView heatView(const Snapshot& snapshot);

}  // namespace jw

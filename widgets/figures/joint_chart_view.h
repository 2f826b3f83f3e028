#pragma once

#include "core/studies/joint_charts.h"
#include "widgets/figures/line_chart.h"

namespace jw {

/// Frequency response from motor torque to motor and joint, resonances marked.
LineChart swingChart(const JointCharts& charts);

/// What keeps the tool from where the encoder says it is: contributions stacked to the worst case,
/// and their root sum of squares.
LineChart toolErrorChart(const JointCharts& charts);

}  // namespace jw

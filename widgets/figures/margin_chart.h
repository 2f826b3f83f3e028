#pragma once

#include "core/studies/design_points.h"
#include "widgets/figures/line_chart.h"

namespace jw {

/// Between which margins [%] curves are drawn; beyond they leave the picture.
inline constexpr double kLeastMargin = -100;
inline constexpr double kMostMargin = 200;

/// The margins of designs that lie along one variable.
struct MarginCurves {
  const std::vector<double>& x;  ///< [display unit] rising
  const std::vector<DesignPoint>& points;
  const std::vector<MarginColumn>& checks;
};

/// The checks that are the smallest margin somewhere, those of the most points first.
std::vector<std::size_t> limitingChecks(const MarginCurves& curves, std::size_t most = 6);

/// A curve for each margin: the limiting ones in hues and named, the others muted. The y axis and
/// the level of `targetMargin` (a share) are set, the x axis is left to the caller.
LineChart marginChart(const MarginCurves& curves, double targetMargin);

/// What the curves say at `x`: the smallest margin, and the curve nearest to the height `margin`
/// [%]. Empty outside the range.
QString marginReading(const MarginCurves& curves, double x, double margin);

/// Points of a curve cut at `low` and `high`, so that it ends on them. Gaps for NaN and infinity.
void cutCurve(QVector<double>& x, QVector<double>& y, double low, double high);

/// The title of a check in a picture: "drive life, stage 2".
QString checkLabel(const std::string& title);

}  // namespace jw

#pragma once

#include "core/studies/ratio_sweep.h"
#include "widgets/figures/margin_chart.h"
#include "widgets/snapshot.h"

namespace jw {

/// A ratio with a name: a thin line through the picture.
struct RatioMark {
  double ratio = 0;
  QString name;
  QColor Palette::*hue = &Palette::text;
};

/// An end of the feasible band and what limits it.
struct RatioEnd {
  double ratio = 0;
  QString text;
  bool low = true;  ///< the band lies to the right of it
};

/// What the picture of the ratio shows.
struct RatioView {
  std::shared_ptr<const RatioSweep> sweep;  ///< for readings
  LineChart chart;
  std::vector<RatioMark> marks;  ///< within the range, rising
  std::vector<RatioEnd> ends;
  std::vector<double> ticks;  ///< ratios that can be built
  double present = kUnset;

  bool empty() const { return chart.empty(); }
};

/// Heights [%] of the axis: names of marks above the curves, ends of the band and ticks below.
inline constexpr double kRatioTop = 265;
inline constexpr double kRatioBottom = -150;

RatioView ratioView(std::shared_ptr<const RatioSweep> sweep, const Project& project);

/// Ratio and margins at a place of the picture.
QString ratioReading(const RatioView& view, double ratio, double margin);

/// "from motor to joint", or "of stage 2, strain wave".
QString ratioName(const Project& project, int stage);

}  // namespace jw

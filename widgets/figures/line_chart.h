#pragma once

#include <optional>
#include <vector>

#include <QPointF>
#include <QString>
#include <QVector>

#include "widgets/figures/plot_marks.h"
#include "widgets/figures/series_look.h"

namespace jw {

/// A curve of a chart, in the units of its axes; NaN is a gap.
struct ChartLine {
  QString name;  ///< written beside it
  QVector<double> x;
  QVector<double> y;
  SeriesLook look;
  bool dots = false;      ///< single points, not joined
  double nameFrom = 0.5;  ///< share of the curve at which its name would stand best
  bool faint = false;     ///< behind the others; names may stand on it
};

/// The area between two curves.
struct ChartBand {
  QVector<double> x;
  QVector<double> low;
  QVector<double> high;
  QColor Palette::*hue = &Palette::muted;
};

/// A marked point.
struct ChartPoint {
  QPointF at;
  QString text;
  PlotMark::Shape shape = PlotMark::Shape::Ring;
  QColor Palette::*hue = &Palette::text;
  bool strong = false;
};

/// One axis of a chart.
struct ChartAxis {
  QString title;
  QString unit;  ///< for readings
  double low = 0;
  double high = 1;
  std::vector<std::pair<double, QString>> ticks = {};  ///< empty = chosen by the plot
  bool logarithmic = false;
};

/// Curves over one variable.
struct LineChart {
  QString title;
  QString remark;   ///< after the title
  QString warning;  ///< in its place, in the hue of what is short
  ChartAxis x;
  ChartAxis y;
  std::vector<ChartBand> bands;
  std::vector<ChartLine> lines;
  std::vector<Level> levels;
  std::vector<ChartPoint> points;
  std::optional<std::pair<double, double>> nameHeights;  ///< of the y axis: names stay between

  bool empty() const { return lines.empty(); }
};

}  // namespace jw

#pragma once

#include <QString>

#include "widgets/theme/plot_style.h"

namespace jw {

/// How a curve is drawn: hue and dashes; the dashes tell it apart without the hue.
struct SeriesLook {
  QColor Palette::*hue = &Palette::text;
  Qt::PenStyle dashes = Qt::SolidLine;
  double width = 1.6;  ///< [px]
};

/// A value that a curve is compared with: a thin line across the axes, named.
struct Level {
  QString name;
  double value = 0;  ///< in the axis' unit
  QColor Palette::*hue = &Palette::muted;
};

QPen seriesPen(const SeriesLook& look, const PlotStyle& style);

/// The hue as text on a figure's ground.
QColor seriesInk(const SeriesLook& look, const PlotStyle& style);

}  // namespace jw

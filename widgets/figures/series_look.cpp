#include "widgets/figures/series_look.h"

namespace jw {

QPen seriesPen(const SeriesLook& look, const PlotStyle& style) {
  QPen pen = dataPen(style.colours.*look.hue, look.width, look.dashes);
  if (look.dashes == Qt::CustomDashLine) pen.setDashPattern({7, 2.5});
  constexpr double kBar = 6;  // [px]; a bar ends where its value is
  if (look.dashes != Qt::SolidLine || look.width >= kBar) pen.setCapStyle(Qt::FlatCap);
  return pen;
}

QColor seriesInk(const SeriesLook& look, const PlotStyle& style) {
  return inkOf(style.colours.*look.hue, style.colours.panel);
}

}  // namespace jw

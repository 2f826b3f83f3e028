#pragma once

#include <qcustomplot.h>

#include "widgets/figures/line_chart_plot.h"
#include "widgets/figures/map_view.h"

namespace jw {

/// Draws a MapView on a plot, on the screen or on paper.
class MapPlot {
 public:
  explicit MapPlot(QCustomPlot& plot);
  MapPlot(const MapPlot&) = delete;
  MapPlot& operator=(const MapPlot&) = delete;

  void setStyle(const PlotStyle& style);
  /// Shows `view`; the part that is seen stays if `keepRange`.
  void show(MapView view, bool keepRange);
  void showAll();
  const MapView& view() const { return m_view; }
  const QCPColorMap& colours() const { return *m_map; }
  QString readingAt(const QPointF& pixel) const;

 private:
  void restyle();
  void fillColours();
  void fillEdges();
  void fillMarks();
  QCPColorGradient gradient() const;

  QCustomPlot& m_plot;
  PlotStyle m_style;
  MapView m_view;
  QCPColorMap* m_map;
  QCPColorScale* m_scale;
  std::vector<QCPCurve*> m_edges;
  PlotLabels* m_labels;
  PlotMarks* m_marks;
  ChartTitle* m_title;
};

}  // namespace jw

#pragma once

#include "widgets/figures/line_chart_plot.h"
#include "widgets/figures/ratio_overlay.h"

namespace jw {

/// Draws a RatioView on a plot, on the screen or on paper.
class RatioPlot {
 public:
  explicit RatioPlot(QCustomPlot& plot);
  RatioPlot(const RatioPlot&) = delete;
  RatioPlot& operator=(const RatioPlot&) = delete;

  void setStyle(const PlotStyle& style);
  /// Shows `view`; the part that is seen stays if `keepRange`.
  void show(RatioView view, bool keepRange);
  void showAll() { m_lines.showAll(); }
  /// Moves the handle; what was worked out stays.
  void setPresent(double ratio) { m_view.present = ratio; }

  const RatioView& view() const { return m_view; }
  const LineChartPlot& lines() const { return m_lines; }
  bool isHandle(const QPointF& pixel) const { return m_overlay->isHandle(pixel); }
  /// The ratio at a pixel, held to the range that is drawn.
  double ratioAt(double pixel) const;
  double pixelOf(double ratio) const { return m_plot.xAxis->coordToPixel(ratio); }
  QString readingAt(const QPointF& pixel) const;

 private:
  QCustomPlot& m_plot;
  LineChartPlot m_lines;
  RatioView m_view;
  PlotStyle m_style;
  RatioOverlay* m_overlay;
};

}  // namespace jw

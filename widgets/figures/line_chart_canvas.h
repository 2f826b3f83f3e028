#pragma once

#include "widgets/figures/line_chart_plot.h"
#include "widgets/figures/plane_canvas.h"

namespace jw {

/// A line chart on the screen.
class LineChartCanvas : public PlaneCanvas {
  Q_OBJECT

 public:
  explicit LineChartCanvas(QWidget* parent = nullptr, int rightMargin = 16);

  /// Shows `chart`, dimmed if it is old; what the person zoomed to stays.
  void showChart(LineChart chart, bool stale = false);
  void restyle();
  const LineChartPlot& plot() const { return m_plot; }

 protected:
  QString readingAt(const QPointF& pixel) const override { return m_plot.readingAt(pixel); }
  void showAll() override { m_plot.showAll(); }

 private:
  LineChartPlot m_plot;
};

}  // namespace jw

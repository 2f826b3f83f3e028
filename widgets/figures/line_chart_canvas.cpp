#include "widgets/figures/line_chart_canvas.h"

namespace jw {

LineChartCanvas::LineChartCanvas(QWidget* parent, int rightMargin)
    : PlaneCanvas(parent), m_plot(*this, rightMargin) {}

void LineChartCanvas::showChart(LineChart chart, bool stale) {
  m_plot.show(std::move(chart), isZoomed());
  setDimmed(stale, screenPlotStyle().colours.panel);
  replot(rpQueuedReplot);
}

void LineChartCanvas::restyle() {
  m_plot.setStyle(screenPlotStyle());
  replot(rpQueuedReplot);
}

}  // namespace jw

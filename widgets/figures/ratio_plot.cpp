#include "widgets/figures/ratio_plot.h"

#include "widgets/figures/plot_layers.h"

namespace jw {

RatioPlot::RatioPlot(QCustomPlot& plot)
    : m_plot(plot),
      m_lines(plot),
      m_style(screenPlotStyle()),
      m_overlay(new RatioOverlay(&plot, plot.axisRect(), kMarkLayer)) {
  m_overlay->setStyle(&m_style);
  m_overlay->setView(&m_view);
}

void RatioPlot::setStyle(const PlotStyle& style) {
  m_style = style;
  m_lines.setStyle(style);
}

void RatioPlot::show(RatioView view, bool keepRange) {
  m_view = std::move(view);
  m_lines.show(m_view.chart, keepRange);
}

double RatioPlot::ratioAt(double pixel) const {
  return qBound(m_view.chart.x.low, m_plot.xAxis->pixelToCoord(pixel), m_view.chart.x.high);
}

QString RatioPlot::readingAt(const QPointF& pixel) const {
  return ratioReading(m_view, m_plot.xAxis->pixelToCoord(pixel.x()),
                      m_plot.yAxis->pixelToCoord(pixel.y()));
}

}  // namespace jw

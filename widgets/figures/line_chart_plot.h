#pragma once

#include <vector>

#include <qcustomplot.h>

#include "widgets/figures/line_chart.h"
#include "widgets/figures/plot_labels.h"
#include "widgets/figures/plot_marks.h"

namespace jw {

/// The title above a chart, cut where there is no room.
class ChartTitle : public QCPLayerable {
  Q_OBJECT

 public:
  ChartTitle(QCustomPlot* plot, QCPAxisRect* rect, const QString& layer);
  void setStyle(const PlotStyle* style) { m_style = style; }
  void setText(const QString& title, const QString& remark, const QString& warning);
  /// Height [px] above the axes.
  static int height() { return 24; }

 protected:
  void applyDefaultAntialiasingHint(QCPPainter* painter) const override;
  void draw(QCPPainter* painter) override;

 private:
  QCPAxisRect* m_rect;
  const PlotStyle* m_style = nullptr;
  QString m_title;
  QString m_remark;
  QString m_warning;
};

/// Draws a LineChart on a plot, on the screen or on paper.
class LineChartPlot {
 public:
  /// `rightMargin` [px] of the axes: kRightMargin to stand in line with rows over time.
  explicit LineChartPlot(QCustomPlot& plot, int rightMargin = 16);
  LineChartPlot(const LineChartPlot&) = delete;
  LineChartPlot& operator=(const LineChartPlot&) = delete;

  void setStyle(const PlotStyle& style);
  /// Shows `chart`; the part that is seen stays if `keepRange`.
  void show(LineChart chart, bool keepRange);
  /// Sets the axes to the chart's.
  void showAll();

  const LineChart& chart() const { return m_chart; }
  const PlotLabels& labels() const { return *m_labels; }
  /// What the curves say at `pixel`: "12 min  ·  winding 92 °C  ·  housing 61 °C".
  QString readingAt(const QPointF& pixel) const;

 private:
  void addBand(const ChartBand& band);
  void addLine(const ChartLine& line);
  void restyle();
  void styleAxis(QCPAxis& axis, const ChartAxis& chart) const;
  void fillLabels();
  void fillMarks();

  QCustomPlot& m_plot;
  PlotStyle m_style;
  LineChart m_chart;
  std::vector<QCPGraph*> m_bands;  ///< the upper edge of each
  std::vector<QCPGraph*> m_lines;
  PlotLabels* m_labels;
  PlotMarks* m_marks;
  ChartTitle* m_title;
};

}  // namespace jw

#pragma once

#include <limits>
#include <vector>

#include <qcustomplot.h>

#include "widgets/figures/cycle_view.h"
#include "widgets/figures/plot_labels.h"
#include "widgets/figures/row_overlay.h"
#include "widgets/theme/plot_style.h"

namespace jw {

/// Draws a CycleView on a plot: one axis rect a row, all with the same time axis.
class CyclePlot {
 public:
  /// `bands`: whether the first row has the names of the segments above it.
  CyclePlot(QCustomPlot& plot, bool bands);
  CyclePlot(const CyclePlot&) = delete;
  CyclePlot& operator=(const CyclePlot&) = delete;

  void setStyle(const PlotStyle& style);
  /// Shows the rows of `view` whose ids are in `visible` (all if empty). The stretch of time that
  /// is seen stays if `keepRange`.
  void show(CycleView view, const QStringList& visible, bool keepRange);
  void showAll();
  /// Gives all rows the same height in a plot of `height` px, and each as many ticks as fit.
  void arrange(int height);
  /// Marks the instant `time` [s] and tells the values there; NaN takes the mark away. Draws only
  /// that layer if `now`.
  void setCursor(double time, bool now);
  /// The time [s] at a pixel, NaN outside the rows.
  double timeAt(const QPointF& pixel) const;
  /// Scales the stretch of time that is seen about `centre` [s].
  void zoomBy(double factor, double centre);
  /// Moves it by `seconds`.
  void panBy(double seconds);

  const CycleView& view() const { return m_view; }
  bool shows(const QString& rowId) const;
  QCPRange seen() const { return m_seen; }

 private:
  struct Row {
    CycleRow data;
    QCPAxisRect* rect = nullptr;
    int around = 0;  ///< [px] height of key, segment names and time axis
    std::vector<QCPGraph*> graphs;
    RowOverlay* key = nullptr;     ///< on the cursor's layer
    BandOverlay* bands = nullptr;  ///< behind the curves
    PlotLabels* levels = nullptr;
  };

  void rebuild(const std::vector<CycleRow>& rows);
  bool hasShapeOf(const std::vector<CycleRow>& rows) const;
  void addRow(const CycleRow& data, bool last);
  void fill(Row& row);
  void styleRow(Row& row);
  void scaleValues(Row& row);
  void setSeen(const QCPRange& range);
  KeyEntry keyEntry(const CycleRow& row, const CycleSeries& series) const;

  QCustomPlot& m_plot;
  PlotStyle m_style;
  CycleView m_view;
  std::vector<Row> m_rows;
  QCPRange m_seen{0, 1};
  double m_cursor = std::numeric_limits<double>::quiet_NaN();
  bool m_withBands;
};

}  // namespace jw

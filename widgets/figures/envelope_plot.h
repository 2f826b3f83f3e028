#pragma once

#include <optional>
#include <vector>

#include <qcustomplot.h>

#include "widgets/figures/envelope_view.h"
#include "widgets/figures/plot_labels.h"
#include "widgets/figures/plot_marks.h"
#include "widgets/theme/plot_style.h"

namespace jw {

/// Draws an EnvelopeView on a plot, on the screen or on paper.
class EnvelopePlot {
 public:
  explicit EnvelopePlot(QCustomPlot& plot);

  void setStyle(const PlotStyle& style);
  /// Shows `view`; the part of the plane that is seen stays if `keepRange`.
  void show(EnvelopeView view, bool keepRange);
  /// Sets the axes to what the view contains.
  void showAll();
  /// Marks the instant `time` [s]; NaN takes the mark away. Draws only that layer if `now`.
  void setCursor(double time, bool now);

  const EnvelopeView& view() const { return m_view; }
  const PlotLabels& labels() const { return *m_labels; }
  /// The sample whose point is nearest to `pixel`, at most `reach` px away; -1 if none.
  int sampleNear(const QPointF& pixel, double reach) const;
  QPointF toPlane(const QPointF& pixel) const;

 private:
  void restyle();
  void fillCurves();
  void fillPath();
  void fillMarks();
  void fillLabels();
  QCPCurve* addCurve(const PlaneCurve& points, const QString& layer);
  void fillExtras();
  void restyleExtras();
  void fillEfficiencyLabels();
  void addSegmentLabels(std::vector<PlotLabel>& labels) const;
  QColor segmentColour(const PathSegment& segment) const;

  QCustomPlot& m_plot;
  PlotStyle m_style;
  EnvelopeView m_view;
  std::vector<QCPCurve*> m_path;
  PathBand* m_reach = nullptr;
  QCPCurve* m_band = nullptr;
  QCPCurve* m_weakest = nullptr;
  QCPCurve* m_strongest = nullptr;
  QCPCurve* m_shortTime = nullptr;
  std::vector<QCPCurve*> m_efficiency;
  QCPCurve* m_peak = nullptr;
  QCPCurve* m_lasting = nullptr;
  PlotLabels* m_labels = nullptr;
  PlotMarks* m_marks = nullptr;
  PlotMarks* m_cursor = nullptr;
};

}  // namespace jw

#pragma once

#include <optional>
#include <vector>

#include <qcustomplot.h>

#include "widgets/figures/label_placement.h"

namespace jw {

/// A text on a figure, in axis coordinates.
struct PlotLabel {
  QString text;
  QColor colour;
  bool strong = false;
  bool leader = false;           ///< a thin line to the anchor
  double gap = 4;                ///< [px] from the anchor
  std::vector<QPointF> anchors;  ///< the preferred first
};

/// Draws labels beside points and curves of one axis rect, placed at every draw so that they
/// neither overlap nor leave the rect.
class PlotLabels : public QCPLayerable {
  Q_OBJECT

 public:
  PlotLabels(QCustomPlot* plot, QCPAxisRect* rect, const QString& layer);

  void setLabels(std::vector<PlotLabel> labels) { m_labels = std::move(labels); }
  void setLines(std::vector<QPolygonF> lines) { m_lines = std::move(lines); }
  /// Points that labels keep `radius` px away from.
  void setMarks(std::vector<QPointF> marks, double radius);
  void setFonts(const QFont& plain, const QFont& strong);

  /// Where each label went at the last draw [px]; null where there was no place.
  const std::vector<LabelPlace>& places() const { return m_places; }

 protected:
  void applyDefaultAntialiasingHint(QCPPainter* painter) const override;
  void draw(QCPPainter* painter) override;

 private:
  QPointF toPixels(const QPointF& point) const;
  LabelSurroundings surroundings() const;
  void drawLabel(QCPPainter* painter, const PlotLabel& label, const LabelPlace& place) const;

  QCPAxisRect* m_rect;
  QFont m_plain;
  QFont m_strong;
  double m_markRadius = 6;
  std::vector<PlotLabel> m_labels;
  std::vector<QPolygonF> m_lines;
  std::vector<QPointF> m_marks;
  std::vector<LabelPlace> m_places;
};

}  // namespace jw

#pragma once

#include <optional>
#include <vector>

#include <qcustomplot.h>

#include "widgets/figures/label_placement.h"
#include "widgets/figures/series_look.h"

namespace jw {

/// A text on a figure, in axis coordinates.
struct PlotLabel {
  QString text;
  QColor colour;
  bool strong = false;
  bool leader = false;               ///< a thin line to the anchor
  double gap = 4;                    ///< [px] from the anchor
  std::vector<QPointF> anchors;      ///< the preferred first
  std::optional<double> level = {};  ///< instead: beside a thin line across the rect at this height
  QColor ground = {};                ///< behind the text, where lines may run; invalid: none
};

/// The labels of levels, with their lines.
std::vector<PlotLabel> levelLabels(const std::vector<Level>& levels, const PlotStyle& style);

/// A short text on a line, with ground behind it.
struct LineLabel {
  QString text;
  QColor colour;
  QPointF at;
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
  void setLineLabels(std::vector<LineLabel> labels, const QColor& ground);
  void setFonts(const QFont& plain, const QFont& strong);
  /// Names stay between these heights of the axis, if given.
  void setHeights(const std::optional<std::pair<double, double>>& heights) { m_heights = heights; }

  /// Where each label went at the last draw [px]; null where there was no place.
  const std::vector<LabelPlace>& places() const { return m_places; }

 protected:
  void applyDefaultAntialiasingHint(QCPPainter* painter) const override;
  void draw(QCPPainter* painter) override;

 private:
  QPointF toPixels(const QPointF& point) const;
  LabelSurroundings surroundings() const;
  LabelRequest requestOf(const PlotLabel& label) const;
  std::vector<QPointF> anchorsOf(const PlotLabel& label) const;
  void drawOnLine(QCPPainter* painter, const LineLabel& label) const;
  void drawLevel(QCPPainter* painter, const PlotLabel& label) const;
  void drawLabel(QCPPainter* painter, const PlotLabel& label, const LabelPlace& place) const;

  QCPAxisRect* m_rect;
  QFont m_plain;
  QFont m_strong;
  double m_markRadius = 6;
  std::optional<std::pair<double, double>> m_heights;
  std::vector<PlotLabel> m_labels;
  std::vector<QPolygonF> m_lines;
  std::vector<LineLabel> m_lineLabels;
  QColor m_ground;
  std::vector<QPointF> m_marks;
  std::vector<LabelPlace> m_places;
};

}  // namespace jw

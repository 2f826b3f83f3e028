#pragma once

#include <vector>

#include <qcustomplot.h>

namespace jw {

/// A mark at a point of the plane.
struct PlotMark {
  enum class Shape { Cross, Ring, Disc, Target };
  QPointF at;  ///< axis coordinates
  Shape shape = Shape::Cross;
  QColor colour;
  double radius = 5;  ///< [px]
};

/// Draws marks on one axis rect.
class PlotMarks : public QCPLayerable {
  Q_OBJECT

 public:
  PlotMarks(QCustomPlot* plot, QCPAxisRect* rect, const QString& layer);
  void setMarks(std::vector<PlotMark> marks) { m_marks = std::move(marks); }
  void setGround(const QColor& ground) { m_ground = ground; }
  const std::vector<PlotMark>& marks() const { return m_marks; }

 protected:
  void applyDefaultAntialiasingHint(QCPPainter* painter) const override;
  QRect clipRect() const override;
  void draw(QCPPainter* painter) override;

 private:
  void drawMark(QCPPainter* painter, const PlotMark& mark, const QPointF& centre) const;

  QCPAxisRect* m_rect;
  QColor m_ground;
  std::vector<PlotMark> m_marks;
};

}  // namespace jw

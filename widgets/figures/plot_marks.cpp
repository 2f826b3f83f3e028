#include "widgets/figures/plot_marks.h"

namespace jw {

PlotMarks::PlotMarks(QCustomPlot* plot, QCPAxisRect* rect, const QString& layer)
    : QCPLayerable(plot, layer), m_rect(rect) {}

void PlotMarks::applyDefaultAntialiasingHint(QCPPainter* painter) const {
  painter->setAntialiasing(true);
}

QRect PlotMarks::clipRect() const { return m_rect->rect(); }

void PlotMarks::drawMark(QCPPainter* painter, const PlotMark& mark, const QPointF& centre) const {
  const double r = mark.radius;
  painter->setPen(QPen(mark.colour, 1.8));
  painter->setBrush(Qt::NoBrush);
  switch (mark.shape) {
    case PlotMark::Shape::Cross:
      painter->drawLine(QLineF(centre - QPointF(r, 0), centre + QPointF(r, 0)));
      painter->drawLine(QLineF(centre - QPointF(0, r), centre + QPointF(0, r)));
      break;
    case PlotMark::Shape::Ring: painter->drawEllipse(centre, r, r); break;
    case PlotMark::Shape::Disc:
      painter->setPen(QPen(m_ground, 1.5));
      painter->setBrush(mark.colour);
      painter->drawEllipse(centre, r, r);
      break;
    case PlotMark::Shape::Target:
      painter->setBrush(m_ground);
      painter->drawEllipse(centre, r, r);
      break;
  }
}

void PlotMarks::draw(QCPPainter* painter) {
  const QCPAxis* speed = m_rect->axis(QCPAxis::atBottom);
  const QCPAxis* torque = m_rect->axis(QCPAxis::atLeft);
  for (const PlotMark& mark : m_marks)
    drawMark(painter, mark, {speed->coordToPixel(mark.at.x()), torque->coordToPixel(mark.at.y())});
}

}  // namespace jw

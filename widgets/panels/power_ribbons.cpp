#include "widgets/panels/power_ribbons.h"

#include <cmath>

#include <QPainterPath>

#include "widgets/panels/power_path_painter.h"

namespace jw {
namespace {

constexpr double kRibbonTop = 22;  // [px] below the card's top

void drawChevrons(QPainter& painter, const QRectF& rect, bool back, const QColor& colour) {
  const double h = qBound(3.0, rect.height() * 0.22, 5.0);
  const double tip = back ? -h * 0.8 : h * 0.8;
  painter.setPen(QPen(colour, 1.3, Qt::SolidLine, Qt::RoundCap, Qt::RoundJoin));
  painter.setBrush(Qt::NoBrush);
  for (const double shift : {-5.0, 1.0}) {
    const QPointF c = rect.center() + QPointF(shift + 2, 0);
    const QPointF points[] = {c + QPointF(-tip / 2, -h), c + QPointF(tip / 2, 0),
                              c + QPointF(-tip / 2, h)};
    painter.drawPolyline(points, 3);
  }
}

void paintUnknown(QPainter& painter, const QRectF& rect, const Palette& palette) {
  painter.setPen(QPen(palette.zeroLine, 1, Qt::DashLine));
  painter.drawLine(QLineF(rect.left() + 4, rect.center().y(), rect.right() - 4, rect.center().y()));
}

}  // namespace

double RibbonScale::thickness(double power) const {
  if (!(largest > 0) || !std::isfinite(power) || power == 0) return 1;
  return qMax(1.5, kThickest * qMin(1.0, std::abs(power) / largest));
}

std::vector<QRectF> linkRects(const PowerPathLayout& layout, std::size_t index, double thickness) {
  const QRectF& from = layout.cards[index];
  const QRectF& to = layout.cards[index + 1];
  const QRectF start(from.right() - 2, from.top() + kRibbonTop, 0, thickness);
  if (layout.rows[index] == layout.rows[index + 1])
    return {start.adjusted(0, 0, to.left() - from.right() + 4, 0)};
  const double stub = 12;
  return {start.adjusted(0, 0, stub, 0),
          QRectF(to.left() - stub, to.top() + kRibbonTop, stub + 2, thickness)};
}

QRectF lossStream(const QRectF& card, double thickness) {
  return {card.right() - 24 - thickness, card.bottom() - 2, thickness, 32};
}

void paintLink(QPainter& painter, const std::vector<QRectF>& rects, double power,
               const Palette& palette) {
  for (const QRectF& rect : rects) {
    if (std::isnan(power)) {
      paintUnknown(painter, rect, palette);
      continue;
    }
    const bool back = power < 0;
    const QColor base = back ? palette.flowBack : palette.flow;
    const QColor strong = blend(back ? palette.moves[1] : palette.accent, base, 0.65);
    painter.fillRect(rect, base);
    if (back) painter.fillRect(rect, QBrush(strong, Qt::BDiagPattern));
    if (power != 0 && rect.width() >= 20) drawChevrons(painter, rect, back, strong);
  }
}

void paintLoss(QPainter& painter, const QRectF& stream, const Palette& palette) {
  // It leaves the card as wide as the loss and ends in a point, so that its direction is plain.
  const double neck = stream.bottom() - 8;
  const double head = stream.width() / 2 + 4;
  const double x = stream.center().x();
  QPainterPath shape(stream.topLeft());
  shape.lineTo(stream.left(), neck);
  shape.lineTo(x - head, neck);
  shape.lineTo(x, stream.bottom());
  shape.lineTo(x + head, neck);
  shape.lineTo(stream.right(), neck);
  shape.lineTo(stream.topRight());
  shape.closeSubpath();
  painter.setPen(Qt::NoPen);
  painter.setBrush(palette.loss);
  painter.drawPath(shape);
}

}  // namespace jw

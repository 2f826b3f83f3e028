#include "widgets/figures/path_band.h"

#include <algorithm>

namespace jw {
namespace {

double areaOf(const QPolygonF& polygon) {
  double sum = 0;
  for (qsizetype i = 0; i < polygon.size(); ++i) {
    const QPointF& p = polygon[i];
    const QPointF& q = polygon[(i + 1) % polygon.size()];
    sum += p.x() * q.y() - q.x() * p.y();
  }
  return sum / 2;
}

/// Adds what a rectangle covers on its way to the next one. All parts turn the same way, so that
/// one path of them fills without seams.
void addSweep(QPainterPath& path, const QRectF& a, const QRectF& b) {
  const bool right = b.center().x() >= a.center().x();
  const bool down = b.center().y() >= a.center().y();
  QPolygonF between;
  if (right == down)
    between << a.bottomLeft() << a.topRight() << b.topRight() << b.bottomLeft();
  else
    between << a.topLeft() << a.bottomRight() << b.bottomRight() << b.topLeft();
  if (areaOf(between) < 0) std::reverse(between.begin(), between.end());
  path.addPolygon(between);
  path.closeSubpath();
  path.addRect(b);
}

}  // namespace

PathBand::PathBand(QCustomPlot* plot, QCPAxisRect* rect, const QString& layer)
    : QCPLayerable(plot, layer, rect), m_rect(rect) {}

void PathBand::applyDefaultAntialiasingHint(QCPPainter* painter) const {
  painter->setAntialiasing(true);
}

QRectF PathBand::pixels(const PathReach& reach) const {
  const QCPAxis& x = *m_rect->axis(QCPAxis::atBottom);
  const QCPAxis& y = *m_rect->axis(QCPAxis::atLeft);
  return QRectF(QPointF(x.coordToPixel(reach.speedLow), y.coordToPixel(reach.torqueHigh)),
                QPointF(x.coordToPixel(reach.speedHigh), y.coordToPixel(reach.torqueLow)))
      .normalized();
}

void PathBand::draw(QCPPainter* painter) {
  if (m_reach.empty()) return;
  QPainterPath path;
  path.setFillRule(Qt::WindingFill);
  QRectF before = pixels(m_reach.front());
  path.addRect(before);
  for (const PathReach& reach : m_reach) {
    const QRectF now = pixels(reach);
    addSweep(path, before, now);
    before = now;
  }
  QColor tint = m_hue;
  tint.setAlphaF(0.22F);
  painter->setPen(Qt::NoPen);
  painter->setBrush(tint);
  painter->drawPath(path);
}

}  // namespace jw

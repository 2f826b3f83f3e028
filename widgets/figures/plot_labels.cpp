#include "widgets/figures/plot_labels.h"

#include <QFontMetricsF>

namespace jw {
namespace {

// Where the leader meets the label: the point of its outline nearest to the anchor.
QPointF nearestOn(const QRectF& rect, const QPointF& p) {
  return {qBound(rect.left(), p.x(), rect.right()), qBound(rect.top(), p.y(), rect.bottom())};
}

}  // namespace

PlotLabels::PlotLabels(QCustomPlot* plot, QCPAxisRect* rect, const QString& layer)
    : QCPLayerable(plot, layer), m_rect(rect) {}

void PlotLabels::setMarks(std::vector<QPointF> marks, double radius) {
  m_marks = std::move(marks);
  m_markRadius = radius;
}

void PlotLabels::setFonts(const QFont& plain, const QFont& strong) {
  m_plain = plain;
  m_strong = strong;
}

void PlotLabels::applyDefaultAntialiasingHint(QCPPainter* painter) const {
  painter->setAntialiasing(true);
}

QPointF PlotLabels::toPixels(const QPointF& point) const {
  return {m_rect->axis(QCPAxis::atBottom)->coordToPixel(point.x()),
          m_rect->axis(QCPAxis::atLeft)->coordToPixel(point.y())};
}

LabelSurroundings PlotLabels::surroundings() const {
  LabelSurroundings around;
  around.area = QRectF(m_rect->rect()).adjusted(2, 2, -2, -2);
  for (const QPolygonF& line : m_lines) {
    QPolygonF pixels;
    for (const QPointF& p : line) {
      const QPointF pixel = toPixels(p);
      if (pixels.isEmpty() || (pixel - pixels.last()).manhattanLength() > 2) pixels << pixel;
    }
    around.lines.push_back(pixels);
  }
  const QPointF origin = toPixels({0, 0});
  const QRectF& area = around.area;
  around.lines.push_back({{area.left(), origin.y()}, {area.right(), origin.y()}});
  around.lines.push_back({{origin.x(), area.top()}, {origin.x(), area.bottom()}});
  for (const QPointF& mark : m_marks) {
    const QPointF r(m_markRadius, m_markRadius);
    around.taken.emplace_back(toPixels(mark) - r, toPixels(mark) + r);
  }
  return around;
}

void PlotLabels::drawLabel(QCPPainter* painter, const PlotLabel& label,
                           const LabelPlace& place) const {
  if (label.leader) {
    const QPointF end = nearestOn(place.rect, place.anchor);
    QLineF line(place.anchor, end);
    const double total = line.length();
    if (total > m_markRadius) {
      painter->setPen(QPen(label.colour, 1));
      painter->drawLine(QLineF(line.pointAt(m_markRadius / total), end));
    }
  }
  painter->setFont(label.strong ? m_strong : m_plain);
  painter->setPen(label.colour);
  painter->drawText(place.rect, Qt::AlignCenter | Qt::TextDontClip, label.text);
}

void PlotLabels::draw(QCPPainter* painter) {
  std::vector<LabelRequest> requests;
  for (const PlotLabel& label : m_labels) {
    const QFontMetricsF metrics(label.strong ? m_strong : m_plain);
    LabelRequest request{
        {metrics.horizontalAdvance(label.text) + 2, metrics.height()}, {}, label.gap};
    const QRectF area = QRectF(m_rect->rect());
    for (const QPointF& anchor : label.anchors)
      if (area.contains(toPixels(anchor))) request.anchors.push_back(toPixels(anchor));
    requests.push_back(std::move(request));
  }
  m_places = placeLabels(requests, surroundings());
  for (std::size_t i = 0; i < m_places.size(); ++i)
    if (!m_places[i].rect.isNull()) drawLabel(painter, m_labels[i], m_places[i]);
}

}  // namespace jw

#include "widgets/figures/plot_labels.h"

#include <QFontMetricsF>

namespace jw {
namespace {

// Where the leader meets the label: the point of its outline nearest to the anchor.
QPointF nearestOn(const QRectF& rect, const QPointF& p) {
  return {qBound(rect.left(), p.x(), rect.right()), qBound(rect.top(), p.y(), rect.bottom())};
}

}  // namespace

std::vector<PlotLabel> levelLabels(const std::vector<Level>& levels, const PlotStyle& style) {
  std::vector<PlotLabel> labels;
  for (const Level& level : levels)
    labels.push_back({level.name,
                      inkOf(style.colours.*level.hue, style.colours.panel),
                      false,
                      false,
                      2,
                      {},
                      level.value,
                      style.colours.panel});
  return labels;
}

PlotLabels::PlotLabels(QCustomPlot* plot, QCPAxisRect* rect, const QString& layer)
    : QCPLayerable(plot, layer), m_rect(rect) {}

void PlotLabels::setMarks(std::vector<QPointF> marks, double radius) {
  m_marks = std::move(marks);
  m_markRadius = radius;
}

void PlotLabels::setLineLabels(std::vector<LineLabel> labels, const QColor& ground) {
  m_lineLabels = std::move(labels);
  m_ground = ground;
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
  if (m_heights) {
    const double top = toPixels({0, m_heights->second}).y();
    const double bottom = toPixels({0, m_heights->first}).y();
    around.area.setTop(qMax(around.area.top(), top));
    around.area.setBottom(qMin(around.area.bottom(), bottom));
  }
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
  for (const PlotLabel& label : m_labels)
    if (label.level)
      around.lines.push_back({{area.left(), toPixels({0, *label.level}).y()},
                              {area.right(), toPixels({0, *label.level}).y()}});
  around.lines.push_back({{area.left(), origin.y()}, {area.right(), origin.y()}});
  around.lines.push_back({{origin.x(), area.top()}, {origin.x(), area.bottom()}});
  const QPointF half(16, 7);
  for (const LineLabel& label : m_lineLabels)
    around.taken.emplace_back(toPixels(label.at) - half, toPixels(label.at) + half);
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
  if (label.ground.isValid()) {
    QColor veil = label.ground;
    veil.setAlphaF(0.8F);
    painter->fillRect(place.rect.adjusted(0, 2, 0, -2), veil);
  }
  painter->setFont(label.strong ? m_strong : m_plain);
  painter->setPen(label.colour);
  painter->drawText(place.rect, Qt::AlignCenter | Qt::TextDontClip, label.text);
}

void PlotLabels::drawLevel(QCPPainter* painter, const PlotLabel& label) const {
  const QRectF area = QRectF(m_rect->rect());
  const double y = toPixels({0, *label.level}).y();
  if (!(y >= area.top() && y <= area.bottom())) return;
  QPen pen(label.colour, 1, Qt::CustomDashLine, Qt::FlatCap);
  pen.setDashPattern({2, 3});
  painter->setPen(pen);
  painter->drawLine(QLineF(area.left(), y, area.right(), y));
}

std::vector<QPointF> PlotLabels::anchorsOf(const PlotLabel& label) const {
  const QRectF area = QRectF(m_rect->rect());
  std::vector<QPointF> anchors;
  if (label.level) {
    const double y = toPixels({0, *label.level}).y();
    for (const double share : {0.99, 0.01, 0.75, 0.25, 0.5})
      anchors.emplace_back(area.left() + share * area.width(), y);
  }
  for (const QPointF& anchor : label.anchors) anchors.push_back(toPixels(anchor));
  std::erase_if(anchors, [&](const QPointF& p) { return !area.contains(p); });
  return anchors;
}

LabelRequest PlotLabels::requestOf(const PlotLabel& label) const {
  const QFontMetricsF metrics(label.strong ? m_strong : m_plain);
  const QSizeF size(metrics.horizontalAdvance(label.text) + 2, metrics.height());
  return {size, anchorsOf(label), label.gap};
}

void PlotLabels::drawOnLine(QCPPainter* painter, const LineLabel& label) const {
  const QFontMetricsF metrics(m_plain);
  QRectF rect(0, 0, metrics.horizontalAdvance(label.text) + 4, metrics.ascent());
  rect.moveCenter(toPixels(label.at));
  if (!QRectF(m_rect->rect()).contains(rect)) return;
  painter->fillRect(rect, m_ground);
  painter->setFont(m_plain);
  painter->setPen(label.colour);
  painter->drawText(rect, Qt::AlignCenter | Qt::TextDontClip, label.text);
}

void PlotLabels::draw(QCPPainter* painter) {
  for (const LineLabel& label : m_lineLabels) drawOnLine(painter, label);
  std::vector<LabelRequest> requests;
  for (const PlotLabel& label : m_labels) {
    if (label.level) drawLevel(painter, label);
    requests.push_back(requestOf(label));
  }
  m_places = placeLabels(requests, surroundings());
  for (std::size_t i = 0; i < m_places.size(); ++i)
    if (!m_places[i].rect.isNull()) drawLabel(painter, m_labels[i], m_places[i]);
}

}  // namespace jw

#include "widgets/figures/log_rows.h"

#include <algorithm>
#include <cmath>
#include <limits>

#include "widgets/figures/plot_layers.h"

namespace jw {
namespace {

/// Way up and down [px], and number of points, for one pixel across from which a curve is drawn
/// without smooth edges.
constexpr double kThicket = 4;
constexpr double kCrowd = 1.5;

constexpr float kSheer = 0.6F;
constexpr double kUnseen = 0.75;  // [px]

/// Turns points of a curve into pixels and parts it into pieces inside the rect's height; points of
/// NaN break it.
class PieceClipper {
 public:
  PieceClipper(const QCPAxisRect& rect, std::vector<QPolygonF>& pieces)
      : m_time(rect.axis(QCPAxis::atBottom)),
        m_value(rect.axis(QCPAxis::atLeft)),
        m_top(rect.top() - 4),
        m_bottom(rect.bottom() + 4),
        m_pieces(pieces) {}

  void add(double time, double value) {
    if (std::isnan(value)) {
      m_known = m_open = false;
      return;
    }
    const QPointF p(m_time->coordToPixel(time), m_value->coordToPixel(value));
    const bool isIn = inside(p);
    if (m_known && inside(m_before) != isIn) put(edgePoint(m_before, p));
    const bool across =
        m_known && !isIn && !inside(m_before) && (p.y() < m_top) != (m_before.y() < m_top);
    if (across) {
      put(atHeight(m_before, p, m_before.y() < m_top ? m_top : m_bottom));
      put(atHeight(m_before, p, p.y() < m_top ? m_top : m_bottom));
    }
    if (isIn) put(p);
    if (!isIn) m_open = false;
    m_before = p;
    m_known = true;
  }

  /// Whether strokes cover a picture of `width` [px] rather than run through it.
  bool isThicket(int width) const {
    return m_climbed > kThicket * width || m_points > kCrowd * width;
  }

 private:
  bool inside(const QPointF& p) const { return p.y() >= m_top && p.y() <= m_bottom; }

  static QPointF atHeight(const QPointF& a, const QPointF& b, double y) {
    return {a.x() + (b.x() - a.x()) * (y - a.y()) / (b.y() - a.y()), y};
  }

  QPointF edgePoint(const QPointF& a, const QPointF& b) const {
    return atHeight(a, b, std::min(a.y(), b.y()) < m_top ? m_top : m_bottom);
  }

  void put(const QPointF& p) {
    if (!m_open) m_pieces.emplace_back();
    QPolygonF& piece = m_pieces.back();
    // What moves less than the eye can tell costs time only.
    if (m_open && (p - piece.last()).manhattanLength() < kUnseen) return;
    if (m_open) m_climbed += std::abs(p.y() - piece.last().y());
    piece << p;
    m_points += 1;
    m_open = true;
  }

  const QCPAxis* m_time;
  const QCPAxis* m_value;
  double m_top, m_bottom;
  std::vector<QPolygonF>& m_pieces;
  QPointF m_before;
  bool m_known = false, m_open = false;
  double m_climbed = 0;
  double m_points = 0;
};

/// What a curve covers in each column of pixels, as strokes from top to bottom.
std::vector<QLineF> columnsOf(const std::vector<QPolygonF>& pieces, const QRect& area) {
  constexpr double kNone = std::numeric_limits<double>::infinity();
  std::vector<std::pair<double, double>> reach(std::size_t(area.width()), {kNone, -kNone});
  const auto cover = [&](double x, double y) {
    const int column = qBound(0, int(x) - area.left(), area.width() - 1);
    auto& [top, bottom] = reach[std::size_t(column)];
    top = std::min(top, y);
    bottom = std::max(bottom, y);
  };
  for (const QPolygonF& piece : pieces) {
    for (qsizetype i = 0; i < piece.size(); ++i) {
      cover(piece[i].x(), piece[i].y());
      if (i + 1 == piece.size()) continue;
      const QPointF step = piece[i + 1] - piece[i];
      for (double x = std::ceil(piece[i].x()); x < piece[i + 1].x(); x += 1) {
        const double y = piece[i].y() + step.y() * (x - piece[i].x()) / step.x();
        cover(x - 0.5, y);
        cover(x, y);
      }
    }
  }
  std::vector<QLineF> strokes;
  for (std::size_t k = 0; k < reach.size(); ++k) {
    const double x = area.left() + double(k);
    if (reach[k].first <= reach[k].second)
      strokes.emplace_back(x, reach[k].first, x, reach[k].second);
  }
  return strokes;
}

}  // namespace

LogCurve::LogCurve(QCustomPlot* plot, QCPAxisRect* rect)
    : QCPLayerable(plot, kDataLayer, rect), m_rect(rect) {}

void LogCurve::applyDefaultAntialiasingHint(QCPPainter* painter) const {
  painter->setAntialiasing(true);
}

void LogCurve::setLine(const LogLine& line, double factor, double longestStep) {
  m_line = line;
  m_factor = factor;
  m_longestStep = longestStep;
}

void LogCurve::draw(QCPPainter* painter) {
  if (!m_line.trace || m_rect->width() < 1 || m_rect->height() < 1) return;
  const QCPRange seen = m_rect->axis(QCPAxis::atBottom)->range();
  const int width = m_rect->width();
  std::vector<QPolygonF> pieces;
  PieceClipper clipper(*m_rect, pieces);
  for (const QPointF& p : m_line.trace->stroke(seen.lower, seen.upper, width, m_longestStep))
    clipper.add(p.x(), p.y() * m_factor);
  painter->setBrush(Qt::NoBrush);
  // A thicket of steep strokes needs no smooth edges; column by column it is drawn at once.
  if (clipper.isThicket(width)) {
    QColor sheer = m_pen.color();
    sheer.setAlphaF(kSheer);  // what lies behind stays in sight
    painter->setAntialiasing(false);
    painter->setPen(QPen(sheer, 1));
    const std::vector<QLineF> strokes = columnsOf(pieces, m_rect->rect());
    painter->QPainter::drawLines(strokes.data(), int(strokes.size()));
    return;
  }
  painter->setAntialiasing(true);
  painter->setPen(m_pen);
  for (const QPolygonF& piece : pieces)
    piece.size() > 1 ? painter->drawPolyline(piece) : painter->drawPoint(piece.first());
}

LogStretchOverlay::LogStretchOverlay(QCustomPlot* plot, QCPAxisRect* rect, bool edges)
    : QCPLayerable(plot, edges ? kMarkLayer : QStringLiteral("background"), rect),
      m_rect(rect),
      m_edges(edges) {}

void LogStretchOverlay::applyDefaultAntialiasingHint(QCPPainter* painter) const {
  painter->setAntialiasing(true);
}

void LogStretchOverlay::setStretch(const LogStretch& stretch, int chosen) {
  m_stretch = stretch;
  m_chosen = chosen;
}

double LogStretchOverlay::pixelOf(double time) const {
  const QRectF area(m_rect->rect());
  const double x = m_rect->axis(QCPAxis::atBottom)->coordToPixel(time);
  return qBound(area.left() - 20, x, area.right() + 20);
}

void LogStretchOverlay::draw(QCPPainter* painter) {
  if (!m_style) return;
  m_edges ? drawEdges(painter) : drawGaps(painter);
}

void LogStretchOverlay::drawGaps(QCPPainter* painter) const {
  const QRectF area(m_rect->rect());
  QColor tint = m_style->colours.close;
  tint.setAlphaF(0.22F);
  for (const LogStretch& gap : m_gaps) {
    const double left = pixelOf(gap.from);
    const double right = pixelOf(gap.to);
    if (right <= area.left() || left >= area.right()) continue;
    const QRectF band(left, area.top(), std::max(right - left, 2.0), area.height());
    painter->fillRect(band, tint);
  }
}

void LogStretchOverlay::nameGaps(QCPPainter* painter) const {
  const QRectF area(m_rect->rect());
  const QString text = QStringLiteral("gap");
  const double width = QFontMetricsF(m_style->font).horizontalAdvance(text) + 8;
  painter->setFont(m_style->font);
  for (const LogStretch& gap : m_gaps) {
    const QRectF band(QPointF(pixelOf(gap.from), area.top()),
                      QPointF(pixelOf(gap.to), area.top() + 20));
    if (band.width() < width || !band.intersects(area)) continue;
    painter->fillRect(band.adjusted(0, 2, 0, -2),
                      blend(m_style->colours.close, m_style->colours.panel, 0.22));
    painter->setPen(inkOf(m_style->colours.close, m_style->colours.panel));
    painter->drawText(band, Qt::AlignCenter, text);
  }
}

void LogStretchOverlay::drawEdges(QCPPainter* painter) const {
  nameGaps(painter);
  if (!(m_stretch.to > m_stretch.from)) return;
  const QRectF area(m_rect->rect());
  const double left = pixelOf(m_stretch.from);
  const double right = pixelOf(m_stretch.to);
  QColor veil = m_style->colours.panel;
  veil.setAlphaF(0.62F);
  painter->fillRect(QRectF(area.topLeft(), QPointF(left, area.bottom())), veil);
  painter->fillRect(QRectF(QPointF(right, area.top()), area.bottomRight()), veil);
  int edge = 0;
  for (const double x : {left, right}) {
    const QColor accent = m_style->colours.accent;
    painter->setPen(QPen(accent, edge == m_chosen ? 2.4 : 1.4));
    painter->drawLine(QLineF(x, area.top(), x, area.bottom()));
    painter->setPen(Qt::NoPen);
    painter->setBrush(accent);
    painter->drawRoundedRect(QRectF(x - 3, area.center().y() - 9, 6, 18), 3, 3);
    painter->setBrush(Qt::NoBrush);
    ++edge;
  }
}

}  // namespace jw

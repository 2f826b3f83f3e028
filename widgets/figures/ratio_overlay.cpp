#include "widgets/figures/ratio_overlay.h"

#include <cmath>

#include "widgets/theme/number_text.h"

namespace jw {
namespace {

constexpr double kRow = 15;        // [px] between lines of text
constexpr double kTickHeight = 6;  // [px]
constexpr double kGrip = 5;        // [px] beside the line that takes hold of it

/// Heights of the tops of the rows that fit between `top` and `bottom`.
std::vector<double> rowsDown(double top, double bottom) {
  std::vector<double> rows;
  for (double y = top; y + kRow <= bottom + 3; y += kRow) rows.push_back(y);
  return rows;
}

}  // namespace

QRectF placeBeside(double x, const QSizeF& size, bool right, const std::vector<double>& rows,
                   const QRectF& area, const std::vector<QRectF>& taken) {
  constexpr double kGap = 4;
  for (const double y : rows) {
    for (const bool side : {right, !right}) {
      const QRectF rect({side ? x + kGap : x - kGap - size.width(), y}, size);
      bool free = rect.left() >= area.left() && rect.right() <= area.right();
      for (const QRectF& other : taken) free = free && !rect.intersects(other);
      if (free) return rect;
    }
  }
  return {};
}

RatioOverlay::RatioOverlay(QCustomPlot* plot, QCPAxisRect* rect, const QString& layer)
    : QCPLayerable(plot, layer), m_rect(rect) {}

void RatioOverlay::applyDefaultAntialiasingHint(QCPPainter* painter) const {
  painter->setAntialiasing(true);
}

QRect RatioOverlay::clipRect() const { return m_rect->rect().adjusted(-1, -1, 1, 1); }

double RatioOverlay::pixelOf(double ratio) const {
  return m_rect->axis(QCPAxis::atBottom)->coordToPixel(ratio);
}

double RatioOverlay::heightOf(double margin) const {
  return m_rect->axis(QCPAxis::atLeft)->coordToPixel(margin);
}

QRectF RatioOverlay::handleRect() const {
  if (m_view == nullptr || m_style == nullptr || !(m_view->present > 0)) return {};
  const QFontMetricsF metrics(m_style->strongFont);
  const QSizeF size(metrics.horizontalAdvance(numberText(m_view->present, 4)) + 12, 17);
  QRectF rect(QPointF(0, 0), size);
  rect.moveCenter({pixelOf(m_view->present), 0});
  rect.moveBottom(m_rect->rect().bottom());
  return rect;
}

bool RatioOverlay::isHandle(const QPointF& pixel) const {
  if (m_view == nullptr || !(m_view->present > 0) || !m_rect->rect().contains(pixel.toPoint()))
    return false;
  return std::abs(pixel.x() - pixelOf(m_view->present)) <= kGrip || handleRect().contains(pixel);
}

void RatioOverlay::drawTicks(QCPPainter& painter) const {
  painter.setPen(QPen(m_style->colours.muted, 1));
  const double bottom = m_rect->rect().bottom();
  for (const double ratio : m_view->ticks) {
    const double x = pixelOf(ratio);
    painter.drawLine(QLineF(x, bottom - kTickHeight, x, bottom));
  }
}

void RatioOverlay::drawMarks(QCPPainter& painter) const {
  const QRectF area(m_rect->rect());
  const QFontMetricsF metrics(m_style->font);
  const std::vector<double> rows = rowsDown(area.top() + 2, qMax(heightOf(kMostMargin), 40.0));
  std::vector<QRectF> taken;
  painter.setFont(m_style->font);
  for (const RatioMark& mark : m_view->marks) {
    const double x = pixelOf(mark.ratio);
    if (x < area.left() || x > area.right()) continue;
    const QSizeF size(metrics.horizontalAdvance(mark.name) + 2, kRow);
    const QRectF place = placeBeside(x, size, true, rows, area, taken);
    const QColor ink = inkOf(m_style->colours.*mark.hue, m_style->colours.panel);
    QPen pen(ink, 1, Qt::CustomDashLine, Qt::FlatCap);
    pen.setDashPattern({4, 3});
    painter.setPen(pen);
    painter.drawLine(QLineF(x, place.isNull() ? area.top() : place.top() + 2, x, area.bottom()));
    if (place.isNull()) continue;
    taken.push_back(place.adjusted(-6, 0, 6, 0));
    painter.fillRect(place.adjusted(-1, 1, 1, -1), m_style->colours.panel);
    painter.setPen(ink);
    painter.drawText(place, Qt::AlignCenter | Qt::TextDontClip, mark.name);
  }
}

void RatioOverlay::drawEnds(QCPPainter& painter) const {
  const QRectF area(m_rect->rect());
  const QFontMetricsF metrics(m_style->strongFont);
  const QColor ink = inkOf(m_style->colours.holds, m_style->colours.panel);
  const double top = qMin(heightOf(kLeastMargin), area.bottom() - 3 * kRow);
  const std::vector<double> rows = rowsDown(top, area.bottom() - kTickHeight);
  std::vector<QRectF> taken{handleRect().adjusted(-3, -1, 3, 0)};
  painter.setFont(m_style->strongFont);
  for (const RatioEnd& end : m_view->ends) {
    const double x = pixelOf(end.ratio);
    if (x < area.left() || x > area.right()) continue;
    painter.setPen(QPen(ink, 1));
    painter.drawLine(QLineF(x, heightOf(kMostMargin), x, area.bottom()));
    const QSizeF size(metrics.horizontalAdvance(end.text) + 2, kRow);
    const QRectF place = placeBeside(x, size, end.low, rows, area, taken);
    if (place.isNull()) continue;
    taken.push_back(place.adjusted(-4, 0, 4, 0));
    painter.drawText(place, Qt::AlignCenter | Qt::TextDontClip, end.text);
  }
}

void RatioOverlay::drawHandle(QCPPainter& painter) const {
  const QRectF box = handleRect();
  if (box.isNull()) return;
  const double x = pixelOf(m_view->present);
  const QColor accent = m_style->colours.accent;
  painter.setPen(QPen(accent, 1.6));
  painter.drawLine(QLineF(x, m_rect->rect().top(), x, box.top()));
  painter.setBrush(accent);
  painter.drawRoundedRect(box, 4, 4);
  painter.setBrush(Qt::NoBrush);
  painter.setFont(m_style->strongFont);
  painter.setPen(m_style->colours.panel);
  painter.drawText(box, Qt::AlignCenter | Qt::TextDontClip, numberText(m_view->present, 4));
}

void RatioOverlay::draw(QCPPainter* painter) {
  if (m_style == nullptr || m_view == nullptr || m_view->empty()) return;
  drawTicks(*painter);
  drawHandle(*painter);
  drawMarks(*painter);
  drawEnds(*painter);
}

}  // namespace jw

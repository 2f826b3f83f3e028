#include "widgets/figures/row_overlay.h"

#include <cmath>

#include <QFontMetricsF>

#include "widgets/theme/number_text.h"

namespace jw {
namespace {

QRectF bandArea(const QCPAxisRect& rect, const CycleBand& band) {
  const QCPAxis* time = rect.axis(QCPAxis::atBottom);
  const QRectF area = QRectF(rect.rect());
  const double left = qBound(area.left(), time->coordToPixel(band.from), area.right());
  const double right = qBound(area.left(), time->coordToPixel(band.to), area.right());
  return {left, area.top(), right - left, area.height()};
}

}  // namespace

RowOverlay::RowOverlay(QCustomPlot* plot, QCPAxisRect* rect, const QString& layer)
    : QCPLayerable(plot, layer, rect), m_rect(rect) {}

void RowOverlay::applyDefaultAntialiasingHint(QCPPainter* painter) const {
  painter->setAntialiasing(true);
}

void RowOverlay::setCursor(double time, bool readTime) {
  m_cursor = time;
  m_readTime = readTime;
}

double RowOverlay::drawEntry(QCPPainter* painter, const KeyEntry& entry, double x, double y) const {
  const QFontMetricsF metrics(m_style->font);
  painter->setPen(entry.pen);
  painter->drawLine(QLineF(x, y - metrics.ascent() * 0.35, x + 20, y - metrics.ascent() * 0.35));
  painter->setFont(m_style->font);
  painter->setPen(entry.ink);
  painter->drawText(QPointF(x + 25, y), entry.text);
  x += 25 + metrics.horizontalAdvance(entry.text);
  if (std::isnan(entry.value)) return x + 16;
  const QString value = numberText(entry.value) + QStringLiteral(" ") + entry.unit;
  painter->setFont(m_style->strongFont);
  painter->drawText(QPointF(x + 5, y), value);
  // A fixed width keeps the entries still while the cursor moves.
  return x + 5 + std::max(QFontMetricsF(m_style->strongFont).horizontalAdvance(value), 52.0) + 10;
}

void RowOverlay::drawKey(QCPPainter* painter) const {
  const double y = m_rect->rect().top() - 7;
  double x = m_rect->rect().left();
  painter->setFont(m_style->font);
  painter->setPen(m_style->colours.muted);
  painter->drawText(QPointF(x, y), m_title);
  x += QFontMetricsF(m_style->font).horizontalAdvance(m_title) + 18;
  for (const KeyEntry& entry : m_entries) x = drawEntry(painter, entry, x, y);
}

void RowOverlay::drawCursor(QCPPainter* painter) const {
  const double x = m_rect->axis(QCPAxis::atBottom)->coordToPixel(m_cursor);
  const QRectF area = QRectF(m_rect->rect());
  if (x < area.left() - 0.5 || x > area.right() + 0.5) return;
  const QColor accent = m_style->colours.accent;
  painter->setPen(QPen(accent, 1.4));
  painter->drawLine(QLineF(x, area.top(), x, area.bottom()));
  if (!m_readTime) return;
  const QString text = fixedNumber(m_cursor, 3) + QStringLiteral(" s");
  const double width = QFontMetricsF(m_style->strongFont).horizontalAdvance(text);
  const bool left = x + 6 + width > area.right();
  painter->setFont(m_style->strongFont);
  painter->setPen(inkOf(accent, m_style->colours.panel));
  painter->drawText(QPointF(left ? x - 6 - width : x + 6, area.bottom() - 6), text);
}

void RowOverlay::draw(QCPPainter* painter) {
  if (!m_style) return;
  drawKey(painter);
  if (!std::isnan(m_cursor)) drawCursor(painter);
}

BandOverlay::BandOverlay(QCustomPlot* plot, QCPAxisRect* rect, const QString& layer)
    : QCPLayerable(plot, layer, rect), m_rect(rect) {}

void BandOverlay::applyDefaultAntialiasingHint(QCPPainter* painter) const {
  painter->setAntialiasing(false);
}

void BandOverlay::setBands(const std::vector<CycleBand>& bands, bool named) {
  m_bands = bands;
  m_named = named;
}

void BandOverlay::drawName(QCPPainter* painter, const CycleBand& band, const QRectF& area) const {
  const QFontMetricsF metrics(m_style->strongFont);
  const QString name = metrics.elidedText(band.name, Qt::ElideRight, area.width() - 6);
  if (area.width() < 24) return;
  painter->setFont(m_style->strongFont);
  painter->setPen(m_style->colours.muted);
  const double bottom = area.top() - RowOverlay::height() - 2;
  painter->drawText(QRectF(area.left(), bottom - 16, area.width(), 16), Qt::AlignCenter, name);
}

void BandOverlay::draw(QCPPainter* painter) {
  if (!m_style) return;
  const QColor tint = blend(m_style->colours.muted, m_style->colours.panel, 0.06);
  for (std::size_t i = 0; i < m_bands.size(); ++i) {
    const QRectF area = bandArea(*m_rect, m_bands[i]);
    if (i % 2 == 1) painter->fillRect(area, tint);
    if (m_named) drawName(painter, m_bands[i], area);
  }
}

}  // namespace jw

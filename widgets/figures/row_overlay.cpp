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

double RowOverlay::entryWidth(const KeyEntry& entry, bool tight) const {
  const double name = QFontMetricsF(m_style->font).horizontalAdvance(entry.text);
  const double sample = tight ? 16 : 25;
  if (entry.value.isEmpty()) return sample + name + (tight ? 8 : 16);
  const double value = QFontMetricsF(m_style->strongFont).horizontalAdvance(entry.value);
  // A fixed width keeps the entries still while the cursor moves.
  return sample + name + 5 + (tight ? value + 7 : std::max(value, 38.0) + 12);
}

void RowOverlay::drawEntry(QCPPainter* painter, const KeyEntry& entry, double x, bool tight) const {
  const QFontMetricsF metrics(m_style->font);
  const double y = m_rect->rect().top() - 7;
  const double middle = y - metrics.ascent() * 0.35;
  painter->setPen(entry.pen);
  painter->drawLine(QLineF(x, middle, x + (tight ? 12 : 20), middle));
  x += tight ? 16 : 25;
  painter->setFont(m_style->font);
  painter->setPen(entry.ink);
  painter->drawText(QPointF(x, y), entry.text);
  painter->setFont(m_style->strongFont);
  painter->drawText(QPointF(x + metrics.horizontalAdvance(entry.text) + 5, y), entry.value);
}

void RowOverlay::drawKey(QCPPainter* painter) const {
  double x = m_rect->rect().left();
  painter->setFont(m_style->font);
  painter->setPen(m_style->colours.muted);
  painter->drawText(QPointF(x, m_rect->rect().top() - 7), m_title);
  x += QFontMetricsF(m_style->font).horizontalAdvance(m_title) + 16;
  double needed = x;
  for (const KeyEntry& entry : m_entries) needed += entryWidth(entry, false);
  const bool tight = needed > m_rect->outerRect().right() + 8;
  for (const KeyEntry& entry : m_entries) {
    drawEntry(painter, entry, x, tight);
    x += entryWidth(entry, tight);
  }
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
  const QPointF at(left ? x - 6 - width : x + 6, area.bottom() - 6);
  QColor ground = m_style->colours.panel;
  ground.setAlphaF(0.75F);
  painter->fillRect(QRectF(at - QPointF(2, 10), QSizeF(width + 4, 13)), ground);
  painter->setFont(m_style->strongFont);
  painter->setPen(inkOf(accent, m_style->colours.panel));
  painter->drawText(at, text);
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

#include "widgets/figures/tolerance_painter.h"

#include <algorithm>
#include <cmath>

#include "widgets/theme/marks.h"
#include "widgets/theme/number_text.h"
#include "widgets/theme/theme.h"

namespace jw {
namespace {

constexpr double kLowest = -0.5;  // margins that the bars show
constexpr double kHighest = 1.0;

/// Places of the columns within a row.
struct Columns {
  QRectF mark, title, bar, chance, linear;

  explicit Columns(const QRectF& row) {
    const QRectF inner = row.adjusted(10, 0, -10, 0);
    const double numbers = std::clamp(0.36 * inner.width(), 190.0, 280.0);
    const double titles = std::clamp(0.36 * inner.width(), 140.0, 300.0);
    mark = {inner.left(), inner.top(), 16, inner.height()};
    title = {inner.left() + 18, inner.top(), titles - 18, inner.height()};
    linear = {inner.right() - 0.34 * numbers, inner.top(), 0.34 * numbers, inner.height()};
    chance = {inner.right() - numbers, inner.top(), 0.66 * numbers, inner.height()};
    bar = {title.right() + 10, inner.top(), chance.left() - title.right() - 20, inner.height()};
  }

  double at(double margin) const {
    const double shown = std::clamp(margin, kLowest, kHighest);
    return bar.left() + bar.width() * (shown - kLowest) / (kHighest - kLowest);
  }
};

void text(QPainter& painter, const QRectF& rect, Qt::Alignment side, const QString& words,
          const QFont& font, const QColor& ink) {
  painter.setFont(font);
  painter.setPen(ink);
  painter.drawText(rect, side | Qt::AlignVCenter,
                   QFontMetricsF(font).elidedText(words, Qt::ElideRight, rect.width()));
}

/// "100 %", "67.7 %"; never rounded up to all or down to none.
QString percent(double share) {
  if (std::isnan(share)) return QStringLiteral("–");
  double shown = 100 * share;
  if (share < 1) shown = std::min(shown, 99.99);
  if (share > 0) shown = std::max(shown, 0.01);
  return numberText(shown, shown > 99 ? 4 : 3) + QStringLiteral(" %");
}

CheckState stateOf(const ChanceRow& row) {
  if (std::isnan(row.holds.share)) return CheckState::Open;
  constexpr double kSure = 0.95;
  if (row.holds.share >= 1) return CheckState::Holds;
  return row.holds.share >= kSure ? CheckState::Close : CheckState::Short;
}

void paintSpread(QPainter& painter, const Columns& c, const ChanceRow& row, const Palette& p) {
  const double middle = c.bar.center().y();
  painter.setPen(Qt::NoPen);
  painter.setBrush(blend(p.muted, p.panel, 0.16));
  painter.drawRoundedRect(QRectF(c.bar.left(), middle - 2.5, c.bar.width(), 5), 2, 2);
  if (std::isfinite(row.low) || std::isfinite(row.high)) {
    const double from = c.at(std::isnan(row.low) ? kLowest : row.low);
    const double to = c.at(std::isnan(row.high) ? kHighest : row.high);
    painter.setBrush(stateColour(stateOf(row), p));
    painter.drawRoundedRect(QRectF(from, middle - 4, std::max(to - from, 2.0), 8), 2, 2);
  }
  painter.setPen(QPen(p.text, 1));
  painter.drawLine(QLineF(c.at(0), middle - 7, c.at(0), middle + 7));
  if (!std::isfinite(row.median)) return;
  painter.setPen(QPen(p.panel, 3));
  painter.drawLine(QLineF(c.at(row.median), middle - 4, c.at(row.median), middle + 4));
  painter.setPen(QPen(p.text, 1.2));
  painter.drawLine(QLineF(c.at(row.median), middle - 5, c.at(row.median), middle + 5));
}

void paintScale(QPainter& painter, const Columns& c, const QRectF& line, const Palette& p) {
  for (const double margin : {kLowest, 0.0, 0.5, kHighest}) {
    const QString label = marginText(margin == 0 ? 0.0 : margin);
    const QRectF place(c.at(margin) - 30, line.top(), 60, line.height());
    const QString shown = margin == 0 ? QStringLiteral("0") : label;
    text(painter, place, Qt::AlignHCenter, shown, textFont(11), p.muted);
  }
}

/// Places of the columns of a tornado.
struct TornadoColumns {
  QRectF label, left, right;

  explicit TornadoColumns(const QRectF& row) {
    const double labels = std::clamp(0.36 * row.width(), 120.0, 300.0);
    const double half = (row.width() - labels - 36) / 2;
    label = {row.left() + 10, row.top(), labels - 10, row.height()};
    left = {row.left() + labels + 12, row.top(), half, row.height()};
    right = {left.right() + 14, row.top(), half, row.height()};
  }
};

/// A bar from the middle, with its number beyond its end or, where there is no room, inside.
void paintBar(QPainter& painter, const QRectF& area, double share, const QString& number,
              const QColor& hue, const Palette& p) {
  const QFont font = textFont(11);
  const double words = QFontMetricsF(font).horizontalAdvance(number) + 8;
  const double reach = area.width() / 2 - words;
  const double end = area.center().x() + std::clamp(share, -1.0, 1.0) * std::max(reach, 0.0);
  const double from = area.center().x();
  painter.setPen(Qt::NoPen);
  painter.setBrush(hue);
  painter.drawRoundedRect(
      QRectF(std::min(from, end), area.center().y() - 6, std::abs(end - from), 12), 2, 2);
  const QRectF place = share < 0 ? QRectF(end - words, area.top(), words - 4, area.height())
                                 : QRectF(end + 4, area.top(), words, area.height());
  text(painter, place, share < 0 ? Qt::AlignRight : Qt::AlignLeft, number, font, p.text);
}

void paintTornadoRow(QPainter& painter, const QRectF& rect, const TornadoRow& row, double largest,
                     const Palette& p) {
  const TornadoColumns c(rect);
  const QRectF upper(c.label.left(), rect.top() + 1, c.label.width(), rect.height() / 2);
  text(painter, upper, Qt::AlignLeft, row.label, textFont(12), p.text);
  text(painter, upper.translated(0, rect.height() / 2 - 3), Qt::AlignLeft, row.band, textFont(11),
       p.muted);
  paintBar(painter, c.left, row.correlation, fixedNumber(row.correlation, 2), p.accent, p);
  paintBar(painter, c.right, largest > 0 ? row.share / largest : 0, marginText(row.share),
           p.friction, p);
}

}  // namespace

void paintChanceHead(QPainter& painter, const QRectF& rect, const ToleranceView& view,
                     const Palette& p) {
  const QRectF upper(rect.left() + 10, rect.top(), rect.width() - 20, 22);
  const QString head =
      view.notes.isEmpty() ? view.head : view.head + QStringLiteral("  ·  ") + view.notes;
  text(painter, upper, Qt::AlignLeft, head, textFont(12), p.muted);
  const QRectF lower(rect.left(), rect.top() + 22, rect.width(), rect.height() - 22);
  const Columns c(lower);
  text(painter, c.title.united(c.mark), Qt::AlignLeft, QStringLiteral("verdict"), textFont(11),
       p.muted);
  paintScale(painter, c, lower, p);
  text(painter, c.chance, Qt::AlignRight, QStringLiteral("holds (95 % interval)"),
       textFont(11), p.muted);
  text(painter, c.linear, Qt::AlignRight, QStringLiteral("linear"), textFont(11), p.muted);
}

void paintChanceRow(QPainter& painter, const QRectF& rect, const ChanceRow& row, const Palette& p,
                    bool chosen) {
  painter.save();
  painter.setRenderHint(QPainter::Antialiasing);
  if (chosen) {
    painter.setPen(QPen(p.accent, 1.2));
    painter.setBrush(p.field);
    painter.drawRoundedRect(rect.adjusted(2.5, 1, -2.5, -1), 5, 5);
  }
  const Columns c(rect);
  const bool all = row.id.empty();
  drawStateMark(painter, stateOf(row), c.mark.center(), 9, p);
  text(painter, c.title, Qt::AlignLeft, row.title,
       textFont(12, all ? QFont::DemiBold : QFont::Normal), p.text);
  paintSpread(painter, c, row, p);
  QString chance = percent(row.holds.share);
  if (std::isfinite(row.holds.low) && row.holds.share > 0 && row.holds.share < 1)
    chance += QStringLiteral("  (%1 to %2)")
                  .arg(numberText(100 * row.holds.low, 3), numberText(100 * row.holds.high, 3));
  text(painter, c.chance, Qt::AlignRight, chance, textFont(12, QFont::DemiBold),
       inkOf(stateColour(stateOf(row), p), p.panel));
  const QString bound = all ? QStringLiteral("≤ ") : QString();  // what the checks set for all
  text(painter, c.linear, Qt::AlignRight, bound + percent(row.linearHolds), textFont(12), p.muted);
  painter.restore();
}

void paintChances(QPainter& painter, const QSizeF& size, const ToleranceView& view,
                  const Palette& p) {
  paintChanceHead(painter, {0, 0, size.width(), double(kChanceHeadHeight)}, view, p);
  const double room = size.height() - kChanceHeadHeight;
  auto rows = std::size_t(std::max(0.0, std::floor(room / kChanceRowHeight)));
  if (rows < view.rows.size() && rows > 0) --rows;
  rows = std::min(rows, view.rows.size());
  for (std::size_t k = 0; k < rows; ++k)
    paintChanceRow(painter,
                   {0, double(kChanceHeadHeight) + double(k) * kChanceRowHeight, size.width(),
                    double(kChanceRowHeight)},
                   view.rows[k], p, false);
  if (rows == view.rows.size()) return;
  const QRectF rest(10, kChanceHeadHeight + double(rows) * kChanceRowHeight, size.width() - 20,
                    kChanceRowHeight);
  text(painter, rest, Qt::AlignLeft,
       QStringLiteral("and %1 more that are no less certain").arg(view.rows.size() - rows),
       textFont(12), p.muted);
}

void paintTornado(QPainter& painter, const QSizeF& size, const TornadoView& view,
                  const Palette& p) {
  painter.save();
  painter.setRenderHint(QPainter::Antialiasing);
  constexpr double kHead = 46;
  text(painter, {10, 0, size.width() - 20, 24}, Qt::AlignLeft,
       QStringLiteral("What the margin of ") + view.title.toLower() + QStringLiteral(" depends on"),
       titleFont(), p.text);
  const TornadoColumns heads({0, 24, size.width(), 20});
  text(painter, heads.left, Qt::AlignHCenter, QStringLiteral("rank correlation"), textFont(11),
       p.muted);
  text(painter, heads.right, Qt::AlignHCenter, QStringLiteral("margin per standard deviation"),
       textFont(11), p.muted);
  double largest = 0;
  for (const TornadoRow& row : view.rows) largest = std::max(largest, std::abs(row.share));
  const auto count = double(std::max<std::size_t>(1, view.rows.size()));
  const double height = std::clamp((size.height() - kHead) / count, 30.0, 44.0);
  painter.setPen(QPen(p.line, 1));
  const double bottom = std::min(size.height(), kHead + count * height);
  for (const QRectF& area : {heads.left, heads.right})
    painter.drawLine(QLineF(area.center().x(), kHead, area.center().x(), bottom));
  for (std::size_t k = 0; k < view.rows.size(); ++k) {
    const QRectF row(0, kHead + double(k) * height, size.width(), height);
    if (row.bottom() > size.height() + 1) break;
    paintTornadoRow(painter, row, view.rows[k], largest, p);
  }
  painter.restore();
}

}  // namespace jw

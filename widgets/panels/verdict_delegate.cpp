#include "widgets/panels/verdict_delegate.h"

#include <cmath>

#include <QPainter>

#include "widgets/panels/verdict_list.h"
#include "widgets/theme/marks.h"
#include "widgets/theme/theme.h"

namespace jw {
namespace {

constexpr int kRowHeight = 38;
constexpr int kDependsLine = 14;

/// What the chosen row is taller.
int dependsHeight(int lines) { return lines > 0 ? lines * kDependsLine + 1 : 0; }

constexpr double kLowest = -0.5;
constexpr double kHighest = 1.0;

void paintGround(QPainter& painter, const QRectF& row, const QStyleOptionViewItem& option) {
  const Palette& p = jw::palette();
  const bool chosen = option.state.testFlag(QStyle::State_Selected);
  const bool hovered = option.state.testFlag(QStyle::State_MouseOver);
  if (!chosen && !hovered) return;
  painter.setPen(chosen ? QPen(p.accent, 1.2) : QPen(Qt::NoPen));
  painter.setBrush(p.field);
  painter.drawRoundedRect(row.adjusted(2.5, 1.5, -2.5, -1.5), 5, 5);
}

void paintBar(QPainter& painter, const VerdictGeometry& g, const VerdictRow& row,
              const Palette& p) {
  if (row.state == CheckState::Open) return;
  painter.setPen(Qt::NoPen);
  painter.setBrush(blend(p.muted, p.panel, 0.16));
  painter.drawRoundedRect(g.bar, 2, 2);
  const double end = marginPosition(g, row.margin);
  painter.setBrush(stateColour(row.state, p));
  painter.drawRoundedRect(QRectF(QPointF(std::min(g.zero, end), g.bar.top()),
                                 QPointF(std::max(g.zero, end), g.bar.bottom())),
                          2, 2);
  painter.setPen(QPen(p.text, 1));
  painter.drawLine(QLineF(g.zero, g.bar.top() - 3, g.zero, g.bar.bottom() + 3));
}

void drawElided(QPainter& painter, const QRectF& rect, Qt::Alignment side, const QString& text,
                const QFont& font, const QColor& ink) {
  painter.setFont(font);
  painter.setPen(ink);
  painter.drawText(rect, side | Qt::AlignVCenter,
                   QFontMetricsF(font).elidedText(text, Qt::ElideRight, rect.width()));
}

/// The word at the end of the title's room; gives the room that is left. State mark, bar and margin
/// stay as they are: what is accepted is short all the same.
QRectF paintAcceptance(QPainter& painter, QRectF title, const VerdictRow& row, const Palette& p) {
  const QFont font = textFont(11);
  const double width = QFontMetricsF(font).horizontalAdvance(row.acceptance);
  const double needed = QFontMetricsF(bodyFont()).horizontalAdvance(row.title) + 8;
  const double left = title.left() + std::min(needed, title.width() - width);
  painter.setFont(font);
  painter.setPen(p.muted);
  painter.drawText(QRectF(left, title.top(), width + 1, title.height()),
                   Qt::AlignLeft | Qt::AlignVCenter, row.acceptance);
  title.setRight(left - 8);
  return title;
}

/// What the chosen verdict depends on, each input on a line of its own.
void paintDepends(QPainter& painter, const VerdictGeometry& g, const VerdictRow& row,
                  const Palette& p) {
  const QStringList inputs = row.depends.split(QStringLiteral(" · "), Qt::SkipEmptyParts);
  QRectF line(g.depends.left(), g.depends.top(), g.depends.width(), kDependsLine);
  for (const QString& input : inputs) {
    drawElided(painter, line, Qt::AlignLeft, input, textFont(11), p.muted);
    line.translate(0, kDependsLine);
  }
}

void paintTexts(QPainter& painter, const VerdictGeometry& g, const VerdictRow& row, bool chosen,
                const Palette& p) {
  const QFont strong = textFont(11, QFont::DemiBold);
  QRectF title = g.title;
  title.setRight(g.margin.right() - QFontMetricsF(strong).horizontalAdvance(row.marginText) - 8);
  if (!row.acceptance.isEmpty()) title = paintAcceptance(painter, title, row, p);
  drawElided(painter, title, Qt::AlignLeft, row.title, bodyFont(), p.text);
  const bool open = row.state == CheckState::Open;
  const QColor ink = open && !row.missingField.isEmpty() ? p.accent : p.muted;
  drawElided(painter, open ? g.needs : g.amounts, open ? Qt::AlignLeft : Qt::AlignRight,
             row.amounts, textFont(11), ink);
  if (chosen) paintDepends(painter, g, row, p);
  painter.setPen(inkOf(stateColour(row.state, p), p.panel));
  painter.setFont(strong);
  painter.drawText(g.margin, Qt::AlignRight | Qt::AlignVCenter, row.marginText);
}

}  // namespace

VerdictGeometry verdictGeometry(const QRectF& row) {
  VerdictGeometry g;
  const QRectF inner = row.adjusted(10, 3, -12, -3);
  g.mark = QPointF(inner.left() + 5, inner.top() + 9);
  const double left = inner.left() + 19;
  const double marginWidth = 58;
  g.title = QRectF(left, inner.top(), inner.right() - left - marginWidth - 4, 18);
  g.margin = QRectF(inner.right() - marginWidth, inner.top(), marginWidth, 18);
  g.needs = QRectF(left, inner.top() + 17, inner.right() - left, 16);
  const double amountsWidth = std::min(136.0, g.needs.width() * 0.58);
  g.bar = QRectF(left, inner.top() + 22, g.needs.width() - amountsWidth - 10, 5);
  g.amounts = QRectF(inner.right() - amountsWidth, g.needs.top(), amountsWidth, g.needs.height());
  g.depends = QRectF(left, inner.top() + 33, inner.right() - left,
                     std::max(0.0, inner.bottom() - inner.top() - 33));
  g.zero = g.bar.left() + g.bar.width() * (0 - kLowest) / (kHighest - kLowest);
  return g;
}

double marginPosition(const VerdictGeometry& geometry, double margin) {
  const double shown = std::isnan(margin) ? 0 : std::clamp(margin, kLowest, kHighest);
  return geometry.bar.left() + geometry.bar.width() * (shown - kLowest) / (kHighest - kLowest);
}

void VerdictDelegate::paint(QPainter* painter, const QStyleOptionViewItem& option,
                            const QModelIndex& index) const {
  const auto* model = qobject_cast<const VerdictModel*>(index.model());
  const VerdictRow& row = model->row(index.row());
  const Palette& p = jw::palette();
  const VerdictGeometry g = verdictGeometry(option.rect);
  painter->save();
  painter->setRenderHint(QPainter::Antialiasing);
  paintGround(*painter, option.rect, option);
  if (m_stale) painter->setOpacity(0.5);
  drawStateMark(*painter, row.state, g.mark, 9, p);
  paintBar(*painter, g, row, p);
  paintTexts(*painter, g, row, index.row() == m_chosen, p);
  painter->restore();
}

void VerdictDelegate::setChosen(int row) { m_chosen = row; }

QSize VerdictDelegate::sizeHint(const QStyleOptionViewItem&, const QModelIndex& index) const {
  const auto* model = qobject_cast<const VerdictModel*>(index.model());
  const bool chosen = model && index.row() == m_chosen;
  return {200, kRowHeight + (chosen ? dependsHeight(model->row(m_chosen).dependsLines) : 0)};
}

}  // namespace jw

// The comparison of families on paper, and its cells on both.
#include <algorithm>
#include <cmath>

#include <QFontMetricsF>

#include "widgets/figures/family_view.h"
#include "widgets/theme/marks.h"
#include "widgets/theme/theme.h"

namespace jw {
namespace {

constexpr double kBar = 3;        // [px] its height
constexpr double kTwoLines = 24;  // [px]
constexpr double kLeftRoom = 4;   // [px] beside a cell's text
constexpr double kRightRoom = 6;

QFont wordsFont(const QFont& font) { return textFont(std::min(10.0, 0.85 * font.pixelSize())); }

/// What the snapshot has, or else the bundled rules' comparison.
std::shared_ptr<const FamilyStudy> studyOf(const Snapshot& snapshot) {
  if (snapshot.families || !snapshot.evaluatedProject) return snapshot.families;
  return std::make_shared<const FamilyStudy>(
      compareFamilies(bundledFamilies(snapshot.evaluatedProject), {}));
}

/// The table being laid out on paper.
struct Sheet {
  QPainter& painter;
  double width;
  double rowHeight;
  double titles;  ///< width of the properties' names
  QFont font;
  QFont strong;

  double columnWidth(qsizetype columns) const { return (width - titles) / double(columns); }
};

void paintTexts(const Sheet& sheet, const QRectF& rect, const QString& text, const QFont& font,
                const QColor& ink, Qt::Alignment align) {
  sheet.painter.setFont(font);
  sheet.painter.setPen(ink);
  const QRectF inner = rect.adjusted(2, 0, -2, 0);
  sheet.painter.drawText(inner, align | Qt::AlignVCenter,
                         QFontMetricsF(font).elidedText(text, Qt::ElideRight, inner.width()));
}

double heightOf(const FamilyRow& row, double rowHeight) {
  return row.kind == FamilyRow::Kind::Words ? 2.6 * rowHeight : rowHeight;
}

void paintRow(const Sheet& sheet, double top, const FamilyRow& row, qsizetype columns) {
  const Palette& p = printPalette();
  const bool group = row.kind == FamilyRow::Kind::Group;
  const double height = heightOf(row, sheet.rowHeight);
  paintTexts(sheet, {0, top, sheet.titles, height}, row.title, group ? sheet.strong : sheet.font,
             group ? p.text : p.muted, Qt::AlignLeft);
  if (group) {
    sheet.painter.setPen(QPen(p.line, 1));
    sheet.painter.drawLine(QLineF(0, top + height, sheet.width, top + height));
    return;
  }
  const double each = sheet.columnWidth(columns);
  for (std::size_t k = 0; k < row.cells.size(); ++k) {
    const QRectF cell(sheet.titles + double(k) * each, top, each, height);
    paintFamilyCell(sheet.painter, cell, row.cells[k], sheet.font, p);
  }
}

/// Names on two lines where they need them.
void paintTitles(const Sheet& sheet, const QStringList& columns) {
  const double each = sheet.columnWidth(columns.size());
  sheet.painter.setFont(sheet.strong);
  sheet.painter.setPen(printPalette().text);
  for (int k = 0; k < columns.size(); ++k) {
    const QRectF rect(sheet.titles + k * each, 0, each - 6, 2 * sheet.rowHeight);
    sheet.painter.drawText(rect, Qt::AlignRight | Qt::AlignBottom | Qt::TextWordWrap, columns[k]);
  }
}

void paintWords(QPainter& painter, const QSizeF& size, const QString& words) {
  painter.setFont(textFont(12));
  painter.setPen(printPalette().muted);
  painter.drawText(QRectF(QPointF(0, 0), size).adjusted(20, 0, -20, 0),
                   Qt::AlignCenter | Qt::TextWordWrap, words);
}

}  // namespace

double familyCellHeight(const FamilyCell& cell, double width, const QFont& font) {
  if (!cell.words || cell.text.isEmpty()) return 0;
  const QRectF room(0, 0, width - kLeftRoom - kRightRoom, 1e4);
  const QRectF needed =
      QFontMetricsF(wordsFont(font)).boundingRect(room, Qt::TextWordWrap, cell.text);
  return std::max(needed.height() + 8, kTwoLines + 1);
}

void paintFamilyCell(QPainter& painter, const QRectF& rect, const FamilyCell& cell,
                     const QFont& font, const Palette& palette) {
  const bool bar = !std::isnan(cell.bar);
  const QRectF room = rect.adjusted(kLeftRoom, 0, -kRightRoom, bar ? -kBar - 1 : 0);
  QFont own = font;
  if (cell.best) own.setWeight(QFont::DemiBold);
  if (cell.words && room.height() > kTwoLines) {
    painter.setFont(wordsFont(font));
    painter.setPen(palette.muted);
    painter.drawText(room, Qt::AlignRight | Qt::AlignVCenter | Qt::TextWordWrap, cell.text);
    return;
  }
  const QFontMetricsF metrics(own);
  const QString text = metrics.elidedText(cell.text, Qt::ElideRight, room.width());
  painter.setFont(own);
  painter.setPen(cell.state ? inkOf(stateColour(*cell.state, palette), palette.panel)
                            : palette.text);
  painter.drawText(room, Qt::AlignRight | Qt::AlignVCenter, text);
  if (cell.state) {
    const double x = room.right() - metrics.horizontalAdvance(text) - 9;
    drawStateMark(painter, *cell.state, {x, room.center().y()}, 8, palette);
  }
  if (!bar) return;
  const QRectF whole(rect.left() + 8, rect.bottom() - kBar - 1, rect.width() - 14, kBar);
  painter.setPen(Qt::NoPen);
  painter.setBrush(palette.line);
  painter.drawRect(whole);
  painter.setBrush(cell.best ? palette.accent : blend(palette.muted, palette.panel, 0.6));
  painter.drawRect(QRectF(whole.topLeft(), QSizeF(whole.width() * cell.bar, kBar)));
}

void paintFamilies(QPainter& painter, const QSizeF& size, const Snapshot& snapshot) {
  const auto study = studyOf(snapshot);
  if (!study || study->choices.empty()) {
    const bool refused = study && study->refused;
    return paintWords(painter, size,
                      refused ? QString::fromStdString(describe(*study->refused))
                              : QStringLiteral("Not enough is known to draw this."));
  }
  const FamilyTable table = familyTable(*study);
  double lines = 3;  // titles and source
  for (const FamilyRow& row : table.rows) lines += heightOf(row, 1);
  const double height = (size.height() - 8) / lines;
  const double rowHeight = std::min(20.0, height);
  const double pixels = std::clamp(0.72 * rowHeight, 6.0, 11.0);
  const Sheet sheet{painter,          size.width() - 28,
                    rowHeight,        std::min(190.0, 0.28 * size.width()),
                    textFont(pixels), textFont(pixels, QFont::DemiBold)};
  painter.save();
  painter.translate(14, 4);
  paintTitles(sheet, table.columns);
  double top = 2 * rowHeight;
  for (const FamilyRow& row : table.rows) {
    paintRow(sheet, top, row, table.columns.size());
    top += heightOf(row, rowHeight);
  }
  const QString source = study->byRules() ? QStringLiteral("Sizes by scaling rules")
                                          : QStringLiteral("Reducers of a catalogue");
  const QString invented = study->question.invented ? QStringLiteral(", all invented") : QString();
  paintTexts(sheet, {0, top, sheet.width, rowHeight},
             source + invented + QStringLiteral(". ↑ more is better, ↓ less is better."),
             sheet.font, printPalette().muted, Qt::AlignLeft);
  painter.restore();
}

LineChart printedFamilyMap(const Snapshot& snapshot) {
  const auto study = studyOf(snapshot);
  return study && !study->choices.empty() ? familyMap(*study) : LineChart{};
}

}  // namespace jw

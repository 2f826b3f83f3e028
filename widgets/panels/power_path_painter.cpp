#include "widgets/panels/power_path_painter.h"

#include <cmath>

#include <QFontMetricsF>

#include "widgets/panels/power_ribbons.h"
#include "widgets/theme/number_text.h"
#include "widgets/theme/theme.h"

namespace jw {
namespace {

constexpr double kMargin = 14;
constexpr double kCardTop = 12;
constexpr double kCardHeight = 76;
constexpr double kCardNarrow = 124;
constexpr double kCardWide = 190;
constexpr double kGapNarrow = 52;
constexpr double kPadding = 9;
constexpr double kLineHeight = 15.5;

int fittingCards(double width) {
  return qMax(1, int((width - 2 * kMargin + kGapNarrow) / (kCardNarrow + kGapNarrow)));
}

CardLine titleLine(const StationView& station, const QRectF& rect) {
  const QFontMetricsF metrics(titleFont());
  if (station.ratio.isEmpty())
    return {metrics.elidedText(station.title, Qt::ElideRight, rect.width()), rect, true, false};
  const QString tail = QStringLiteral(" ") + station.ratio;
  const double room = rect.width() - metrics.horizontalAdvance(tail);
  return {metrics.elidedText(station.title, Qt::ElideRight, room) + tail, rect, true, false};
}

}  // namespace

PowerPathLayout powerPathLayout(int count, double width, bool wrap) {
  PowerPathLayout layout;
  const int fitting = fittingCards(width);
  const int rowCount = wrap ? (count + fitting - 1) / fitting : 1;
  const int perRow = rowCount > 0 ? (count + rowCount - 1) / rowCount : count;
  const double inner = width - 2 * kMargin;
  const double card =
      qBound(kCardNarrow, (inner - (perRow - 1) * kGapNarrow) / qMax(perRow, 1), kCardWide);
  const double gap = perRow > 1 ? qMax(kGapNarrow, (inner - perRow * card) / (perRow - 1)) : 0;
  for (int i = 0; i < count; ++i) {
    const int row = i / perRow;
    layout.cards.emplace_back(kMargin + (i % perRow) * (card + gap),
                              kCardTop + row * kPowerRowHeight, card, kCardHeight);
    layout.rows.push_back(row);
  }
  layout.size = QSizeF(qMax(width, 2 * kMargin + perRow * card + (perRow - 1) * gap),
                       rowCount * kPowerRowHeight);
  return layout;
}

std::vector<CardLine> cardLines(const StationView& station, const QRectF& card) {
  std::vector<CardLine> lines;
  QRectF line(card.left() + kPadding, card.top() + 7, card.width() - 2 * kPadding, kLineHeight);
  lines.push_back(titleLine(station, line));
  const QFontMetricsF metrics(textFont(11));
  for (const QString* text : {&station.first, &station.second, &station.note}) {
    line.translate(0, kLineHeight);
    if (text->isEmpty()) continue;
    lines.push_back({metrics.elidedText(*text, Qt::ElideRight, line.width()), line, false,
                     text == &station.note});
  }
  return lines;
}

void paintCard(QPainter& painter, const QRectF& card, const StationView& station,
               const CardState& state, const Palette& palette) {
  painter.setRenderHint(QPainter::Antialiasing);
  const bool marked = state.chosen || state.focused;
  const QColor border = marked ? palette.accent : state.hovered ? palette.zeroLine : palette.line;
  painter.setPen(QPen(border, marked ? 1.5 : 1));
  painter.setBrush(state.hovered ? palette.panel : palette.field);
  painter.drawRoundedRect(card.adjusted(1, 1, -1, -1), 6, 6);
  if (state.focused) {
    painter.setBrush(Qt::NoBrush);
    painter.setPen(QPen(palette.accent, 1, Qt::DotLine));
    painter.drawRoundedRect(card.adjusted(4, 4, -4, -4), 3, 3);
  }
  for (const CardLine& line : cardLines(station, card)) {
    painter.setFont(line.strong ? titleFont() : textFont(11));
    painter.setPen(line.muted ? palette.muted : palette.text);
    painter.drawText(line.rect, Qt::AlignLeft | Qt::AlignVCenter, line.text);
  }
}

std::vector<CardLine> flowLabels(const std::vector<StationView>& stations,
                                 const PowerPathLayout& layout, double largest) {
  std::vector<CardLine> labels;
  const QFontMetricsF metrics(textFont(11));
  const RibbonScale scale{largest};
  for (std::size_t i = 0; i < stations.size() && i < layout.cards.size(); ++i) {
    const StationView& station = stations[i];
    if (!station.powerKnown) continue;
    const QRectF& card = layout.cards[i];
    if (i + 1 < stations.size() && layout.rows[i] == layout.rows[i + 1]) {
      const QRectF gap(card.right(), card.top(), layout.cards[i + 1].left() - card.right(), 15);
      labels.push_back({wattText(station.power.out), gap, false, false});
    }
    if (station.power.loss < 0.05) continue;
    const QRectF stream = lossStream(card, scale.thickness(station.power.loss));
    const QString text = wattText(-station.power.loss);
    const double width = metrics.horizontalAdvance(text) + 2;
    labels.push_back(
        {text, QRectF(stream.left() - 7 - width, card.bottom() + 7, width, 15), false, true});
  }
  return labels;
}

void paintFlow(QPainter& painter, const std::vector<StationView>& stations,
               const PowerPathLayout& layout, double largest, const Palette& palette) {
  const RibbonScale scale{largest};
  painter.setRenderHint(QPainter::Antialiasing);
  for (std::size_t i = 0; i < stations.size() && i < layout.cards.size(); ++i) {
    const StationPower& power = stations[i].power;
    const bool known = stations[i].powerKnown && largest > 0;
    if (i + 1 < stations.size())
      paintLink(painter, linkRects(layout, i, scale.thickness(power.out)),
                known ? power.out : kUnset, palette);
    if (known && power.loss >= 0.05)
      paintLoss(painter, lossStream(layout.cards[i], scale.thickness(power.loss)), palette);
  }
  painter.setFont(textFont(11));
  for (const CardLine& label : flowLabels(stations, layout, largest)) {
    painter.setPen(label.muted ? inkOf(palette.shortfall, palette.panel) : palette.muted);
    painter.drawText(label.rect, Qt::AlignCenter, label.text);
  }
}

void paintPowerPath(QPainter& painter, const QSizeF& size, const Snapshot& snapshot, double time,
                    const Palette& palette) {
  const auto stations = stationViews(snapshot, time);
  const PowerPathLayout layout = powerPathLayout(int(stations.size()), size.width(), true);
  painter.save();
  const double fit = qMin(1.0, size.height() / layout.size.height());
  painter.translate(0, qMax(0.0, (size.height() - layout.size.height()) / 3));
  painter.scale(fit, fit);
  paintFlow(painter, stations, layout, largestPower(snapshot, stations, time), palette);
  for (std::size_t i = 0; i < stations.size(); ++i)
    paintCard(painter, layout.cards[i], stations[i], {}, palette);
  painter.restore();
}

}  // namespace jw

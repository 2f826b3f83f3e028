#pragma once

#include <vector>

#include <QPainter>

#include "widgets/panels/power_stations.h"
#include "widgets/theme/palette.h"

namespace jw {

/// Where everything of a power path stands [px].
struct PowerPathLayout {
  std::vector<QRectF> cards;
  std::vector<int> rows;  ///< row of each card; one row unless wrapped
  QSizeF size;
};

/// Height [px] of one row with its losses.
inline constexpr double kPowerRowHeight = 128;

/// Lays `count` cards out in `width` px: wider cards and gaps as there is room. What does not fit
/// goes to another row if `wrap`, else the path gets wider than `width`.
PowerPathLayout powerPathLayout(int count, double width, bool wrap);

/// How a card is drawn.
struct CardState {
  bool hovered = false;
  bool focused = false;
  bool chosen = false;
};

/// One line of text on a card and where it goes.
struct CardLine {
  QString text;
  QRectF rect;
  bool strong = false;
  bool muted = false;
};

std::vector<CardLine> cardLines(const StationView& station, const QRectF& card);

void paintCard(QPainter& painter, const QRectF& card, const StationView& station,
               const CardState& state, const Palette& palette);

/// The text and its place for each ribbon's power and each station's loss.
std::vector<CardLine> flowLabels(const std::vector<StationView>& stations,
                                 const PowerPathLayout& layout, double largest);

/// Ribbons between the cards and losses below them. `largest` [W] is as thick as a ribbon gets.
void paintFlow(QPainter& painter, const std::vector<StationView>& stations,
               const PowerPathLayout& layout, double largest, const Palette& palette);

/// The whole path for print, wrapped into as many rows as `size` needs.
void paintPowerPath(QPainter& painter, const QSizeF& size, const Snapshot& snapshot, double time,
                    const Palette& palette);

}  // namespace jw

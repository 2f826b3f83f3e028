#pragma once

#include <QPainter>

#include "widgets/figures/tolerance_view.h"
#include "widgets/theme/palette.h"

namespace jw {

/// Height [px] of one verdict's row, and of what stands above the rows.
inline constexpr int kChanceRowHeight = 26;
inline constexpr int kChanceHeadHeight = 44;

/// Draws the head of the table of chances: what was drawn, and the columns' names.
void paintChanceHead(QPainter& painter, const QRectF& rect, const ToleranceView& view,
                     const Palette& palette);

/// Draws one verdict: title, spread of its margin, chance that it holds with its interval, and the
/// chance by linear propagation. `chosen` rows stand on a ground of their own.
void paintChanceRow(QPainter& painter, const QRectF& rect, const ChanceRow& row,
                    const Palette& palette, bool chosen);

/// The whole table on paper: as many rows as there is room for, and how many are left out.
void paintChances(QPainter& painter, const QSizeF& size, const ToleranceView& view,
                  const Palette& palette);

/// Inputs as bars: rank correlation on the left, share in the linear propagation on the right.
void paintTornado(QPainter& painter, const QSizeF& size, const TornadoView& view,
                  const Palette& palette);

}  // namespace jw

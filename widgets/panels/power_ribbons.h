#pragma once

#include <vector>

#include <QPainter>

#include "widgets/theme/palette.h"

namespace jw {

struct PowerPathLayout;

/// Thickness of a ribbon.
struct RibbonScale {
  double largest = 0;                      ///< [W] power of the thickest ribbon
  static constexpr double kThickest = 34;  ///< [px]
  /// Thickness [px] for `power` [W]; what flows at all can be seen.
  double thickness(double power) const;
};

/// The stretches of the ribbon that leaves card `index`: one to the next card, or two where the
/// path goes on in the next row.
std::vector<QRectF> linkRects(const PowerPathLayout& layout, std::size_t index, double thickness);

/// Where the loss of a card leaves downward.
QRectF lossStream(const QRectF& card, double thickness);

/// A ribbon: plain towards the joint, hatched with arrows back to the supply, a dashed line where
/// the power is not known (NaN).
void paintLink(QPainter& painter, const std::vector<QRectF>& rects, double power,
               const Palette& palette);

void paintLoss(QPainter& painter, const QRectF& stream, const Palette& palette);

}  // namespace jw

#pragma once

#include <vector>

#include <QPointF>
#include <QPolygonF>
#include <QRectF>
#include <QSizeF>

namespace jw {

/// A label that wants a place; all in pixels.
struct LabelRequest {
  QSizeF size;
  std::vector<QPointF> anchors;  ///< what it may stand beside, the preferred first
  double gap = 4;                ///< between anchor and label
};

/// Where a label goes.
struct LabelPlace {
  QRectF rect;     ///< null if there was no place for it
  QPointF anchor;  ///< which anchor it stands beside
};

/// What labels must not or should not cover.
struct LabelSurroundings {
  QRectF area;                   ///< labels stay inside
  std::vector<QPolygonF> lines;  ///< labels avoid these as well as they can
  std::vector<QRectF> taken;     ///< labels never cover these
};

/// Places the labels one after the other: never on one another or on what is taken, always inside
/// the area, and covering as little of the lines as the candidates allow. A label without such a
/// place gets a null rect.
std::vector<LabelPlace> placeLabels(const std::vector<LabelRequest>& requests,
                                    const LabelSurroundings& around);

}  // namespace jw

#pragma once

#include <vector>

#include <QPointF>
#include <QRectF>
#include <QStringList>

#include "widgets/figures/drive_view.h"

namespace jw {

/// How far the person has zoomed and moved the drawing.
struct DriveZoom {
  double factor = 1;
  QPointF shift{0, 0};  ///< [px]
};

/// One label and where it stands, in pixels.
struct DriveTextPlace {
  QRectF rect;
  QString name;    ///< in semi-bold
  QString detail;  ///< in muted, behind the name
  QString speed;   ///< on a second line
  DriveRole role = DriveRole::Between;
  bool patch = false;  ///< a patch of colour in place of a pointer
  QPointF from;        ///< pointer from the label ...
  QPointF to;          ///< ... to its part
};

/// Where everything of the picture goes, in pixels.
struct DriveLayout {
  QRectF head;     ///< ratio and instant
  QRectF drawing;  ///< what the drawing may cover
  QRectF foot;     ///< remarks
  QStringList remarks;
  double scale = 1;  ///< [px/m]
  QPointF origin;    ///< of the stage's plane; its y points up
  std::vector<DriveTextPlace> labels;

  QPointF pixel(const Eigen::Vector2d& point) const {
    return {origin.x() + scale * point.x(), origin.y() - scale * point.y()};
  }
};

/// Lays the picture out in `area`: labels in a column beside a single drawing, below several that
/// stand side by side. Labels never overlap each other nor leave the area.
DriveLayout driveLayout(const DriveView& view, const QRectF& area, const DriveInstant& instant,
                        const DriveZoom& zoom = {});

}  // namespace jw

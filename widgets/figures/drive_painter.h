#pragma once

#include <vector>

#include <QPainter>
#include <QPainterPath>

#include "widgets/figures/drive_layout.h"
#include "widgets/theme/palette.h"

namespace jw {

/// Draws a stage at any instant. Paths of parts that do not bend are made once.
class DrivePainter {
 public:
  DrivePainter() = default;
  explicit DrivePainter(DriveView view);

  const DriveView& view() const { return m_view; }
  /// Head, drawing, labels and remarks into `area`. Outlines are `hairline` wide; on a screen one
  /// just below a device pixel is drawn many times faster than a wider one.
  void paint(QPainter& painter, const QRectF& area, const DriveInstant& instant,
             const Palette& palette, const DriveZoom& zoom = {}, double hairline = 1) const;

 private:
  struct BodyPaths {
    QPainterPath fill;
    QPainterPath marks;
  };
  void paintBody(QPainter& painter, std::size_t body, const DriveLayout& layout, double angle,
                 const Palette& palette, double hairline) const;
  void paintForces(QPainter& painter, const DriveLayout& layout, const DriveInstant& instant,
                   const Palette& palette) const;

  DriveView m_view;
  std::vector<BodyPaths> m_paths;  // in units that make the drawing about 1000 wide
  double m_unit = 1;               // of the paths, per metre
};

/// The stage that `figureName` means, for print; false if it cannot be drawn.
bool paintDrive(QPainter& painter, const QSizeF& size, const Snapshot& snapshot,
                const QString& figureName, const Palette& palette);

}  // namespace jw

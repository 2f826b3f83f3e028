#pragma once

#include <vector>

#include <qcustomplot.h>

#include "widgets/theme/plot_style.h"

namespace jw {

/// A rectangle of speed and torque within which the path lies at one instant.
struct PathReach {
  double speedLow, speedHigh;    ///< [rpm]
  double torqueLow, torqueHigh;  ///< [N·m]
};

/// Shades where the load's path may lie: the area that the reach sweeps from instant to instant.
class PathBand : public QCPLayerable {
  Q_OBJECT

 public:
  PathBand(QCustomPlot* plot, QCPAxisRect* rect, const QString& layer);
  void setReach(std::vector<PathReach> reach) { m_reach = std::move(reach); }
  void setStyle(const PlotStyle& style) { m_hue = style.colours.accent; }

 protected:
  void applyDefaultAntialiasingHint(QCPPainter* painter) const override;
  QRect clipRect() const override { return m_rect->rect(); }
  void draw(QCPPainter* painter) override;

 private:
  QRectF pixels(const PathReach& reach) const;

  QCPAxisRect* m_rect;
  QColor m_hue;
  std::vector<PathReach> m_reach;
};

}  // namespace jw

#pragma once

#include <qcustomplot.h>

namespace jw {

inline const QString kDataLayer = QStringLiteral("main");
inline const QString kMarkLayer = QStringLiteral("marks");
/// Has a buffer of its own, so that the cursor moves without drawing the curves again.
inline const QString kCursorLayer = QStringLiteral("cursor");

/// [px] beside the axis rects of every figure, so that those over one another stand in line.
inline constexpr int kLeftMargin = 62;
inline constexpr int kRightMargin = 44;

/// Adds the layers of marks and cursor above those that every plot has.
inline void addPlotLayers(QCustomPlot& plot) {
  plot.addLayer(kMarkLayer, plot.layer(QStringLiteral("axes")), QCustomPlot::limAbove);
  plot.addLayer(kCursorLayer, plot.layer(kMarkLayer), QCustomPlot::limAbove);
  plot.layer(kCursorLayer)->setMode(QCPLayer::lmBuffered);
}

}  // namespace jw

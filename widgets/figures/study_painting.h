#pragma once

#include <qcustomplot.h>

#include "widgets/snapshot.h"

namespace jw {

/// Puts a plot on paper.
void paintPlot(QCPPainter& painter, QCustomPlot& plot, const QSizeF& size);

/// The pictures of the Ratio figure: what the snapshot has of them, else the usual study, worked
/// out on the spot. False if not enough is known; nothing is painted then.
bool paintRatio(QCPPainter& painter, const QSizeF& size, const Snapshot& snapshot);
bool paintSweep(QCPPainter& painter, const QSizeF& size, const Snapshot& snapshot);
bool paintMap(QCPPainter& painter, const QSizeF& size, const Snapshot& snapshot);

/// Whether the ratio can be drawn.
bool hasRatios(const Snapshot& snapshot);

}  // namespace jw

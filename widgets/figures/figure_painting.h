#pragma once

#include <qcustomplot.h>
#include <QDate>

#include "widgets/snapshot.h"

namespace jw {

/// Height [1/96 inch] of the title strip.
inline constexpr double kTitleStripHeight = 52;

/// Project, variant, figure, date and key numbers.
void paintTitleStrip(QPainter& painter, const QRectF& rect, const Snapshot& snapshot,
                     const QString& figureName, const QDate& date);

/// Below the figure: what it must not be taken for. Returns the height [1/96 inch] that it takes of
/// the foot of `rect`.
double paintCautions(QPainter& painter, const QRectF& rect, const QString& figureName);

/// One figure into `rect`, in units of 1/96 inch.
void paintFigureContent(QCPPainter& painter, const QRectF& rect, const Snapshot& snapshot,
                        const QString& figureName);

}  // namespace jw

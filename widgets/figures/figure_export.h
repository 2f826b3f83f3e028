#pragma once

#include <QDate>
#include <QImage>
#include <QPainter>
#include <QSizeF>
#include <QString>
#include <QStringList>
#include <tl/expected.hpp>

#include "core/quantity/quantity.h"
#include "widgets/snapshot.h"

namespace jw {

/// How a figure is put on paper.
struct ExportOptions {
  QSizeF sizeMm{160, 110};
  int dpi = 300;                      ///< of PNG; SVG and PDF keep lines as lines
  QDate date = QDate::currentDate();  ///< in the title strip
};

/// Names of all figures that can be exported: "envelope", "cycle", "power", "heat" (warm-up and
/// cycle), "overload" (overload and duty), "ratio", "sweep" (one input varied), "map" (two inputs
/// varied), "precision", "efficiency", "response", "toolerror", "tolerance", "distribution" and
/// "tornado" (of the smallest margin), "envelopeband", "families" (table), "familymap", "search",
/// "drive" (the stage of the largest ratio). "drive1", "drive2" and so on are understood too and
/// mean one stage, the motor's first.
QStringList figureNames();

/// Name for people, "Envelope"; empty for an unknown name.
QString figureTitle(const QString& figureName);

/// Draws a figure, light on white and without title strip, into `rect` of `painter`. One unit of
/// the painter is 1/96 inch (text is 11 units high): scale the painter for other devices.
void paintFigure(QPainter& painter, const QRectF& rect, const Snapshot& snapshot,
                 const QString& figureName);

/// The figure with its title strip (project, variant, date, key numbers) and cautions as pixels.
/// The same snapshot and options give the same bytes, whatever the screen.
QImage figureImage(const Snapshot& snapshot, const QString& figureName,
                   const ExportOptions& options = {});

/// Writes the figure with its title strip as PNG, SVG or PDF, by the suffix of `fileName`. An
/// error says what is wrong with the name, the suffix, the size or the place; an existing file
/// stays as it is until the new one is complete.
tl::expected<void, InputError> exportFigure(const Snapshot& snapshot, const QString& figureName,
                                            const QString& fileName,
                                            const ExportOptions& options = {});

}  // namespace jw

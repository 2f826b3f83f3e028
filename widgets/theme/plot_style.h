#pragma once

#include <qcustomplot.h>

#include "widgets/theme/palette.h"

namespace jw {

/// Everything that a figure is drawn with.
struct PlotStyle {
  Palette colours;
  QFont font;        ///< ticks, titles and labels
  QFont strongFont;  ///< names that stand out
};

/// The current theme's style.
PlotStyle screenPlotStyle();

/// Light on white, for export.
PlotStyle printPlotStyle();

/// Sets background, fonts, pens and brushes of `plot` and of all its axis rects.
void stylePlot(QCustomPlot& plot, const PlotStyle& style);

/// The same for one axis rect, e.g. one that was just added.
void styleAxisRect(QCPAxisRect& rect, const PlotStyle& style);

/// A pen for data [px]; just above 1 px, so that it stays even on every screen.
QPen dataPen(const QColor& colour, double width = 1.6, Qt::PenStyle style = Qt::SolidLine);

/// Ticks written with a real minus sign, thin spaces and the decimals that the step needs.
class NumberTicker : public QCPAxisTicker {
 protected:
  double getTickStep(const QCPRange& range) override;
  QString getTickLabel(double tick, const QLocale& locale, QChar formatChar,
                       int precision) override;

 private:
  int m_decimals = 0;
};

/// Ticks at round numbers of a logarithmic axis, at least some four wherever it is zoomed to.
class LogTicker : public QCPAxisTicker {
 protected:
  QVector<double> createTickVector(double tickStep, const QCPRange& range) override;
  QString getTickLabel(double tick, const QLocale& locale, QChar formatChar,
                       int precision) override;
};

}  // namespace jw

#include "widgets/theme/plot_style.h"

#include <cmath>

#include "widgets/theme/number_text.h"
#include "widgets/theme/theme.h"

namespace jw {
namespace {

void styleAxis(QCPAxis& axis, const PlotStyle& style) {
  const Palette& p = style.colours;
  axis.setBasePen(Qt::NoPen);
  axis.setTickPen(Qt::NoPen);
  axis.setSubTickPen(Qt::NoPen);
  axis.setSubTicks(false);
  // Not 0, although it is not drawn: files would get lines of no length, which viewers reject.
  axis.setTickLength(0, 3);
  axis.setTickLabelFont(style.font);
  axis.setTickLabelColor(p.muted);
  axis.setLabelFont(style.font);
  axis.setLabelColor(p.muted);
  axis.setTickLabelPadding(3);
  axis.setLabelPadding(6);
  axis.grid()->setPen(QPen(p.grid, 1));
  axis.grid()->setZeroLinePen(QPen(p.zeroLine, 1));
  axis.grid()->setSubGridVisible(false);
  const auto ticker = QSharedPointer<NumberTicker>::create();
  ticker->setTickCount(6);
  axis.setTicker(ticker);
}

}  // namespace

PlotStyle screenPlotStyle() { return {palette(), textFont(11), textFont(11, QFont::DemiBold)}; }

PlotStyle printPlotStyle() { return {printPalette(), textFont(11), textFont(11, QFont::DemiBold)}; }

void styleAxisRect(QCPAxisRect& rect, const PlotStyle& style) {
  rect.setBackground(QBrush(Qt::NoBrush));
  for (QCPAxis* axis : rect.axes()) styleAxis(*axis, style);
}

void stylePlot(QCustomPlot& plot, const PlotStyle& style) {
  plot.setBackground(QBrush(style.colours.panel));
  plot.setPlottingHints(QCP::phFastPolylines | QCP::phCacheLabels);
  plot.setNotAntialiasedElements(QCP::aeGrid | QCP::aeAxes | QCP::aeZeroLine);
  for (QCPAxisRect* rect : plot.axisRects()) styleAxisRect(*rect, style);
}

QPen dataPen(const QColor& colour, double width, Qt::PenStyle style) {
  return {colour, width, style, Qt::RoundCap, Qt::RoundJoin};
}

double NumberTicker::getTickStep(const QCPRange& range) {
  const double step = QCPAxisTicker::getTickStep(range);
  m_decimals = qBound(0, static_cast<int>(std::ceil(-std::log10(step) - 1e-9)), 8);
  // Steps such as 2.5 need one place more than their order of magnitude.
  const double scaled = step * std::pow(10.0, m_decimals);
  if (std::abs(scaled - std::round(scaled)) > 1e-6) ++m_decimals;
  return step;
}

QString NumberTicker::getTickLabel(double tick, const QLocale&, QChar, int) {
  return fixedNumber(tick, m_decimals);
}

QVector<double> LogTicker::createTickVector(double tickStep, const QCPRange& range) {
  static const std::vector<double> kSteps[] = {
      {1},
      {1, 2, 5},
      {1, 1.5, 2, 3, 4, 5, 6, 8},
      {1, 1.2, 1.4, 1.6, 1.8, 2, 2.5, 3, 3.5, 4, 5, 6, 7, 8, 9}};
  if (!(range.lower > 0)) return {};
  for (const std::vector<double>& steps : kSteps) {
    QVector<double> ticks;
    for (double decade = std::pow(10, std::floor(std::log10(range.lower))); decade <= range.upper;
         decade *= 10)
      for (const double step : steps)
        if (range.contains(step * decade)) ticks << step * decade;
    if (ticks.size() >= 5) return ticks;
  }
  return QCPAxisTicker::createTickVector(tickStep, range);
}

QString LogTicker::getTickLabel(double tick, const QLocale&, QChar, int) {
  return numberText(tick, 4);
}

}  // namespace jw

#pragma once

#include <vector>

#include <qcustomplot.h>

#include "widgets/figures/log_trace.h"
#include "widgets/figures/row_overlay.h"
#include "widgets/figures/series_look.h"

namespace jw {

/// One curve in a row of a measured log's picture.
struct LogLine {
  QString name;
  SeriesLook look;
  LogTracePtr trace;
  bool scales = true;  ///< whether the axis makes room for all of it
};

/// The curves that share one value axis.
struct LogRow {
  QString id;         ///< "speed"
  QString title;      ///< "speed, rpm"
  double factor = 1;  ///< shown value over SI value
  std::vector<LogLine> lines;
};

/// A stretch of time [s].
struct LogStretch {
  double from = 0;
  double to = 0;
  bool operator==(const LogStretch&) const = default;
};

/// What the picture of a measured log shows.
struct LogView {
  double length = 0;       ///< [s]
  double longestStep = 0;  ///< [s] at which curves are broken
  std::vector<LogRow> rows;
  std::vector<LogStretch> gaps;
};

/// One curve of a log on an axis rect. Its points are worked out for the stretch and width that are
/// seen, at every draw.
class LogCurve : public QCPLayerable {
  Q_OBJECT

 public:
  LogCurve(QCustomPlot* plot, QCPAxisRect* rect);
  void setLine(const LogLine& line, double factor, double longestStep);
  void setStyle(const PlotStyle& style) { m_pen = seriesPen(m_line.look, style); }

 protected:
  void applyDefaultAntialiasingHint(QCPPainter* painter) const override;
  QRect clipRect() const override { return m_rect->rect(); }
  void draw(QCPPainter* painter) override;

 private:
  QCPAxisRect* m_rect;
  LogLine m_line;
  double m_factor = 1;
  double m_longestStep = 0;
  QPen m_pen;
};

/// Shades gaps behind the curves of a row, veils what is outside the chosen stretch and draws its
/// two edges.
class LogStretchOverlay : public QCPLayerable {
  Q_OBJECT

 public:
  /// `edges`: in front of the curves the veil and the edges, else the gaps behind them.
  LogStretchOverlay(QCustomPlot* plot, QCPAxisRect* rect, bool edges);
  void setStyle(const PlotStyle* style) { m_style = style; }
  void setGaps(const std::vector<LogStretch>& gaps) { m_gaps = gaps; }
  /// `chosen` edge is drawn strong: 0, 1, or -1 for none.
  void setStretch(const LogStretch& stretch, int chosen);

 protected:
  void applyDefaultAntialiasingHint(QCPPainter* painter) const override;
  QRect clipRect() const override { return m_rect->rect(); }
  void draw(QCPPainter* painter) override;

 private:
  void drawGaps(QCPPainter* painter) const;
  void nameGaps(QCPPainter* painter) const;
  void drawEdges(QCPPainter* painter) const;
  double pixelOf(double time) const;

  QCPAxisRect* m_rect;
  bool m_edges;
  const PlotStyle* m_style = nullptr;
  std::vector<LogStretch> m_gaps;
  LogStretch m_stretch;
  int m_chosen = -1;
};

}  // namespace jw

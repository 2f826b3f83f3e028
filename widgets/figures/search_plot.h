#pragma once

#include <optional>

#include "widgets/figures/line_chart_plot.h"
#include "widgets/figures/search_view.h"
#include "widgets/snapshot.h"

namespace jw {

/// Draws the dots of a search on one axis rect: discs hold, triangles are close, hollow squares
/// fall short. Of dots on the same two pixels one is drawn.
class SearchDots : public QCPLayerable {
  Q_OBJECT

 public:
  SearchDots(QCustomPlot* plot, QCPAxisRect* rect, const QString& layer);

  void setDots(std::vector<SearchDot> dots) { m_dots = std::move(dots); }
  const std::vector<SearchDot>& dots() const { return m_dots; }
  void setPalette(const Palette& palette) { m_palette = palette; }
  /// Index into dots() of the one nearest to `pixel`, none beyond `reach` px.
  std::optional<std::size_t> nearest(const QPointF& pixel, double reach) const;
  QPointF pixelOf(const SearchDot& dot) const;
  /// How many were drawn the last time.
  std::size_t drawn() const { return m_drawn; }

 protected:
  void applyDefaultAntialiasingHint(QCPPainter* painter) const override;
  QRect clipRect() const override;
  void draw(QCPPainter* painter) override;

 private:
  void drawDot(QCPPainter* painter, CheckState state, const QPointF& at) const;

  QCPAxisRect* m_rect;
  Palette m_palette;
  std::vector<SearchDot> m_dots;
  std::size_t m_drawn = 0;
};

/// Draws a SearchView, on the screen or on paper.
class SearchPlot {
 public:
  explicit SearchPlot(QCustomPlot& plot);

  void setStyle(const PlotStyle& style);
  void show(SearchView view, bool keepRange);
  void showAll() { m_lines.showAll(); }
  const SearchDots& dots() const { return *m_dots; }
  const LineChartPlot& lines() const { return m_lines; }

 private:
  LineChartPlot m_lines;
  SearchDots* m_dots;
};

/// The picture of a search for print.
void paintSearch(QCPPainter& painter, const QSizeF& size, const Snapshot& snapshot);

}  // namespace jw

#pragma once

#include "widgets/figures/plane_canvas.h"
#include "widgets/figures/search_plot.h"

namespace jw {

/// The scatter of a search on the screen: a tip over each dot, one of them chosen.
class SearchCanvas : public PlaneCanvas {
  Q_OBJECT

 public:
  explicit SearchCanvas(QWidget* parent = nullptr);

  /// `study` has to live as long as it is shown.
  void showStudy(const SearchStudy* study, bool withShort, bool stale);
  /// Rings the candidate, or none.
  void setChosen(std::optional<std::size_t> candidate);
  void restyle();
  const SearchPlot& plot() const { return m_plot; }
  /// The candidate under a pixel.
  std::optional<std::size_t> candidateAt(const QPointF& pixel) const;

 signals:
  void candidatePicked(std::size_t candidate);

 protected:
  QString readingAt(const QPointF& pixel) const override;
  void showAll() override { m_plot.showAll(); }
  void pick(const QPointF& pixel) override;
  void mouseMoveEvent(QMouseEvent* event) override;

 private:
  void showRing();

  SearchPlot m_plot;
  PlotMarks* m_ring;
  const SearchStudy* m_study = nullptr;
  std::optional<std::size_t> m_chosen;
};

}  // namespace jw

#include "widgets/figures/search_canvas.h"

#include <QMouseEvent>
#include <QToolTip>

#include "widgets/figures/plot_layers.h"
#include "widgets/theme/theme.h"

namespace jw {
namespace {

constexpr double kReach = 10;  // [px]

}  // namespace

SearchCanvas::SearchCanvas(QWidget* parent)
    : PlaneCanvas(parent), m_plot(*this), m_ring(new PlotMarks(this, axisRect(), kCursorLayer)) {
  setObjectName(QStringLiteral("search.scatter"));
}

void SearchCanvas::showStudy(const SearchStudy* study, bool withShort, bool stale) {
  m_study = study;
  m_plot.show(study ? searchView(*study, withShort) : SearchView{}, isZoomed());
  setDimmed(stale, screenPlotStyle().colours.panel);
  showRing();
  replot(rpQueuedReplot);
}

void SearchCanvas::setChosen(std::optional<std::size_t> candidate) {
  m_chosen = candidate;
  showRing();
  replot(rpQueuedReplot);
}

void SearchCanvas::showRing() {
  std::vector<PlotMark> marks;
  for (const SearchDot& dot : m_plot.dots().dots()) {
    if (m_chosen && dot.candidate == *m_chosen) {
      marks.push_back({dot.at, PlotMark::Shape::Ring, jw::palette().accent, 8});
    }
  }
  m_ring->setMarks(std::move(marks));
}

void SearchCanvas::restyle() {
  m_plot.setStyle(screenPlotStyle());
  showRing();
  replot(rpQueuedReplot);
}

std::optional<std::size_t> SearchCanvas::candidateAt(const QPointF& pixel) const {
  const auto dot = m_plot.dots().nearest(pixel, kReach);
  if (!dot) return std::nullopt;
  return m_plot.dots().dots()[*dot].candidate;
}

QString SearchCanvas::readingAt(const QPointF& pixel) const {
  const auto candidate = candidateAt(pixel);
  if (!m_study || !candidate || *candidate >= m_study->candidates.size()) return {};
  return candidateLine(*m_study, m_study->candidates[*candidate]);
}

void SearchCanvas::pick(const QPointF& pixel) {
  if (const auto candidate = candidateAt(pixel)) emit candidatePicked(*candidate);
}

void SearchCanvas::mouseMoveEvent(QMouseEvent* event) {
  PlaneCanvas::mouseMoveEvent(event);
  const auto candidate = candidateAt(event->position());
  if (!m_study || !candidate || event->buttons() != Qt::NoButton) return QToolTip::hideText();
  QToolTip::showText(event->globalPosition().toPoint(),
                     candidateTip(*m_study, m_study->candidates[*candidate]), this);
}

}  // namespace jw

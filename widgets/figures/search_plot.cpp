#include "widgets/figures/search_plot.h"

#include <cmath>

#include "widgets/figures/plot_layers.h"
#include "widgets/theme/fonts.h"
#include "widgets/theme/marks.h"
#include "widgets/theme/theme.h"

namespace jw {
namespace {

constexpr int kCell = 2;  // [px] of which one dot is enough

}  // namespace

SearchDots::SearchDots(QCustomPlot* plot, QCPAxisRect* rect, const QString& layer)
    : QCPLayerable(plot, layer), m_rect(rect), m_palette(jw::palette()) {}

void SearchDots::applyDefaultAntialiasingHint(QCPPainter* painter) const {
  painter->setAntialiasing(true);
}

QRect SearchDots::clipRect() const { return m_rect->rect(); }

QPointF SearchDots::pixelOf(const SearchDot& dot) const {
  return {m_rect->axis(QCPAxis::atBottom)->coordToPixel(dot.at.x()),
          m_rect->axis(QCPAxis::atLeft)->coordToPixel(dot.at.y())};
}

std::optional<std::size_t> SearchDots::nearest(const QPointF& pixel, double reach) const {
  std::optional<std::size_t> best;
  double least = reach * reach;
  for (std::size_t k = 0; k < m_dots.size(); ++k) {
    const QPointF away = pixelOf(m_dots[k]) - pixel;
    const double square = QPointF::dotProduct(away, away);
    if (square > least) continue;
    least = square;
    best = k;
  }
  return best;
}

void SearchDots::drawDot(QCPPainter* painter, CheckState state, const QPointF& at) const {
  if (state != CheckState::Short) {
    return drawStateMark(*painter, state, at, 7, m_palette);
  }
  painter->setPen(QPen(blend(m_palette.shortfall, m_palette.panel, 0.6), 1));
  painter->setBrush(Qt::NoBrush);
  painter->drawRect(QRectF(at.x() - 2.5, at.y() - 2.5, 5, 5));
}

void SearchDots::draw(QCPPainter* painter) {
  const QRect rect = m_rect->rect();
  const int across = rect.width() / kCell + 1;
  const int states = 4;
  std::vector<bool> taken(std::size_t(across) * std::size_t(rect.height() / kCell + 1) * states);
  m_drawn = 0;
  for (const SearchDot& dot : m_dots) {
    const QPointF at = pixelOf(dot);
    if (!QRectF(rect).contains(at)) continue;
    const int column = int(at.x() - rect.left()) / kCell;
    const int row = int(at.y() - rect.top()) / kCell;
    const auto cell = std::size_t((row * across + column) * states + int(dot.state));
    if (taken[cell]) continue;
    taken[cell] = true;
    drawDot(painter, dot.state, at);
    ++m_drawn;
  }
}

SearchPlot::SearchPlot(QCustomPlot& plot)
    : m_lines(plot), m_dots(new SearchDots(&plot, plot.axisRect(), kDataLayer)) {}

void SearchPlot::setStyle(const PlotStyle& style) {
  m_dots->setPalette(style.colours);
  m_lines.setStyle(style);
}

void SearchPlot::show(SearchView view, bool keepRange) {
  m_dots->setDots(std::move(view.dots));
  m_lines.show(std::move(view.chart), keepRange);
}

void paintSearch(QCPPainter& painter, const QSizeF& size, const Snapshot& snapshot) {
  SearchStudy fresh;
  if (!snapshot.search && snapshot.evaluatedProject) {
    fresh = bundledSearch(snapshot.evaluatedProject);
  }
  const SearchStudy& study = snapshot.search ? *snapshot.search : fresh;
  if (!study.base) {
    painter.setFont(textFont(12));
    painter.setPen(printPalette().muted);
    const QString why = study.refused ? QString::fromStdString(describe(*study.refused))
                                      : QStringLiteral("Not enough is known to draw this.");
    painter.drawText(QRectF(QPointF(0, 0), size).adjusted(20, 0, -20, 0),
                     Qt::AlignCenter | Qt::TextWordWrap, why);
    return;
  }
  QCustomPlot plot;
  SearchPlot search(plot);
  search.setStyle(printPlotStyle());
  SearchView view = searchView(study, false);
  view.chart.remark =
      countsText(study) + QStringLiteral("  ·  ○ present design  ·  — Pareto front");
  search.show(std::move(view), false);
  painter.setModes(QCPPainter::pmVectorized | QCPPainter::pmNoCaching | QCPPainter::pmNonCosmetic);
  plot.toPainter(&painter, int(size.width()), int(size.height()));
}

}  // namespace jw

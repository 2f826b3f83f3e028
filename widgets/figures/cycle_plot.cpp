#include "widgets/figures/cycle_plot.h"

#include <algorithm>
#include <cmath>

#include "widgets/figures/curve_thinning.h"
#include "widgets/figures/plot_layers.h"
#include "widgets/theme/number_text.h"

namespace jw {
namespace {

// Lowest and highest value on one side of a row, zero included where the row says so.
QCPRange valuesOf(const CycleRow& row, bool right) {
  constexpr double kNone = std::numeric_limits<double>::infinity();
  QCPRange range;
  range.lower = row.fromZero ? 0 : kNone;
  range.upper = row.fromZero ? 0 : -kNone;
  const auto include = [&](double v) {
    if (std::isnan(v)) return;
    range.lower = std::min(range.lower, v);
    range.upper = std::max(range.upper, v);
  };
  for (const CycleSeries& s : row.series)
    if (s.rightAxis == right)
      for (const double v : s.values) include(v);
  if (!right)
    for (const Level& level : row.levels) include(level.value);
  if (range.lower > range.upper) return {0, 0};
  const double lacking = std::max(row.smallestSpan - range.size(), 0.0) / 2;
  return {range.lower - lacking, range.upper + lacking};
}

QCPRange padded(QCPRange range) {
  const double pad = range.size() > 0 ? 0.08 * range.size() : 1;
  return {range.lower - pad, range.upper + pad};
}

// Widens both ranges until zero stands at the same height in each.
void alignZero(QCPRange& a, QCPRange& b) {
  const double below = std::max(-a.lower / a.size(), -b.lower / b.size());
  const double above = std::max(a.upper / a.size(), b.upper / b.size());
  for (QCPRange* range : {&a, &b}) {
    const double size = range->size();
    *range = QCPRange(-below * size, above * size);
  }
}

}  // namespace

CyclePlot::CyclePlot(QCustomPlot& plot, bool bands)
    : m_plot(plot), m_style(screenPlotStyle()), m_withBands(bands) {
  addPlotLayers(plot);
  plot.plotLayout()->clear();
  plot.plotLayout()->setRowSpacing(2);
  stylePlot(plot, m_style);
}

void CyclePlot::setStyle(const PlotStyle& style) {
  m_style = style;
  stylePlot(m_plot, style);
  for (Row& row : m_rows) styleRow(row);
}

void CyclePlot::styleRow(Row& row) {
  styleAxisRect(*row.rect, m_style);
  row.key->setStyle(&m_style);
  row.bands->setStyle(&m_style);
  const bool last = &row == &m_rows.back();
  row.rect->axis(QCPAxis::atBottom)->setTickLabels(last);
  row.rect->axis(QCPAxis::atRight)->grid()->setVisible(false);
  for (std::size_t i = 0; i < row.graphs.size(); ++i)
    row.graphs[i]->setPen(seriesPen(row.data.series[i].look, m_style));
  for (const CycleSeries& s : row.data.series)
    if (s.rightAxis)
      row.rect->axis(QCPAxis::atRight)->setTickLabelColor(seriesInk(s.look, m_style));
  row.levels->setFonts(m_style.font, m_style.strongFont);
  row.levels->setLabels(levelLabels(row.data.levels, m_style));
}

void CyclePlot::addRow(const CycleRow& data, bool last) {
  Row row;
  row.data = data;
  row.rect = new QCPAxisRect(&m_plot, true);
  const int top = RowOverlay::height() + (m_rows.empty() && m_withBands ? 20 : 0);
  row.rect->setAutoMargins(QCP::msNone);
  const int bottom = last ? 40 : 6;
  row.around = top + bottom;
  row.rect->setMargins(QMargins(kLeftMargin, top, kRightMargin, bottom));
  row.rect->setMinimumSize(120, 40);
  m_plot.plotLayout()->addElement(int(m_rows.size()), 0, row.rect);
  row.bands = new BandOverlay(&m_plot, row.rect, QStringLiteral("background"));
  row.levels = new PlotLabels(&m_plot, row.rect, kMarkLayer);
  row.key = new RowOverlay(&m_plot, row.rect, kCursorLayer);
  for (const CycleSeries& s : data.series) {
    QCPAxis* value = row.rect->axis(s.rightAxis ? QCPAxis::atRight : QCPAxis::atLeft);
    row.graphs.push_back(m_plot.addGraph(row.rect->axis(QCPAxis::atBottom), value));
    row.graphs.back()->setLayer(kDataLayer);
    row.graphs.back()->setSelectable(QCP::stNone);
    if (s.rightAxis) value->setVisible(true);
  }
  m_rows.push_back(std::move(row));
}

void CyclePlot::rebuild(const std::vector<CycleRow>& rows) {
  m_plot.clearGraphs();
  for (Row& row : m_rows) {
    delete row.key;
    delete row.bands;
    delete row.levels;
  }
  m_rows.clear();
  m_plot.plotLayout()->clear();
  m_rows.reserve(rows.size());
  for (std::size_t i = 0; i < rows.size(); ++i) addRow(rows[i], i + 1 == rows.size());
  if (m_rows.empty()) return;
  m_rows.back().rect->axis(QCPAxis::atBottom)->setLabel(QStringLiteral("time, s"));
}

bool CyclePlot::hasShapeOf(const std::vector<CycleRow>& rows) const {
  const auto sides = [](const CycleRow& row) {
    std::vector<bool> right;
    for (const CycleSeries& s : row.series) right.push_back(s.rightAxis);
    return right;
  };
  return std::equal(m_rows.begin(), m_rows.end(), rows.begin(), rows.end(),
                    [&](const Row& have, const CycleRow& want) {
                      return have.data.id == want.id && sides(have.data) == sides(want);
                    });
}

void CyclePlot::scaleValues(Row& row) {
  QCPRange left = padded(valuesOf(row.data, false));
  if (row.rect->axis(QCPAxis::atRight)->visible()) {
    QCPRange right = padded(valuesOf(row.data, true));
    alignZero(left, right);
    row.rect->axis(QCPAxis::atRight)->setRange(right);
  }
  row.rect->axis(QCPAxis::atLeft)->setRange(left);
}

void CyclePlot::fill(Row& row) {
  for (std::size_t i = 0; i < row.graphs.size(); ++i) {
    const Polyline drawn = thinned(m_view.time, row.data.series[i].values);
    row.graphs[i]->setData(drawn.x, drawn.y, true);
  }
  std::vector<QPolygonF> lines;
  for (const CycleSeries& s : row.data.series)
    if (!s.rightAxis) lines.push_back(polygonOf(thinned(m_view.time, s.values)));
  row.levels->setLines(row.data.levels.empty() ? std::vector<QPolygonF>{} : std::move(lines));
  row.key->setTitle(row.data.title);
  row.bands->setBands(m_view.bands, m_withBands && &row == &m_rows.front());
  scaleValues(row);
}

void CyclePlot::show(CycleView view, const QStringList& visible, bool keepRange) {
  m_view = std::move(view);
  std::vector<CycleRow> rows;
  for (const CycleRow& row : m_view.rows)
    if (visible.isEmpty() || visible.contains(row.id)) rows.push_back(row);
  if (!hasShapeOf(rows)) rebuild(rows);
  for (std::size_t i = 0; i < m_rows.size(); ++i) {
    m_rows[i].data = std::move(rows[i]);
    styleRow(m_rows[i]);
    fill(m_rows[i]);
  }
  setSeen(keepRange ? m_seen : QCPRange(0, m_view.period > 0 ? m_view.period : 1));
  setCursor(m_cursor, false);
  arrange(m_plot.height());
}

bool CyclePlot::shows(const QString& rowId) const {
  return std::any_of(m_rows.begin(), m_rows.end(),
                     [&](const Row& row) { return row.data.id == rowId; });
}

void CyclePlot::arrange(int height) {
  if (m_rows.empty()) return;
  int around = m_plot.plotLayout()->rowSpacing() * int(m_rows.size() - 1) + 10;
  for (const Row& row : m_rows) around += row.around;
  const double inner = std::max(20.0, double(height - around) / double(m_rows.size()));
  for (std::size_t i = 0; i < m_rows.size(); ++i) {
    m_plot.plotLayout()->setRowStretchFactor(int(i), inner + m_rows[i].around);
    for (QCPAxis* axis : m_rows[i].rect->axes(QCPAxis::atLeft | QCPAxis::atRight))
      axis->ticker()->setTickCount(std::clamp(int(inner / 20), 2, 6));
  }
}

void CyclePlot::setSeen(const QCPRange& range) {
  m_seen = range;
  for (Row& row : m_rows) row.rect->axis(QCPAxis::atBottom)->setRange(range);
}

void CyclePlot::showAll() { setSeen({0, m_view.period > 0 ? m_view.period : 1}); }

void CyclePlot::zoomBy(double factor, double centre) {
  if (m_view.empty()) return;
  const double size = std::clamp(m_seen.size() * factor, m_view.period * 1e-4, m_view.period);
  const double share = (centre - m_seen.lower) / m_seen.size();
  const double lower = std::clamp(centre - share * size, 0.0, m_view.period - size);
  setSeen({lower, lower + size});
}

void CyclePlot::panBy(double seconds) {
  if (m_view.empty()) return;
  const double size = m_seen.size();
  const double lower = std::clamp(m_seen.lower + seconds, 0.0, std::max(m_view.period - size, 0.0));
  setSeen({lower, lower + size});
}

// A row with two axes says the unit with each series, one with a single axis in its title.
KeyEntry CyclePlot::keyEntry(const CycleRow& row, const CycleSeries& series) const {
  const bool ownUnit = row.series.back().rightAxis;
  KeyEntry entry{series.name, seriesPen(series.look, m_style), seriesInk(series.look, m_style), {}};
  const double value = seriesAt(m_view.time, series.values, m_cursor);
  if (!std::isnan(value)) entry.value = numberText(value);
  if (!ownUnit) return entry;
  if (entry.value.isEmpty())
    entry.text += QStringLiteral(", ") + series.unit;
  else
    entry.value += u' ' + series.unit;
  return entry;
}

void CyclePlot::setCursor(double time, bool now) {
  m_cursor = time;
  for (Row& row : m_rows) {
    std::vector<KeyEntry> entries;
    for (const CycleSeries& s : row.data.series) entries.push_back(keyEntry(row.data, s));
    row.key->setEntries(std::move(entries));
    row.key->setCursor(time, &row == &m_rows.back());
  }
  if (now) m_plot.layer(kCursorLayer)->replot();
}

double CyclePlot::timeAt(const QPointF& pixel) const {
  if (m_rows.empty()) return std::numeric_limits<double>::quiet_NaN();
  const QCPAxisRect* first = m_rows.front().rect;
  if (pixel.x() < first->rect().left() - 6 || pixel.x() > first->rect().right() + 6)
    return std::numeric_limits<double>::quiet_NaN();
  return first->axis(QCPAxis::atBottom)->pixelToCoord(pixel.x());
}

}  // namespace jw

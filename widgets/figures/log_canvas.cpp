#include "widgets/figures/log_canvas.h"

#include <algorithm>
#include <cmath>

#include "widgets/figures/plot_layers.h"
#include "widgets/theme/number_text.h"

namespace jw {
namespace {

constexpr double kNone = std::numeric_limits<double>::quiet_NaN();
constexpr int kBottom = 40;   // [px] below the last row, for its axis
constexpr double kReach = 6;  // [px] within which an edge is taken hold of

bool sameShape(const LogView& a, const LogView& b) {
  return std::equal(a.rows.begin(), a.rows.end(), b.rows.begin(), b.rows.end(),
                    [](const LogRow& x, const LogRow& y) {
                      return x.id == y.id && x.lines.size() == y.lines.size();
                    });
}

}  // namespace

LogCanvas::LogCanvas(QWidget* parent) : PlotCanvas(parent), m_style(screenPlotStyle()) {
  setFocusPolicy(Qt::StrongFocus);
  setAccessibleName(tr("Curves of the log"));
  addPlotLayers(*this);
  plotLayout()->clear();
  plotLayout()->setRowSpacing(2);
  stylePlot(*this, m_style);
}

LogCanvas::Row LogCanvas::makeRow(const LogRow& content, bool last) {
  Row row;
  row.rect = new QCPAxisRect(this, true);
  row.rect->setAutoMargins(QCP::msNone);
  row.rect->setMargins(QMargins(kLeftMargin, RowOverlay::height(), 16, last ? kBottom : 6));
  row.rect->setMinimumSize(120, 30);
  plotLayout()->addElement(int(m_rows.size()), 0, row.rect);
  row.overlays = {new LogStretchOverlay(this, row.rect, false),
                  new LogStretchOverlay(this, row.rect, true)};
  for (std::size_t i = 0; i < content.lines.size(); ++i)
    row.curves.push_back(new LogCurve(this, row.rect));
  row.key = new RowOverlay(this, row.rect, kCursorLayer);
  return row;
}

void LogCanvas::rebuild() {
  for (Row& row : m_rows) {
    for (LogCurve* curve : row.curves) delete curve;
    for (LogStretchOverlay* overlay : row.overlays) delete overlay;
    delete row.key;
  }
  m_rows.clear();
  plotLayout()->clear();
  for (std::size_t i = 0; i < m_view.rows.size(); ++i)
    m_rows.push_back(makeRow(m_view.rows[i], i + 1 == m_view.rows.size()));
  if (!m_rows.empty())
    m_rows.back().rect->axis(QCPAxis::atBottom)->setLabel(QStringLiteral("time, s"));
}

void LogCanvas::showView(LogView view, bool keepRange) {
  const bool same = sameShape(m_view, view);
  m_view = std::move(view);
  if (!same) rebuild();
  for (std::size_t i = 0; i < m_rows.size(); ++i) {
    const LogRow& content = m_view.rows[i];
    for (std::size_t k = 0; k < content.lines.size(); ++k)
      m_rows[i].curves[k]->setLine(content.lines[k], content.factor, m_view.longestStep);
    for (LogStretchOverlay* overlay : m_rows[i].overlays) overlay->setGaps(m_view.gaps);
    m_rows[i].key->setTitle(content.title);
  }
  styleRows();
  showStretch();
  keepRange ? setSeen(m_seen.lower, m_seen.upper) : showAll();
  arrange();
}

void LogCanvas::styleRows() {
  stylePlot(*this, m_style);
  for (std::size_t i = 0; i < m_rows.size(); ++i) {
    Row& row = m_rows[i];
    styleAxisRect(*row.rect, m_style);
    row.rect->axis(QCPAxis::atBottom)->setTickLabels(i + 1 == m_rows.size());
    row.rect->axis(QCPAxis::atRight)->grid()->setVisible(false);
    for (LogCurve* curve : row.curves) curve->setStyle(m_style);
    for (LogStretchOverlay* overlay : row.overlays) overlay->setStyle(&m_style);
    row.key->setStyle(&m_style);
  }
  setCursorTime(m_cursor, false);
}

void LogCanvas::restyle() {
  m_style = screenPlotStyle();
  styleRows();
  replot(rpQueuedReplot);
}

void LogCanvas::scaleRow(const Row& row, const LogRow& content) {
  PeakLevels::Range range{kNone, kNone};
  for (const LogLine& line : content.lines) {
    if (!line.trace || !line.scales) continue;
    const PeakLevels::Range found = line.trace->range(m_seen.lower, m_seen.upper);
    range = {std::fmin(range.low, found.low), std::fmax(range.high, found.high)};
  }
  if (std::isnan(range.low)) return;
  const double low = range.low * content.factor;
  const double high = range.high * content.factor;
  const double smallest = 1e-9 * std::max({std::abs(low), std::abs(high), 1e-3});
  const double pad = std::max(0.08 * (high - low), smallest);
  row.rect->axis(QCPAxis::atLeft)->setRange(low - pad, high + pad);
}

void LogCanvas::setSeen(double from, double to) {
  const double length = m_view.length > 0 ? m_view.length : 1;
  const double size = std::clamp(to - from, 1e-6 * length, length);
  const double lower = std::clamp(from, 0.0, length - size);
  m_seen = QCPRange(lower, lower + size);
  for (std::size_t i = 0; i < m_rows.size(); ++i) {
    m_rows[i].rect->axis(QCPAxis::atBottom)->setRange(m_seen);
    scaleRow(m_rows[i], m_view.rows[i]);
  }
  replot(rpQueuedReplot);
}

void LogCanvas::showAll() { setSeen(0, m_view.length); }

void LogCanvas::zoomBy(double factor, double centre) {
  const double from = centre - (centre - m_seen.lower) * factor;
  setSeen(from, from + m_seen.size() * factor);
}

void LogCanvas::setStretch(const LogStretch& stretch) {
  m_stretch = stretch;
  showStretch();
  replot(rpQueuedReplot);
}

void LogCanvas::showStretch() {
  for (const Row& row : m_rows) row.overlays[1]->setStretch(m_stretch, m_edge);
}

void LogCanvas::arrange() {
  if (m_rows.empty()) return;
  const int around = int(m_rows.size()) * (RowOverlay::height() + 8) + kBottom;
  const double inner = std::max(20.0, double(height() - around) / double(m_rows.size()));
  for (std::size_t i = 0; i < m_rows.size(); ++i) {
    const QMargins margins = m_rows[i].rect->margins();
    plotLayout()->setRowStretchFactor(int(i), inner + margins.top() + margins.bottom());
    m_rows[i]
        .rect->axis(QCPAxis::atLeft)
        ->ticker()
        ->setTickCount(std::clamp(int(inner / 20), 2, 6));
  }
}

void LogCanvas::setCursorTime(double time, bool now) {
  m_cursor = time;
  for (std::size_t i = 0; i < m_rows.size(); ++i) {
    std::vector<KeyEntry> entries;
    for (const LogLine& line : m_view.rows[i].lines) {
      KeyEntry entry{line.name, seriesPen(line.look, m_style), seriesInk(line.look, m_style), {}};
      const double value = line.trace ? line.trace->at(time) : kNone;
      if (!std::isnan(value)) entry.value = numberText(value * m_view.rows[i].factor);
      entries.push_back(std::move(entry));
    }
    m_rows[i].key->setEntries(std::move(entries));
    m_rows[i].key->setCursor(time, i + 1 == m_rows.size());
  }
  if (now) layer(kCursorLayer)->replot();
}

double LogCanvas::timeAt(double x) const {
  return m_rows.empty() ? kNone : m_rows[0].rect->axis(QCPAxis::atBottom)->pixelToCoord(x);
}

double LogCanvas::pixelOf(double time) const {
  return m_rows.empty() ? kNone : m_rows[0].rect->axis(QCPAxis::atBottom)->coordToPixel(time);
}

int LogCanvas::edgeAt(const QPointF& pixel) const {
  if (m_rows.empty() || !(m_stretch.to > m_stretch.from)) return -1;
  const double from = std::abs(pixelOf(m_stretch.from) - pixel.x());
  const double to = std::abs(pixelOf(m_stretch.to) - pixel.x());
  if (std::min(from, to) > kReach) return -1;
  return from < to ? 0 : 1;
}

void LogCanvas::dragTo(const QPointF& pixel) {
  const double time = timeAt(pixel.x());
  if (m_drag == Drag::Pan) {
    const double from = m_seen.lower + m_panFrom - time;
    return setSeen(from, from + m_seen.size());
  }
  const double at = std::clamp(time, 0.0, m_view.length);
  LogStretch next = m_stretch;
  if (m_drag == Drag::From) next.from = std::min(at, next.to);
  if (m_drag == Drag::To) next.to = std::max(at, next.from);
  if (!(next.to > next.from) || next == m_stretch) return;
  setStretch(next);
  emit stretchDragged(next.from, next.to);
}

void LogCanvas::mousePressEvent(QMouseEvent* event) {
  if (event->button() == Qt::RightButton || m_rows.empty()) return event->ignore();
  const int edge = event->button() == Qt::LeftButton ? edgeAt(event->position()) : -1;
  m_drag = edge == 0 ? Drag::From : edge == 1 ? Drag::To : Drag::Pan;
  m_panFrom = timeAt(event->position().x());
}

void LogCanvas::mouseMoveEvent(QMouseEvent* event) {
  if (m_rows.empty()) return;
  if (m_drag != Drag::None) return dragTo(event->position());
  const int edge = edgeAt(event->position());
  setCursor(edge >= 0 ? Qt::SplitHCursor : Qt::CrossCursor);
  if (edge != m_edge) {
    m_edge = edge;
    showStretch();
    layer(kMarkLayer)->replot();
  }
  const QRect area = m_rows[0].rect->rect();
  const bool inside = event->position().x() >= area.left() && event->position().x() <= area.right();
  setCursorTime(inside ? timeAt(event->position().x()) : kNone, true);
}

void LogCanvas::mouseReleaseEvent(QMouseEvent*) { m_drag = Drag::None; }

void LogCanvas::mouseDoubleClickEvent(QMouseEvent*) { showAll(); }

void LogCanvas::wheelEvent(QWheelEvent* event) {
  if (m_rows.empty()) return event->ignore();
  zoomBy(std::pow(0.85, event->angleDelta().y() / 120.0), timeAt(event->position().x()));
  event->accept();
}

void LogCanvas::leaveEvent(QEvent* event) {
  PlotCanvas::leaveEvent(event);
  setCursorTime(kNone, true);
}

void LogCanvas::keyPressEvent(QKeyEvent* event) {
  const double step = 0.1 * m_seen.size();
  switch (event->key()) {
    case Qt::Key_Plus: return zoomBy(0.7, m_seen.center());
    case Qt::Key_Minus: return zoomBy(1 / 0.7, m_seen.center());
    case Qt::Key_Left: return setSeen(m_seen.lower - step, m_seen.upper - step);
    case Qt::Key_Right: return setSeen(m_seen.lower + step, m_seen.upper + step);
    case Qt::Key_Home: return showAll();
    default: PlotCanvas::keyPressEvent(event);
  }
}

void LogCanvas::resizeEvent(QResizeEvent* event) {
  PlotCanvas::resizeEvent(event);
  arrange();
}

void LogCanvas::changeEvent(QEvent* event) {
  if (event->type() == QEvent::PaletteChange) restyle();
  PlotCanvas::changeEvent(event);
}

}  // namespace jw

#include "widgets/cycle/move_curve.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include <QMouseEvent>
#include <QWheelEvent>

#include "widgets/figures/curve_thinning.h"
#include "widgets/figures/plot_layers.h"
#include "widgets/theme/number_text.h"

namespace jw {
namespace {

constexpr double kDegree = std::numbers::pi / 180;
constexpr double kDecided = 4;  // [px] after which a drag is up and down, or sideways

std::vector<CycleBand> bandsOf(const MovesView& view) {
  std::vector<CycleBand> bands;
  int last = -1;
  for (const ShownRun& run : view.runs) {
    if (run.segment == last) {
      bands.back().to = run.to;
      continue;
    }
    last = run.segment;
    const bool known = static_cast<std::size_t>(last) < view.moves().size();
    QString name = known ? QString::fromStdString(view.moves()[std::size_t(last)].name) : QString();
    if (name.isEmpty()) name = QString::number(last + 1);
    bands.push_back({name, run.from, run.to});
  }
  return bands;
}

}  // namespace

MoveCurve::MoveCurve(QWidget* parent) : PlotCanvas(parent), m_style(screenPlotStyle()) {
  setObjectName(QStringLiteral("moves.curve"));
  setMinimumHeight(150);
  addPlotLayers(*this);
  axisRect()->setAutoMargins(QCP::msNone);
  axisRect()->setMargins(QMargins(kLeftMargin, RowOverlay::height() + 20, kRightMargin, 38));
  m_graph = addGraph();
  m_graph->setLayer(kDataLayer);
  m_graph->setSelectable(QCP::stNone);
  m_bands = new BandOverlay(this, axisRect(), QStringLiteral("background"));
  m_stretch = new ChosenStretch(this, axisRect(), QStringLiteral("background"));
  m_marks = new MoveCurveMarks(this, axisRect(), kMarkLayer);
  m_cursorLine = new RowOverlay(this, axisRect(), kCursorLayer);
  xAxis->setLabel(tr("time, s"));
  m_cursorLine->setTitle(tr("joint angle, °"));
  restyle();
}

void MoveCurve::restyle() {
  m_style = screenPlotStyle();
  stylePlot(*this, m_style);
  m_bands->setStyle(&m_style);
  m_stretch->setStyle(&m_style);
  m_marks->setStyle(&m_style);
  m_cursorLine->setStyle(&m_style);
  m_graph->setPen(dataPen(m_style.colours.accent, 1.8));
  replot(rpQueuedReplot);
}

void MoveCurve::showView(const MovesView& view) {
  m_view = view;
  const Polyline drawn = thinned(view.time, view.angle);
  m_graph->setData(drawn.x, drawn.y, true);
  m_bands->setBands(view.project ? bandsOf(view) : std::vector<CycleBand>{}, true);
  place();
  // The axes stand still under a drag.
  if (m_drag == Drag::None && !m_zoomed) fitRanges();
  setDimmed(view.stale && m_drag == Drag::None, m_style.colours.panel);
  replot(rpQueuedReplot);
}

void MoveCurve::fitRanges() {
  if (!m_view.hasCurve()) return;
  const auto [low, high] = std::minmax_element(m_view.angle.begin(), m_view.angle.end());
  const double pad = std::max(0.12 * (*high - *low), 1e-3);
  xAxis->setRange(0, m_view.period);
  yAxis->setRange(*low - pad, *high + pad);
}

void MoveCurve::place() {
  placeHandles();
  placeBroken();
  std::vector<QCPRange> times;
  for (const ShownRun& run : m_view.runs)
    if (run.segment == m_chosen) times.push_back(QCPRange(run.from, run.to));
  m_marks->setChosen(m_chosen);
  m_stretch->setTimes(std::move(times));
}

void MoveCurve::placeHandles() {
  std::vector<MoveHandle> handles;
  std::vector<bool> seen(m_view.project ? m_view.moves().size() : 0);
  for (const ShownRun& run : m_view.runs) {
    const auto row = static_cast<std::size_t>(run.segment);
    if (row >= seen.size() || seen[row]) continue;
    seen[row] = true;
    const Segment& move = m_view.moves()[row];
    const MoveHandle handle{run.segment, QPointF(run.to, run.endAngle / kDegree),
                            moves::canChangeAngle(move), moves::canChangeTime(move)};
    if (handle.angle || handle.time) handles.push_back(handle);
  }
  m_marks->setHandles(std::move(handles));
}

void MoveCurve::placeBroken() {
  std::vector<QPointF> joins;
  for (const ShownRun& run : m_view.runs)
    if (run.broken) joins.push_back(QPointF(run.from, run.startAngle / kDegree));
  if (m_view.endBroken)
    joins.push_back(QPointF(m_view.period, m_view.runs.back().endAngle / kDegree));
  m_marks->setBroken(std::move(joins));
}

void MoveCurve::setChosen(int segment) {
  m_chosen = segment;
  place();
  replot(rpQueuedReplot);
}

void MoveCurve::setCursorTime(double s) {
  m_cursorLine->setCursor(s, true);
  layer(kCursorLayer)->replot();
}

QPointF MoveCurve::handleOf(int segment) const {
  for (const MoveHandle& handle : m_marks->handles())
    if (handle.segment == segment) return m_marks->toPixels(handle.at);
  return {};
}

void MoveCurve::grip(int index, const QPointF& pixel) {
  m_held = m_marks->handles()[static_cast<std::size_t>(index)];
  m_units = {xAxis->range().size() / axisRect()->width(),
             yAxis->range().size() * kDegree / axisRect()->height()};
  m_grip = {m_view.project, m_held.segment, m_units.y(), m_units.x(),
            QStringLiteral("moves.drag.%1").arg(++m_gestures)};
  m_from = pixel;
  m_drag = Drag::Undecided;
  emit moveChosen(m_held.segment);
}

void MoveCurve::dragTo(const QPointF& pixel, bool keepRest) {
  const QPointF way = pixel - m_from;
  if (m_drag == Drag::Undecided) {
    if (std::max(std::abs(way.x()), std::abs(way.y())) < kDecided) return;
    const bool upright = std::abs(way.y()) > std::abs(way.x());
    m_drag = (upright && m_held.angle) || !m_held.time ? Drag::Angle : Drag::Time;
  }
  if (m_drag == Drag::Angle)
    emit editRequested(moves::dragAngle(m_grip, -way.y() * m_units.y(), keepRest));
  else
    emit editRequested(moves::dragTime(m_grip, way.x() * m_units.x()));
}

void MoveCurve::hover(const QPointF& pixel) {
  const int hot = m_marks->handleAt(pixel);
  m_marks->setHot(hot);
  replot(rpQueuedReplot);
  if (hot < 0) {
    unsetCursor();
    return emit reading({});
  }
  const MoveHandle& handle = m_marks->handles()[static_cast<std::size_t>(hot)];
  setCursor(!handle.time    ? Qt::SizeVerCursor
            : !handle.angle ? Qt::SizeHorCursor
                            : Qt::SizeAllCursor);
  emit reading(tr("end of move %1: %2 s, %3°")
                   .arg(handle.segment + 1)
                   .arg(numberText(handle.at.x(), 4), numberText(handle.at.y(), 4)));
}

void MoveCurve::mousePressEvent(QMouseEvent* event) {
  if (event->button() != Qt::LeftButton) return event->ignore();
  const int handle = m_marks->handleAt(event->position());
  if (handle >= 0) return grip(handle, event->position());
  const double time = xAxis->pixelToCoord(event->position().x());
  if (!m_view.hasCurve() || time < 0 || time > m_view.period) return;
  const auto run = std::find_if(m_view.runs.begin(), m_view.runs.end(),
                                [&](const ShownRun& r) { return time <= r.to; });
  if (run != m_view.runs.end()) emit moveChosen(run->segment);
  emit cursorDragged(time);
}

void MoveCurve::mouseMoveEvent(QMouseEvent* event) {
  if (m_drag == Drag::None) return hover(event->position());
  dragTo(event->position(), event->modifiers().testFlag(Qt::ShiftModifier));
}

void MoveCurve::mouseReleaseEvent(QMouseEvent*) {
  if (m_drag == Drag::None) return;
  m_drag = Drag::None;
  if (!m_zoomed) fitRanges();
  replot(rpQueuedReplot);
}

void MoveCurve::mouseDoubleClickEvent(QMouseEvent*) { resetZoom(); }

void MoveCurve::leaveEvent(QEvent* event) {
  PlotCanvas::leaveEvent(event);
  m_marks->setHot(-1);
  replot(rpQueuedReplot);
}

void MoveCurve::wheelEvent(QWheelEvent* event) {
  const double factor = std::pow(0.85, event->angleDelta().y() / 120.0);
  xAxis->scaleRange(factor, xAxis->pixelToCoord(event->position().x()));
  m_zoomed = true;
  replot(rpQueuedReplot);
  event->accept();
}

void MoveCurve::zoomBy(double factor) {
  xAxis->scaleRange(factor, xAxis->range().center());
  m_zoomed = true;
  replot(rpQueuedReplot);
}

void MoveCurve::resetZoom() {
  m_zoomed = false;
  fitRanges();
  replot(rpQueuedReplot);
}

}  // namespace jw

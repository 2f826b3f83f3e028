#include "widgets/figures/envelope_plot.h"

#include <algorithm>
#include <cmath>

#include "widgets/figures/curve_thinning.h"
#include "widgets/figures/plot_layers.h"

namespace jw {
namespace {

QColor withAlpha(QColor colour, double alpha) {
  colour.setAlphaF(float(alpha));
  return colour;
}

QPolygonF outline(const PlaneCurve& curve) { return polygonOf({curve.speed, curve.torque}); }

PlaneCurve joined(PlaneCurve a, const PlaneCurve& b) {
  a.speed += b.speed;
  a.torque += b.torque;
  return a;
}

// Points along a curve at these shares of its samples.
std::vector<QPointF> pointsAlong(const PlaneCurve& curve, const std::vector<double>& shares) {
  std::vector<QPointF> points;
  const qsizetype last = curve.speed.size() - 1;
  for (const double share : shares) {
    const auto i = qsizetype(std::lround(share * double(last)));
    if (last >= 0 && !std::isnan(curve.speed[i]) && !std::isnan(curve.torque[i]))
      points.emplace_back(curve.speed[i], curve.torque[i]);
  }
  return points;
}

// Anchors for a curve's name: along its upper side, from the left.
std::vector<QPointF> upperAnchors(const PlaneCurve& curve) {
  std::vector<QPointF> anchors;
  if (curve.speed.isEmpty()) return anchors;
  const auto [low, high] = std::minmax_element(curve.speed.begin(), curve.speed.end());
  for (const double share : {0.12, 0.2, 0.3, 0.4, 0.6, 0.7, 0.8, 0.9}) {
    const double speed = *low + share * (*high - *low);
    const double torque = curveTorqueAt(curve, speed, true);
    if (!std::isnan(torque)) anchors.emplace_back(speed, torque);
  }
  return anchors;
}

void extend(QCPRange& range, const QVector<double>& values) {
  for (const double v : values)
    if (!std::isnan(v)) range.expand(v);
}

QCPRange padded(const QCPRange& range) {
  const double pad = range.size() > 0 ? 0.08 * range.size() : 1;
  return {range.lower - pad, range.upper + pad};
}

}  // namespace

EnvelopePlot::EnvelopePlot(QCustomPlot& plot) : m_plot(plot), m_style(screenPlotStyle()) {
  addPlotLayers(plot);
  QCPAxisRect* rect = plot.axisRect();
  // In line with the rows over time, whatever the width of the numbers.
  rect->setAutoMargins(QCP::msTop | QCP::msBottom);
  rect->setMargins(QMargins(kLeftMargin, 0, kRightMargin, 0));
  rect->setMinimumMargins(QMargins(0, 8, 0, 8));
  m_reach = new PathBand(&plot, rect, kDataLayer);
  m_marks = new PlotMarks(&plot, rect, kMarkLayer);
  m_labels = new PlotLabels(&plot, rect, kMarkLayer);
  m_cursor = new PlotMarks(&plot, rect, kCursorLayer);
  showAll();
  setStyle(m_style);
}

void EnvelopePlot::setStyle(const PlotStyle& style) {
  m_style = style;
  restyle();
  fillMarks();
  fillLabels();
}

void EnvelopePlot::restyleExtras() {
  const Palette& p = m_style.colours;
  m_band->setPen(Qt::NoPen);
  m_band->setBrush(withAlpha(p.peak, 0.14));
  m_weakest->setPen(seriesPen({&Palette::peak, Qt::DashLine, 1.1}, m_style));
  m_strongest->setPen(seriesPen({&Palette::peak, Qt::DotLine, 1.3}, m_style));
  m_shortTime->setPen(seriesPen({&Palette::continuous, Qt::DashLine, 1.4}, m_style));
  for (QCPCurve* line : m_efficiency) line->setPen(QPen(withAlpha(p.muted, 0.7), 1));
}

void EnvelopePlot::restyle() {
  stylePlot(m_plot, m_style);
  m_labels->setFonts(m_style.font, m_style.strongFont);
  m_marks->setGround(m_style.colours.panel);
  m_cursor->setGround(m_style.colours.panel);
  if (m_band) restyleExtras();
  m_reach->setStyle(m_style);
  if (m_peak) {
    m_peak->setPen(dataPen(m_style.colours.peak, 1.8));
    m_peak->setBrush(withAlpha(m_style.colours.peak, 0.08));
  }
  if (m_lasting) {
    m_lasting->setPen(dataPen(m_style.colours.continuous, 1.6));
    m_lasting->setBrush(withAlpha(m_style.colours.continuous, 0.12));
  }
  for (std::size_t i = 0; i < m_path.size(); ++i) {
    const QColor colour = segmentColour(m_view.path[i]);
    m_path[i]->setPen(dataPen(colour, 1.9));
    if (m_view.path[i].dwell) m_path[i]->setLineStyle(QCPCurve::lsNone);
    if (m_view.path[i].dwell)
      m_path[i]->setScatterStyle(QCPScatterStyle(QCPScatterStyle::ssDisc, colour, colour, 6));
  }
}

QColor EnvelopePlot::segmentColour(const PathSegment& segment) const {
  const auto& hues = m_style.colours.moves;
  return segment.dwell ? m_style.colours.dwell : hues[std::size_t(segment.move) % hues.size()];
}

QCPCurve* EnvelopePlot::addCurve(const PlaneCurve& points, const QString& layer) {
  auto* curve = new QCPCurve(m_plot.xAxis, m_plot.yAxis);
  curve->setLayer(layer);
  curve->setSelectable(QCP::stNone);
  const Polyline drawn = thinned(points.speed, points.torque);
  curve->setData(drawn.x, drawn.y);
  return curve;
}

void EnvelopePlot::fillExtras() {
  // One line around both edges: between them the rule of even and odd fills.
  m_band = addCurve(joined(m_view.strongest, m_view.weakest), kDataLayer);
  m_weakest = addCurve(m_view.weakest, kDataLayer);
  m_strongest = addCurve(m_view.strongest, kDataLayer);
  m_efficiency.clear();
  for (const EfficiencyLine& line : m_view.efficiency)
    m_efficiency.push_back(addCurve(line.points, kDataLayer));
  m_shortTime = addCurve(m_view.shortTime, kDataLayer);
}

void EnvelopePlot::fillCurves() {
  m_plot.clearPlottables();
  fillExtras();
  m_peak = addCurve(m_view.peak, kDataLayer);
  m_lasting = addCurve(m_view.lasting, kDataLayer);
  m_path.clear();
  for (const PathSegment& segment : m_view.path)
    m_path.push_back(addCurve(segment.points, kDataLayer));
}

void EnvelopePlot::fillMarks() {
  std::vector<PlotMark> marks;
  std::vector<QPointF> points;
  const QColor ink = m_style.colours.text;
  if (m_view.rms) {
    marks.push_back({m_view.rms->at, PlotMark::Shape::Cross, ink, 6});
    points.push_back(m_view.rms->at);
  }
  if (m_view.tightest) {
    marks.push_back({m_view.tightest->at, PlotMark::Shape::Ring, ink, 6});
    points.push_back(m_view.tightest->at);
  }
  m_marks->setMarks(std::move(marks));
  m_labels->setMarks(std::move(points), 7);
}

void EnvelopePlot::addSegmentLabels(std::vector<PlotLabel>& labels) const {
  std::vector<int> named;
  for (const PathSegment& segment : m_view.path) {
    if (std::find(named.begin(), named.end(), segment.index) != named.end()) continue;
    named.push_back(segment.index);
    const QColor ink = inkOf(segmentColour(segment), m_style.colours.panel);
    labels.push_back({segment.name, ink, true, false, 6.0,
                      pointsAlong(segment.points, {0.5, 0.4, 0.6, 0.3, 0.7, 0.2, 0.8, 0.1, 0.9})});
  }
}

void EnvelopePlot::fillLabels() {
  const Palette& p = m_style.colours;
  std::vector<PlotLabel> labels;
  if (m_view.tightest)
    labels.push_back({m_view.tightest->text, p.text, true, true, 26, {m_view.tightest->at}});
  if (m_view.rms) labels.push_back({m_view.rms->text, p.text, false, true, 8, {m_view.rms->at}});
  const auto addName = [&](const QString& name, const PlaneCurve& curve, const QColor& hue,
                           bool strong) {
    if (!curve.speed.isEmpty())
      labels.push_back({name, inkOf(hue, p.panel), strong, false, 3, upperAnchors(curve)});
  };
  addName(m_view.peakName, m_view.peak, p.peak, true);
  addName(m_view.lastingName, m_view.lasting, p.continuous, true);
  addSegmentLabels(labels);
  addName(m_view.shortTimeName, m_view.shortTime, p.continuous, false);
  addName(m_view.strongestName, m_view.strongest, p.peak, false);
  addName(m_view.weakestName, m_view.weakest, p.peak, false);
  m_labels->setLabels(std::move(labels));
  std::vector<QPolygonF> lines;
  for (const PlaneCurve* curve :
       {&m_view.peak, &m_view.lasting, &m_view.shortTime, &m_view.weakest, &m_view.strongest})
    lines.push_back(outline(*curve));
  for (const PathSegment& segment : m_view.path) lines.push_back(outline(segment.points));
  m_labels->setLines(std::move(lines));
  fillEfficiencyLabels();
}

void EnvelopePlot::fillEfficiencyLabels() {
  std::vector<LineLabel> labels;
  for (const EfficiencyLine& line : m_view.efficiency)
    if (line.labelAt) labels.push_back({line.text, m_style.colours.muted, *line.labelAt});
  m_labels->setLineLabels(std::move(labels), m_style.colours.panel);
}

void EnvelopePlot::show(EnvelopeView view, bool keepRange) {
  m_view = std::move(view);
  m_reach->setReach(m_view.reach);
  fillCurves();
  restyle();
  fillMarks();
  fillLabels();
  m_plot.xAxis->setLabel(m_view.speedTitle);
  m_plot.yAxis->setLabel(m_view.torqueTitle);
  if (!keepRange) showAll();
}

void EnvelopePlot::showAll() {
  QCPRange speed(0, 0);
  QCPRange torque(0, 0);
  for (const PlaneCurve* curve :
       {&m_view.peak, &m_view.lasting, &m_view.strongest, &m_view.track}) {
    extend(speed, curve->speed);
    extend(torque, curve->torque);
  }
  m_plot.xAxis->setRange(padded(speed));
  m_plot.yAxis->setRange(padded(torque));
}

void EnvelopePlot::setCursor(double time, bool now) {
  std::vector<PlotMark> marks;
  if (!std::isnan(time) && !m_view.time.isEmpty()) {
    const auto after = std::upper_bound(m_view.time.begin(), m_view.time.end(), time);
    const qsizetype i = qMax<qsizetype>(after - m_view.time.begin() - 1, 0);
    const QPointF at(m_view.track.speed[i], m_view.track.torque[i]);
    marks.push_back({at, PlotMark::Shape::Disc, m_style.colours.accent, 5});
  }
  m_cursor->setMarks(std::move(marks));
  if (now) m_plot.layer(kCursorLayer)->replot();
}

int EnvelopePlot::sampleNear(const QPointF& pixel, double reach) const {
  int best = -1;
  double bestDistance = reach;
  for (qsizetype i = 0; i < m_view.track.speed.size(); ++i) {
    const double dx = m_plot.xAxis->coordToPixel(m_view.track.speed[i]) - pixel.x();
    const double dy = m_plot.yAxis->coordToPixel(m_view.track.torque[i]) - pixel.y();
    const double distance = std::hypot(dx, dy);
    if (!(distance < bestDistance)) continue;
    bestDistance = distance;
    best = int(i);
  }
  return best;
}

QPointF EnvelopePlot::toPlane(const QPointF& pixel) const {
  return {m_plot.xAxis->pixelToCoord(pixel.x()), m_plot.yAxis->pixelToCoord(pixel.y())};
}

}  // namespace jw

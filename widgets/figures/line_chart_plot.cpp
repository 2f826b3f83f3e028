#include "widgets/figures/line_chart_plot.h"

#include <algorithm>
#include <cmath>

#include "widgets/figures/curve_thinning.h"
#include "widgets/figures/cycle_view.h"
#include "widgets/figures/plot_layers.h"
#include "widgets/theme/number_text.h"

namespace jw {
namespace {

// Anchors for a curve's name, the nearest to where it would stand best first.
std::vector<QPointF> nameAnchors(const ChartLine& line) {
  std::vector<QPointF> anchors;
  const qsizetype last = line.x.size() - 1;
  for (const double away : {0.0, 0.1, -0.1, 0.2, -0.2, 0.3, -0.3, 0.45, -0.45}) {
    const double share = line.nameFrom + away;
    if (last < 0 || share < 0 || share > 1) continue;
    const auto i = qsizetype(std::lround(share * double(last)));
    if (!std::isnan(line.y[i])) anchors.emplace_back(line.x[i], line.y[i]);
  }
  return anchors;
}

}  // namespace

ChartTitle::ChartTitle(QCustomPlot* plot, QCPAxisRect* rect, const QString& layer)
    : QCPLayerable(plot, layer), m_rect(rect) {}

void ChartTitle::applyDefaultAntialiasingHint(QCPPainter* painter) const {
  painter->setAntialiasing(true);
}

void ChartTitle::setText(const QString& title, const QString& remark, const QString& warning) {
  m_title = title;
  m_remark = remark;
  m_warning = warning;
}

void ChartTitle::draw(QCPPainter* painter) {
  if (!m_style) return;
  const Palette& p = m_style->colours;
  const bool warns = !m_warning.isEmpty();
  const QFontMetricsF strong(m_style->strongFont);
  const QFontMetricsF plain(warns ? m_style->strongFont : m_style->font);
  const QPointF at(m_rect->rect().left(), m_rect->rect().top() - 9);
  painter->setFont(m_style->strongFont);
  painter->setPen(p.text);
  painter->drawText(at, m_title);
  const double used = m_title.isEmpty() ? 0 : strong.horizontalAdvance(m_title) + 10;
  const double room = m_rect->rect().width() - used;
  painter->setFont(warns ? m_style->strongFont : m_style->font);
  painter->setPen(warns ? inkOf(p.shortfall, p.panel) : p.muted);
  const QString rest = plain.elidedText(warns ? m_warning : m_remark, Qt::ElideRight, room);
  painter->drawText(at + QPointF(used, 0), rest);
}

LineChartPlot::LineChartPlot(QCustomPlot& plot, int rightMargin)
    : m_plot(plot), m_style(screenPlotStyle()) {
  addPlotLayers(plot);
  QCPAxisRect* rect = plot.axisRect();
  rect->setAutoMargins(QCP::msBottom);
  rect->setMargins(QMargins(kLeftMargin, ChartTitle::height(), rightMargin, 0));
  rect->setMinimumMargins(QMargins(0, 0, 0, 8));
  m_marks = new PlotMarks(&plot, rect, kMarkLayer);
  m_labels = new PlotLabels(&plot, rect, kMarkLayer);
  m_title = new ChartTitle(&plot, rect, kMarkLayer);
  restyle();
}

void LineChartPlot::setStyle(const PlotStyle& style) {
  m_style = style;
  restyle();
}

void LineChartPlot::styleAxis(QCPAxis& axis, const ChartAxis& chart) const {
  axis.setVisible(!m_chart.empty());
  axis.setLabel(chart.title);
  axis.setScaleType(chart.logarithmic ? QCPAxis::stLogarithmic : QCPAxis::stLinear);
  if (chart.ticks.empty() && chart.logarithmic) axis.setTicker(QSharedPointer<LogTicker>::create());
  if (chart.ticks.empty()) return;
  const auto ticker = QSharedPointer<QCPAxisTickerText>::create();
  for (const auto& [at, text] : chart.ticks) ticker->addTick(at, text);
  axis.setTicker(ticker);
}

void LineChartPlot::restyle() {
  stylePlot(m_plot, m_style);
  styleAxis(*m_plot.xAxis, m_chart.x);
  styleAxis(*m_plot.yAxis, m_chart.y);
  m_labels->setFonts(m_style.font, m_style.strongFont);
  m_marks->setGround(m_style.colours.panel);
  m_title->setStyle(&m_style);
  for (std::size_t i = 0; i < m_bands.size(); ++i) {
    QColor tint = m_style.colours.*m_chart.bands[i].hue;
    tint.setAlphaF(0.16F);
    m_bands[i]->setBrush(tint);
  }
  for (std::size_t i = 0; i < m_lines.size(); ++i) {
    const SeriesLook& look = m_chart.lines[i].look;
    QPen pen = seriesPen(look, m_style);
    if (m_chart.lines[i].faint) pen.setColor(blend(pen.color(), m_style.colours.panel, 0.42));
    m_lines[i]->setPen(pen);
    const QColor colour = m_style.colours.*look.hue;
    if (m_chart.lines[i].dots)
      m_lines[i]->setScatterStyle(QCPScatterStyle(QCPScatterStyle::ssDisc, colour, colour, 3.5));
  }
  fillMarks();
  fillLabels();
}

void LineChartPlot::addBand(const ChartBand& band) {
  std::array<QCPGraph*, 2> edges{m_plot.addGraph(), m_plot.addGraph()};
  for (QCPGraph* edge : edges) {
    edge->setLayer(kDataLayer);
    edge->setPen(Qt::NoPen);
    edge->setSelectable(QCP::stNone);
  }
  edges[0]->setData(band.x, band.low, true);
  edges[1]->setData(band.x, band.high, true);
  edges[1]->setChannelFillGraph(edges[0]);
  m_bands.push_back(edges[1]);
}

void LineChartPlot::addLine(const ChartLine& line) {
  QCPGraph* graph = m_plot.addGraph();
  graph->setLayer(kDataLayer);
  graph->setSelectable(QCP::stNone);
  graph->setLineStyle(line.dots ? QCPGraph::lsNone : QCPGraph::lsLine);
  graph->setData(line.x, line.y, true);
  m_lines.push_back(graph);
}

void LineChartPlot::show(LineChart chart, bool keepRange) {
  m_plot.clearGraphs();
  m_bands.clear();
  m_lines.clear();
  m_chart = std::move(chart);
  for (const ChartBand& band : m_chart.bands) addBand(band);
  for (const ChartLine& line : m_chart.lines) addLine(line);
  m_title->setText(m_chart.title, m_chart.remark, m_chart.warning);
  restyle();
  if (!keepRange) showAll();
}

void LineChartPlot::showAll() {
  m_plot.xAxis->setRange(m_chart.x.low, m_chart.x.high);
  m_plot.yAxis->setRange(m_chart.y.low, m_chart.y.high);
}

void LineChartPlot::fillMarks() {
  std::vector<PlotMark> marks;
  std::vector<QPointF> points;
  for (const ChartPoint& point : m_chart.points) {
    const double radius = point.shape == PlotMark::Shape::Disc ? 4.5 : 5.5;
    marks.push_back({point.at, point.shape, m_style.colours.*point.hue, radius});
    points.push_back(point.at);
  }
  m_marks->setMarks(std::move(marks));
  m_labels->setMarks(std::move(points), 6.5);
}

void LineChartPlot::fillLabels() {
  const Palette& p = m_style.colours;
  std::vector<PlotLabel> labels;
  for (const ChartPoint& point : m_chart.points)
    if (!point.text.isEmpty())
      labels.push_back(
          {point.text, inkOf(p.*point.hue, p.panel), point.strong, true, 8, {point.at}});
  std::vector<QPolygonF> lines;
  for (const ChartLine& line : m_chart.lines) {
    if (!line.faint) lines.push_back(polygonOf({line.x, line.y}));
    if (!line.name.isEmpty())
      labels.push_back(
          {line.name, seriesInk(line.look, m_style), true, false, 5, nameAnchors(line)});
  }
  for (PlotLabel& level : levelLabels(m_chart.levels, m_style)) labels.push_back(std::move(level));
  m_labels->setHeights(m_chart.nameHeights);
  m_labels->setLabels(std::move(labels));
  m_labels->setLines(std::move(lines));
}

QString LineChartPlot::readingAt(const QPointF& pixel) const {
  const double x = m_plot.xAxis->pixelToCoord(pixel.x());
  const auto valueText = [](double value, const QString& unit) {
    return unit.isEmpty() ? numberText(value) : numberText(value) + u' ' + unit;
  };
  QStringList parts{valueText(x, m_chart.x.unit)};
  for (const ChartLine& line : m_chart.lines) {
    const double y = seriesAt(line.x, line.y, x);
    if (!line.name.isEmpty() && !std::isnan(y))
      parts << line.name + u' ' + valueText(y, m_chart.y.unit);
  }
  return parts.join(QStringLiteral("  ·  "));
}

}  // namespace jw

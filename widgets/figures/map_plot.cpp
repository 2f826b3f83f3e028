#include "widgets/figures/map_plot.h"

#include <algorithm>
#include <cmath>

#include "widgets/figures/plot_layers.h"
#include "widgets/theme/number_text.h"

namespace jw {

MapPlot::MapPlot(QCustomPlot& plot)
    : m_plot(plot), m_style(screenPlotStyle()), m_map(nullptr), m_scale(new QCPColorScale(&plot)) {
  addPlotLayers(plot);
  m_map = new QCPColorMap(plot.xAxis, plot.yAxis);
  m_map->setSelectable(QCP::stNone);
  m_map->setInterpolate(false);
  QCPAxisRect* rect = plot.axisRect();
  rect->setAutoMargins(QCP::msBottom);
  rect->setMargins(QMargins(kLeftMargin, ChartTitle::height(), 10, 0));
  rect->setMinimumMargins(QMargins(0, 0, 0, 8));
  plot.plotLayout()->addElement(0, 1, m_scale);
  m_scale->setBarWidth(12);
  m_scale->setMargins(QMargins(0, ChartTitle::height(), 8, 8));
  auto* group = new QCPMarginGroup(&plot);
  rect->setMarginGroup(QCP::msBottom, group);
  m_scale->setMarginGroup(QCP::msBottom, group);
  m_map->setColorScale(m_scale);
  m_marks = new PlotMarks(&plot, rect, kMarkLayer);
  m_labels = new PlotLabels(&plot, rect, kMarkLayer);
  m_title = new ChartTitle(&plot, rect, kMarkLayer);
  restyle();
}

void MapPlot::setStyle(const PlotStyle& style) {
  m_style = style;
  restyle();
}

// From vermilion over the ground to blue: told apart with every kind of colour vision, and by
// lightness from the middle outwards (hues of Okabe and Ito).
QCPColorGradient MapPlot::gradient() const {
  const Palette& p = m_style.colours;
  QCPColorGradient colours;
  colours.clearColorStops();
  colours.setColorStopAt(0, p.friction);
  colours.setColorStopAt(0.47, blend(p.friction, p.panel, 0.18));
  colours.setColorStopAt(0.5, p.panel);
  colours.setColorStopAt(0.53, blend(p.accent, p.panel, 0.18));
  colours.setColorStopAt(1, p.accent);
  colours.setNanHandling(QCPColorGradient::nhTransparent);
  return colours;
}

void MapPlot::restyle() {
  stylePlot(m_plot, m_style);
  m_plot.xAxis->setLabel(m_view.across.title);
  m_plot.yAxis->setLabel(m_view.up.title);
  for (QCPAxis* axis : {m_plot.xAxis, m_plot.yAxis}) axis->setVisible(!m_view.empty());
  styleAxisRect(*m_scale->axis()->axisRect(), m_style);
  m_scale->axis()->setLabel(QStringLiteral("smallest margin, %"));
  m_scale->setVisible(!m_view.empty());
  m_map->setGradient(gradient());
  m_map->setDataRange(QCPRange(-100 * m_view.limit, 100 * m_view.limit));
  for (QCPCurve* edge : m_edges) edge->setPen(dataPen(m_style.colours.text, 2));
  m_labels->setFonts(m_style.font, m_style.strongFont);
  m_marks->setGround(m_style.colours.panel);
  m_title->setStyle(&m_style);
  fillMarks();
}

void MapPlot::fillColours() {
  QCPColorMapData& data = *m_map->data();
  const Eigen::ArrayXXd& worst = m_view.map->worst;
  data.setSize(int(worst.cols()), int(worst.rows()));
  data.setRange(QCPRange(m_view.x.front(), m_view.x.back()),
                QCPRange(m_view.y.front(), m_view.y.back()));
  for (int c = 0; c < int(worst.cols()); ++c) {
    for (int r = 0; r < int(worst.rows()); ++r) {
      const double margin = worst(r, c);
      const double shown = std::isnan(margin) ? margin : std::clamp(margin, -1.0, 1.0);
      data.setCell(c, r, 100 * shown);
    }
  }
}

void MapPlot::fillEdges() {
  for (QCPCurve* edge : m_edges) m_plot.removePlottable(edge);
  m_edges.clear();
  for (const QPolygonF& line : m_view.edges) {
    auto* edge = new QCPCurve(m_plot.xAxis, m_plot.yAxis);
    edge->setSelectable(QCP::stNone);
    QVector<double> x, y;
    for (const QPointF& p : line) {
      x << p.x();
      y << p.y();
    }
    edge->setData(x, y);
    m_edges.push_back(edge);
  }
}

void MapPlot::fillMarks() {
  const Palette& p = m_style.colours;
  std::vector<LineLabel> names;
  for (const auto& [at, text] : m_view.regions) names.push_back({text, p.text, at});
  m_labels->setLineLabels(std::move(names), p.panel);
  std::vector<PlotLabel> labels;
  std::vector<PlotMark> marks;
  if (m_view.present) {
    labels.push_back({m_view.presentText, p.text, true, true, 8, {*m_view.present}});
    marks.push_back({*m_view.present, PlotMark::Shape::Target, p.text, 5.5});
    m_labels->setMarks({*m_view.present}, 6.5);
  }
  m_labels->setLines(m_view.edges);
  m_labels->setLabels(std::move(labels));
  m_marks->setMarks(std::move(marks));
}

void MapPlot::show(MapView view, bool keepRange) {
  m_view = std::move(view);
  if (m_view.empty())
    m_map->data()->clear();
  else
    fillColours();
  fillEdges();
  m_title->setText(m_view.title, m_view.remark, m_view.warning);
  restyle();
  if (!keepRange) showAll();
}

void MapPlot::showAll() {
  m_plot.xAxis->setRange(m_view.across.low, m_view.across.high);
  m_plot.yAxis->setRange(m_view.up.low, m_view.up.high);
}

QString MapPlot::readingAt(const QPointF& pixel) const {
  return mapReading(m_view, m_plot.xAxis->pixelToCoord(pixel.x()),
                    m_plot.yAxis->pixelToCoord(pixel.y()));
}

}  // namespace jw

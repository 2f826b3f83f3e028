#include "widgets/figures/precision_figure.h"

#include "widgets/figures/picture_choice.h"
#include "widgets/theme/number_text.h"

namespace jw {
namespace {

LineChart waitingChart(const QString& title) {
  LineChart chart;
  chart.title = title;
  chart.remark = PrecisionFigure::tr("being computed…");
  return chart;
}

}  // namespace

PrecisionFigure::PrecisionFigure(QWidget* parent)
    : Figure(parent),
      m_loop(new LineChartCanvas),
      m_shares(new LineChartCanvas),
      m_efficiency(new LineChartCanvas),
      m_swing(new LineChartCanvas),
      m_toolError(new LineChartCanvas) {
  setObjectName(QStringLiteral("figure.precision"));
  setAccessibleName(tr("Precision"));
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(3, 3, 3, 3);
  column->setSpacing(2);
  column->addWidget(makeHeader());
  column->addWidget(makePages(), 1);
  for (LineChartCanvas* canvas : canvases())
    connect(canvas, &LineChartCanvas::hovered, m_reading, &QLabel::setText);
  m_view.loop = waitingChart(tr("Wind-up, motor held"));
  m_view.shares = waitingChart(tr("What each stage adds at the joint"));
  m_view.efficiency = waitingChart(tr("Efficiency of the chain"));
  m_view.swing = waitingChart(tr("Frequency response to the motor's torque"));
  m_view.toolError = waitingChart(tr("Error at the tool"));
}

QWidget* PrecisionFigure::makeHeader() {
  PictureChoice choice =
      makePictureChoice({{tr("wind-up"), QStringLiteral("precision.windUp")},
                         {tr("efficiency"), QStringLiteral("precision.efficiency")},
                         {tr("response"), QStringLiteral("precision.response")},
                         {tr("tool error"), QStringLiteral("precision.toolError")}},
                        QStringLiteral("precision.reading"), this);
  for (std::size_t i = 0; i < m_choice.size(); ++i) {
    m_choice[i] = choice.buttons[i];
    connect(m_choice[i], &QToolButton::clicked, this, [this, i] { setPicture(Picture(i)); });
  }
  m_reading = choice.reading;
  return choice.header;
}

QWidget* PrecisionFigure::makePages() {
  auto* pair = new QWidget;
  auto* column = new QVBoxLayout(pair);
  column->setContentsMargins(0, 0, 0, 0);
  column->setSpacing(2);
  column->addWidget(m_loop, 3);
  column->addWidget(m_shares, 2);
  m_pages = new QStackedWidget(this);
  QSizePolicy policy = m_pages->sizePolicy();
  policy.setRetainSizeWhenHidden(true);
  m_pages->setSizePolicy(policy);
  m_pages->addWidget(pair);
  m_pages->addWidget(m_efficiency);
  m_pages->addWidget(m_swing);
  m_pages->addWidget(m_toolError);
  return m_pages;
}

QString PrecisionFigure::exportName() const {
  switch (m_picture) {
    case Picture::WindUp: break;
    case Picture::Efficiency: return QStringLiteral("efficiency");
    case Picture::Response: return QStringLiteral("response");
    case Picture::ToolError: return QStringLiteral("toolerror");
  }
  return figureName();
}

void PrecisionFigure::setPicture(Picture picture) {
  m_picture = picture;
  m_choice[std::size_t(picture)]->setChecked(true);
  m_pages->setCurrentIndex(int(picture));
}

void PrecisionFigure::describe(const Snapshot& snapshot) {
  if (!snapshot.studies || !snapshot.studies->drive) return;
  const DriveCharts& charts = *snapshot.studies->drive;
  if (!charts.windUp) return setAccessibleDescription({});
  setAccessibleDescription(
      tr("Play at the joint %1, wind-up %2")
          .arg(quantityText(charts.windUp->backlash, Quantity::Angle, "arcmin"),
               quantityText(charts.windUp->windUp, Quantity::Angle, "arcmin")));
}

void PrecisionFigure::showSnapshot(const Snapshot& snapshot) {
  PrecisionView view = precisionView(snapshot);
  const bool possible = snapshot.evaluation && snapshot.evaluation->chain;
  keepSnapshot(snapshot, !possible, {Part::Cycle, Part::Load, Part::Stages});
  m_pages->setVisible(possible);
  const bool fresh = !view.loop.title.isEmpty();
  if (fresh) m_view = std::move(view);
  describe(snapshot);
  const bool stale = snapshot.stale || !fresh;
  m_loop->showChart(m_view.loop, stale);
  m_shares->showChart(m_view.shares, stale);
  m_efficiency->showChart(m_view.efficiency, stale);
  m_swing->showChart(m_view.swing, stale);
  m_toolError->showChart(m_view.toolError, stale);
}

void PrecisionFigure::restyle() {
  for (LineChartCanvas* canvas : canvases()) canvas->restyle();
}

void PrecisionFigure::zoomBy(double factor) {
  for (LineChartCanvas* canvas : canvases())
    if (canvas->isVisible()) canvas->zoomBy(factor);
}

void PrecisionFigure::resetZoom() {
  for (LineChartCanvas* canvas : canvases()) canvas->resetZoom();
}

}  // namespace jw

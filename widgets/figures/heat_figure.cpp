#include "widgets/figures/heat_figure.h"

#include <QResizeEvent>

#include "widgets/figures/picture_choice.h"
#include "widgets/figures/plot_layers.h"
#include "widgets/theme/number_text.h"

namespace jw {
namespace {

constexpr int kRoomForTwo = 560;  // [px] width from which two charts stand side by side

QWidget* makePage(QBoxLayout* layout) {
  auto* page = new QWidget;
  page->setLayout(layout);
  layout->setContentsMargins(0, 0, 0, 0);
  layout->setSpacing(2);
  return page;
}

LineChart waitingChart(const QString& title) {
  LineChart chart;
  chart.title = title;
  chart.remark = HeatFigure::tr("being computed…");
  return chart;
}

}  // namespace

HeatFigure::HeatFigure(QWidget* parent)
    : Figure(parent),
      m_warmUp(new LineChartCanvas(nullptr, kRightMargin)),
      m_cycle(new CycleStrip(true)),
      m_overload(new LineChartCanvas),
      m_duty(new LineChartCanvas) {
  setObjectName(QStringLiteral("figure.heat"));
  setAccessibleName(tr("Heat"));
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(3, 3, 3, 3);
  column->setSpacing(2);
  column->addWidget(makeHeader());
  column->addWidget(makePages(), 1);
  connect(m_cycle, &CycleStrip::cursorDragged, this, &HeatFigure::moveCursor);
  for (LineChartCanvas* canvas : canvases())
    connect(canvas, &LineChartCanvas::hovered, m_reading, &QLabel::setText);
  m_view.warmUp = waitingChart(tr("Warm-up from cold"));
  m_view.overload = waitingChart(tr("Overload"));
  m_view.duty = waitingChart(tr("Duty"));
}

QWidget* HeatFigure::makeHeader() {
  PictureChoice choice =
      makePictureChoice({{tr("warm-up and cycle"), QStringLiteral("heat.warmUp")},
                         {tr("overload and duty"), QStringLiteral("heat.overload")}},
                        QStringLiteral("heat.reading"), this);
  for (std::size_t i = 0; i < m_choice.size(); ++i) {
    m_choice[i] = choice.buttons[i];
    connect(m_choice[i], &QToolButton::clicked, this, [this, i] { setPicture(Picture(i)); });
  }
  m_reading = choice.reading;
  return choice.header;
}

QWidget* HeatFigure::makePages() {
  auto* column = new QVBoxLayout;
  column->addWidget(m_warmUp, 1);
  column->addWidget(m_cycle, 1);
  m_pair = new QBoxLayout(QBoxLayout::LeftToRight);
  m_pair->addWidget(m_overload, 1);
  m_pair->addWidget(m_duty, 1);
  m_pages = new QStackedWidget(this);
  QSizePolicy policy = m_pages->sizePolicy();
  policy.setRetainSizeWhenHidden(true);
  m_pages->setSizePolicy(policy);
  m_pages->addWidget(makePage(column));
  m_pages->addWidget(makePage(m_pair));
  return m_pages;
}

QString HeatFigure::exportName() const {
  return m_picture == Picture::WarmUp ? figureName() : QStringLiteral("overload");
}

void HeatFigure::setPicture(Picture picture) {
  m_picture = picture;
  m_choice[std::size_t(picture)]->setChecked(true);
  m_pages->setCurrentIndex(int(picture));
}

void HeatFigure::showCharts(bool stale) {
  m_warmUp->showChart(m_view.warmUp, stale);
  m_overload->showChart(m_view.overload, stale);
  m_duty->showChart(m_view.duty, stale);
}

void HeatFigure::describe(const Evaluation& evaluation) {
  if (!evaluation.heat) return setAccessibleDescription({});
  const PeriodicHeat& periodic = evaluation.heat->periodic;
  setAccessibleDescription(
      periodic.runaway ? tr("Thermal runaway: every cycle ends hotter than the last")
                       : tr("Winding peak %1, housing peak %2")
                             .arg(quantityText(periodic.windingPeak, Quantity::Temperature),
                                  quantityText(periodic.housingPeak, Quantity::Temperature)));
}

void HeatFigure::showSnapshot(const Snapshot& snapshot) {
  HeatView view = heatView(snapshot);
  const bool charts = !view.warmUp.empty();
  keepSnapshot(snapshot, view.empty(),
               {Part::Cycle, Part::Load, Part::Stages, Part::Motor, Part::Demand, Part::Heat});
  m_pages->setVisible(!view.empty());
  if (snapshot.evaluation) describe(*snapshot.evaluation);
  if (charts) m_view = view;
  showCharts(snapshot.stale || !charts);
  m_cycle->setVisible(!view.runaway);
  m_cycle->showView(std::move(view.cycle));
}

void HeatFigure::drawCursor() { m_cycle->setCursorTime(cursorTime()); }

void HeatFigure::restyle() {
  for (LineChartCanvas* canvas : canvases()) canvas->restyle();
  m_cycle->restyle();
}

void HeatFigure::zoomBy(double factor) {
  for (LineChartCanvas* canvas : canvases())
    if (canvas->isVisible()) canvas->zoomBy(factor);
}

void HeatFigure::resetZoom() {
  for (LineChartCanvas* canvas : canvases()) canvas->resetZoom();
  m_cycle->resetZoom();
}

void HeatFigure::resizeEvent(QResizeEvent* event) {
  Figure::resizeEvent(event);
  m_pair->setDirection(event->size().width() >= kRoomForTwo ? QBoxLayout::LeftToRight
                                                            : QBoxLayout::TopToBottom);
}

}  // namespace jw

#include "widgets/figures/sweep_page.h"

#include <QHBoxLayout>
#include <QSignalBlocker>
#include <QVBoxLayout>

#include "core/studies/coarse_cycle.h"
#include "widgets/inputs/field_text.h"

namespace jw {
namespace {

bool sameAxis(const SweepAxis& a, const SweepAxis& b) {
  return a.path == b.path && a.value == b.value;
}

}  // namespace

QString SweepCanvas::readingAt(const QPointF& pixel) const {
  if (m_view == nullptr) return {};
  return sweepReading(*m_view, xAxis->pixelToCoord(pixel.x()), yAxis->pixelToCoord(pixel.y()));
}

SweepPage::SweepPage(StudyThread& thread, QWidget* parent)
    : StudyPage(thread, parent), m_margins(new SweepCanvas), m_quantity(new LineChartCanvas) {
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(0, 0, 0, 0);
  column->setSpacing(2);
  column->addWidget(makeSettings());
  column->addWidget(m_margins, 5);
  column->addWidget(m_quantity, 3);
  m_margins->setView(&m_view);
  connect(m_margins, &PlaneCanvas::hovered, this, &SweepPage::reading);
  connect(m_quantity, &PlaneCanvas::hovered, this, &SweepPage::reading);
}

QWidget* SweepPage::makeSettings() {
  auto* row = new QWidget(this);
  auto* line = new QHBoxLayout(row);
  line->setContentsMargins(12, 2, 12, 0);
  line->setSpacing(8);
  m_axis = new AxisChoice(QStringLiteral("sweep"), tr("Input that is varied"), row);
  m_headline = new Chooser(QStringLiteral("sweep.quantity"), tr("Headline figure below"), row);
  m_headline->setSizeAdjustPolicy(QComboBox::AdjustToMinimumContentsLengthWithIcon);
  m_headline->setMinimumContentsLength(7);
  m_headline->setMaximumWidth(180);
  line->addWidget(m_axis, 4);
  line->addWidget(m_headline, 1);
  connect(m_axis, &AxisChoice::changed, this, &SweepPage::settingsChanged);
  connect(m_headline, &QComboBox::activated, this, [this] {
    m_quantity->resetZoom();
    showView();
  });
  return row;
}

void SweepPage::settingsChanged() {
  resetZoom();
  showSnapshot(m_snapshot);
}

void SweepPage::offerQuantities(const Evaluation& evaluation) {
  if (m_headline->count() == int(evaluation.quantities.size())) return;
  const QSignalBlocker quiet(m_headline);
  const QVariant chosen = m_headline->count() > 0 ? m_headline->currentData() : kUsualQuantity;
  m_headline->clear();
  for (const NamedQuantity& quantity : evaluation.quantities)
    m_headline->addItem(toQString(quantity.label), toQString(quantity.id));
  m_headline->setCurrentIndex(std::max(0, m_headline->findData(chosen)));
}

bool SweepPage::isOf(const std::shared_ptr<const Project>& project, const SweepAxis& axis) const {
  return m_sweep && m_project == project && sameAxis(m_sweep->axis, axis);
}

void SweepPage::showSnapshot(const Snapshot& snapshot) {
  m_snapshot = snapshot;
  if (!snapshot.evaluation || !snapshot.evaluatedProject) return;
  m_axis->offer(*snapshot.evaluatedProject);
  offerQuantities(*snapshot.evaluation);
  auto axis = m_axis->axis(*snapshot.evaluatedProject, kSweepPoints);
  if (!axis) return;
  const bool there = isOf(snapshot.evaluatedProject, *axis);
  const bool coming = m_thread.isBusy() && m_askedProject == snapshot.evaluatedProject &&
                      sameAxis(m_askedAxis, *axis);
  if ((!there || m_preview) && !coming) ask(std::move(*axis));
  const QColor panel = screenPlotStyle().colours.panel;
  if (m_sweep) m_margins->setDimmed(snapshot.stale || !there, panel);
  if (m_sweep) m_quantity->setDimmed(snapshot.stale || !there, panel);
}

void SweepPage::ask(SweepAxis axis) {
  m_askedProject = m_snapshot.evaluatedProject;
  m_askedAxis = std::move(axis);
  m_thread.request(
      [this, project = m_askedProject, axis = m_askedAxis](const StudyContext& context) {
        for (const bool preview : {true, false}) {
          const StudyRun run{context.stop, {}, 0};
          auto sweep = std::make_shared<const FieldSweep>(
              fieldSweep(preview ? withCoarseCycle(*project) : *project, axis, run));
          if (context.stop.stop_requested()) return;
          context.post([this, sweep, project, preview] {
            m_sweep = sweep;
            m_project = project;
            m_preview = preview;
            showView();
          });
        }
      });
}

void SweepPage::showView() {
  if (!m_sweep) return;
  m_view = sweepView(m_sweep, *m_project, m_headline->currentData().toString().toStdString());
  const bool stale = m_snapshot.stale || m_project != m_snapshot.evaluatedProject;
  m_margins->showChart(m_view.margins, stale);
  m_quantity->showChart(m_view.quantity, stale);
}

void SweepPage::addStudies(Snapshot& snapshot) const {
  if (m_sweep && !m_preview && m_project == snapshot.evaluatedProject) snapshot.sweep = m_sweep;
}

void SweepPage::restyle() {
  m_margins->restyle();
  m_quantity->restyle();
}

void SweepPage::zoomBy(double factor) { m_margins->zoomBy(factor); }

void SweepPage::resetZoom() {
  m_margins->resetZoom();
  m_quantity->resetZoom();
}

}  // namespace jw

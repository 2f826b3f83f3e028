#include "widgets/figures/map_page.h"

#include <QGridLayout>
#include <QVBoxLayout>

#include "core/studies/coarse_cycle.h"
#include "widgets/theme/number_text.h"

namespace jw {

void MapCanvas::showView(MapView view, bool stale) {
  m_plot.show(std::move(view), isZoomed());
  setDimmed(stale, screenPlotStyle().colours.panel);
  replot(rpQueuedReplot);
}

void MapCanvas::restyle() {
  m_plot.setStyle(screenPlotStyle());
  replot(rpQueuedReplot);
}

bool MapPage::Asked::operator==(const Asked& other) const {
  const auto same = [](const SweepAxis& a, const SweepAxis& b) {
    return a.path == b.path && a.value == b.value;
  };
  return project == other.project && same(across, other.across) && same(up, other.up);
}

MapPage::MapPage(StudyThread& thread, QWidget* parent)
    : StudyPage(thread, parent), m_canvas(new MapCanvas) {
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(0, 0, 0, 0);
  column->setSpacing(2);
  column->addWidget(makeSettings());
  column->addWidget(m_canvas, 1);
  connect(m_canvas, &PlaneCanvas::hovered, this, &MapPage::reading);
  connect(&m_thread, &StudyThread::busyChanged, this, &MapPage::showBusy);
}

QWidget* MapPage::makeSettings() {
  auto* settings = new QWidget(this);
  auto* grid = new QGridLayout(settings);
  grid->setContentsMargins(12, 2, 12, 0);
  grid->setHorizontalSpacing(8);
  grid->setVerticalSpacing(4);
  m_across = new AxisChoice(QStringLiteral("map.across"), tr("Input from left to right"), settings);
  m_up = new AxisChoice(QStringLiteral("map.up"), tr("Input from bottom to top"), settings);
  m_progress = new QProgressBar(settings);
  m_progress->setObjectName(QStringLiteral("map.progress"));
  m_progress->setAccessibleName(tr("Progress of the map"));
  m_progress->setTextVisible(false);
  m_progress->setFixedSize(72, 6);
  m_stop = new QToolButton(settings);
  m_stop->setObjectName(QStringLiteral("map.stop"));
  m_stop->setProperty("role", "link");
  grid->addWidget(m_across, 0, 0);
  grid->addWidget(m_up, 1, 0);
  grid->addWidget(m_progress, 0, 1, Qt::AlignCenter);
  grid->addWidget(m_stop, 1, 1, Qt::AlignCenter);
  grid->setColumnStretch(0, 1);
  grid->setColumnMinimumWidth(1, 72);
  connect(m_stop, &QToolButton::clicked, this, &MapPage::stopOrGoOn);
  for (AxisChoice* axis : {m_across, m_up})
    connect(axis, &AxisChoice::changed, this, &MapPage::settingsChanged);
  showBusy();
  return settings;
}

void MapPage::settingsChanged() {
  m_canvas->resetZoom();
  showSnapshot(m_snapshot);
}

void MapPage::stopOrGoOn() {
  m_stopped = m_thread.isBusy();
  if (m_stopped)
    m_thread.stop();
  else
    ask(m_asked);
  showBusy();
}

void MapPage::showBusy() {
  const bool busy = m_thread.isBusy();
  m_progress->setVisible(busy);
  m_stop->setVisible(busy || m_stopped);
  m_stop->setText(busy ? tr("Stop") : tr("Go on"));
  if (busy) m_progress->setRange(0, 0);
}

void MapPage::showProgress(const StudyProgress& progress) {
  m_progress->setRange(0, int(progress.total));
  m_progress->setValue(int(progress.done));
  if (isSet(progress.secondsLeft))
    m_progress->setToolTip(tr("%1 left").arg(durationText(progress.secondsLeft)));
}

void MapPage::showSnapshot(const Snapshot& snapshot) {
  m_snapshot = snapshot;
  if (!snapshot.evaluation || !snapshot.evaluatedProject) return;
  const Project& project = *snapshot.evaluatedProject;
  m_across->offer(project);
  m_up->offer(project, m_across->path());
  const auto across = m_across->axis(project, kMapSide);
  const auto up = m_up->axis(project, kMapSide);
  if (!across || !up) return;
  Asked now{snapshot.evaluatedProject, *across, *up};
  const bool there = m_map && m_answered == now;
  if (across->path == up->path) {
    MapView same;
    same.title = tr("Smallest margin");
    same.warning = tr("both inputs are the same; choose another one");
    m_thread.stop();
    return m_canvas->showView(std::move(same), false);
  }
  const bool asked = m_asked == now && (m_thread.isBusy() || m_stopped);
  if ((!there || m_preview) && !asked) ask(now);
  if (m_map) showView(snapshot.stale || !there);
}

std::shared_ptr<const FieldMap> MapPage::compute(const Asked& asked, const StudyRun& run,
                                                 bool preview) {
  const Project project = preview ? withCoarseCycle(*asked.project) : *asked.project;
  return std::make_shared<const FieldMap>(fieldMap(project, asked.across, asked.up, run));
}

void MapPage::ask(Asked asked) {
  m_asked = std::move(asked);
  m_stopped = false;
  m_thread.request([this, asked = m_asked](const StudyContext& context) {
    for (const bool preview : {true, false}) {
      StudyRun run{context.stop, {}, 0};
      if (!preview) {
        run.progress = [this, &context](const StudyProgress& progress) {
          context.post([this, progress] { showProgress(progress); });
        };
      }
      const auto map = compute(asked, run, preview);
      if (context.stop.stop_requested()) return;
      context.post([this, map, asked, preview] { take(map, asked, preview); });
    }
  });
  showBusy();
}

void MapPage::take(std::shared_ptr<const FieldMap> map, const Asked& asked, bool preview) {
  m_map = std::move(map);
  m_answered = asked;
  m_preview = preview;
  showView(m_snapshot.stale || asked.project != m_snapshot.evaluatedProject);
}

void MapPage::showView(bool stale) {
  const double margin = m_snapshot.evaluation ? smallestMargin(*m_snapshot.evaluation) : kUnset;
  MapView view = mapView(m_map, *m_answered.project, margin);
  if (m_stopped && m_preview) view.remark = tr("roughly, from a coarse cycle; stopped");
  m_canvas->showView(std::move(view), stale);
}

void MapPage::addStudies(Snapshot& snapshot) const {
  if (m_map && !m_preview && m_answered.project == snapshot.evaluatedProject) snapshot.map = m_map;
}

}  // namespace jw

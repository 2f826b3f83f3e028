#include "widgets/figures/ratio_page.h"

#include <algorithm>
#include <cmath>

#include <QHBoxLayout>
#include <QKeyEvent>
#include <QSignalBlocker>
#include <QVBoxLayout>

#include "widgets/inputs/field_text.h"
#include "widgets/theme/number_text.h"

namespace jw {
namespace {

const FieldInfo& ratioField() { return *structInfo<Stage>().find("ratio"); }

/// Whether two projects differ in nothing but the ratio of `stage`.
bool sameButRatio(const Project& a, const Project& b, int stage) {
  if (&a == &b) return true;
  const auto reaches = [stage](const Project& p) {
    return stage >= 0 && std::size_t(stage) < p.active().transmission.size();
  };
  if (!reaches(a) || !reaches(b)) return false;
  return withStageRatio(a, stage, 1) == withStageRatio(b, stage, 1);
}

/// To a round number no finer than a pixel is wide.
double rounded(double ratio, double step) {
  const double unit = std::pow(10, std::floor(std::log10(std::max(step, 1e-9 * ratio))));
  return std::round(ratio / unit) * unit;
}

double nearest(const std::vector<double>& ticks, double ratio) {
  const auto closer = [ratio](double a, double b) {
    return std::abs(std::log(a / ratio)) < std::abs(std::log(b / ratio));
  };
  return ticks.empty() ? ratio : *std::min_element(ticks.begin(), ticks.end(), closer);
}

}  // namespace

RatioPage::RatioPage(StudyThread& thread, QWidget* parent)
    : StudyPage(thread, parent), m_canvas(new RatioCanvas(this)) {
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(0, 0, 0, 0);
  column->setSpacing(2);
  column->addWidget(makeSettings());
  column->addWidget(m_canvas, 1);
  m_canvas->setToolTip({});
  connect(m_canvas, &RatioCanvas::hovered, this, &RatioPage::reading);
  connect(m_canvas, &RatioCanvas::dragBegun, this, &RatioPage::begin);
  connect(m_canvas, &RatioCanvas::dragEnded, this, [this] { m_grip.reset(); });
  connect(m_canvas, &RatioCanvas::dragged, this,
          [this](double ratio, double step, Qt::KeyboardModifiers modifiers) {
            const bool asked = modifiers.testFlag(Qt::ControlModifier);
            setRatio(ratio, step, asked != followsFromParts());
          });
}

QWidget* RatioPage::makeSettings() {
  auto* row = new QWidget(this);
  auto* line = new QHBoxLayout(row);
  line->setContentsMargins(12, 2, 12, 0);
  line->setSpacing(8);
  m_stages = new Chooser(QStringLiteral("ratio.stage"), tr("Which ratio is varied"), row);
  m_stages->setSizeAdjustPolicy(QComboBox::AdjustToContents);
  m_stages->setMaximumWidth(230);
  m_range = new RangeFields(QStringLiteral("ratio"), row);
  line->addWidget(m_stages);
  line->addWidget(m_range);
  line->addStretch();
  connect(m_stages, &QComboBox::activated, this, [this](int index) {
    m_stage = index - 1;
    m_canvas->resetZoom();
    showSnapshot(m_snapshot);
  });
  connect(m_range, &RangeFields::rangeTyped, this, [this](const StudyRange& range) {
    m_typed.erase(m_stage);
    m_usual.erase(m_stage);
    if (range.rises()) m_typed[m_stage] = range;
    m_canvas->resetZoom();
    showSnapshot(m_snapshot);
  });
  return row;
}

void RatioPage::offerStages(const Project& project) {
  const QSignalBlocker quiet(m_stages);
  const auto stages = int(project.active().transmission.size());
  if (m_stage >= stages) m_stage = -1;
  QStringList names;
  for (int k = -1; k < stages; ++k) names << tr("ratio ") + ratioName(project, k);
  QStringList shown;
  for (int k = 0; k < m_stages->count(); ++k) shown << m_stages->itemText(k);
  if (names != shown) {
    m_stages->clear();
    m_stages->addItems(names);
  }
  m_stages->setCurrentIndex(m_stage + 1);
}

// The usual range stays while the present ratio is in it, so that it does not move under the hand.
void RatioPage::chooseRange() {
  const double present = presentRatio(*m_snapshot.evaluation, m_stage);
  const auto kept = m_usual.find(m_stage);
  const bool inside =
      kept != m_usual.end() && present >= kept->second.from && present <= kept->second.to;
  if (!inside || kept == m_usual.end()) {
    const auto usual =
        usualRatioRange(*m_snapshot.evaluatedProject, *m_snapshot.evaluation, m_stage);
    if (usual) m_usual[m_stage] = *usual;
  }
  const auto typed = m_typed.find(m_stage);
  m_range->showRange(ratioField(), typed != m_typed.end() ? typed->second : m_usual[m_stage]);
}

bool RatioPage::isAnswered(const Asked& asked) const {
  if (!asked.project || asked.stage != m_stage || !(asked.range == m_range->range())) return false;
  const int stage = m_sweep ? m_sweep->stage : m_stage;
  return sameButRatio(*asked.project, *m_snapshot.evaluatedProject, stage);
}

void RatioPage::showSnapshot(const Snapshot& snapshot) {
  m_snapshot = snapshot;
  if (!snapshot.evaluation || !snapshot.evaluatedProject) return;
  offerStages(*snapshot.evaluatedProject);
  chooseRange();
  if (!m_range->range().rises()) return;
  const bool answered = m_sweep && isAnswered(m_answered);
  const bool coming = m_thread.isBusy() && isAnswered(m_asked);
  if ((!answered || m_preview) && !coming) ask();
  if (answered) followRatio();
  if (m_sweep) m_canvas->setDimmed(snapshot.stale || !answered, screenPlotStyle().colours.panel);
}

// While a hand moves it, the handle is ahead of the evaluation.
void RatioPage::followRatio() {
  if (m_canvas->isDragging() || m_snapshot.project != m_snapshot.evaluatedProject) return;
  const double present = presentRatio(*m_snapshot.evaluation, m_stage);
  if (std::abs(present / m_canvas->plot().view().present - 1) < 1e-9) return;
  m_grip.reset();
  m_canvas->setPresent(present);
}

// A preview on its way is waited for, so that a stream of edits cannot keep it away for ever.
void RatioPage::ask() {
  m_again = m_due && m_thread.isBusy();
  if (m_again) return;
  m_due = true;
  m_asked = {m_snapshot.evaluatedProject, m_stage, m_range->range()};
  m_thread.request([this, asked = m_asked](const StudyContext& context) {
    for (const bool preview : {true, false}) {
      const RatioSweepRequest request{asked.stage, ratiosBetween(asked.range), preview};
      auto sweep = ratioSweep(*asked.project, request, {context.stop, {}, 0});
      if (context.stop.stop_requested()) return;
      if (!sweep) return context.post([this, error = sweep.error()] { refuse(error); });
      auto shared = std::make_shared<const RatioSweep>(std::move(*sweep));
      context.post([this, shared, asked, preview] { take(shared, asked, preview); });
    }
  });
}

void RatioPage::take(const std::shared_ptr<const RatioSweep>& sweep, const Asked& asked,
                     bool preview) {
  m_sweep = sweep;
  m_answered = asked;
  m_preview = preview;
  m_due = false;
  showView(m_snapshot.stale || !isAnswered(asked));
  if (!m_again) return;
  m_again = false;
  showSnapshot(m_snapshot);
}

void RatioPage::refuse(const InputError& error) {
  m_sweep.reset();
  m_due = m_again = false;
  RatioView view;
  view.chart.title = tr("Margins over the ratio");
  view.chart.warning = errorText(error);
  m_canvas->showView(std::move(view), false);
}

void RatioPage::showView(bool stale) {
  RatioView view = ratioView(m_sweep, *m_answered.project);
  const double present = presentRatio(*m_snapshot.evaluation, m_stage);
  if (isSet(present)) view.present = m_grip ? m_canvas->plot().view().present : present;
  if (m_preview && m_canvas->plot().view().sweep) view.ticks = m_canvas->plot().view().ticks;
  m_canvas->showView(std::move(view), stale);
}

void RatioPage::addStudies(Snapshot& snapshot) const {
  if (!m_sweep || m_preview || !m_answered.project || !snapshot.evaluatedProject) return;
  if (!sameButRatio(*m_answered.project, *snapshot.evaluatedProject, m_sweep->stage)) return;
  auto sweep = std::make_shared<RatioSweep>(*m_sweep);
  sweep->present = presentRatio(*snapshot.evaluation, m_answered.stage);
  snapshot.ratios = std::move(sweep);
}

bool RatioPage::followsFromParts() const {
  if (!m_sweep || !m_snapshot.project) return false;
  const auto& transmission = m_snapshot.project->active().transmission;
  const auto at = std::size_t(m_sweep->stage);
  return at < transmission.size() && !isSet(m_grip ? m_grip->before.ratio : transmission[at].ratio);
}

void RatioPage::begin() {
  m_grip.reset();
  if (!m_sweep || !m_snapshot.project || !m_snapshot.evaluation) return;
  const auto& transmission = m_snapshot.project->active().transmission;
  const int stage = m_sweep->stage;
  if (std::size_t(stage) >= transmission.size()) return;
  const double own = presentRatio(*m_snapshot.evaluation, stage);
  const double shown = presentRatio(*m_snapshot.evaluation, m_stage);
  if (!(own > 0) || !(shown > 0)) return;
  m_grip = Grip{stage, shown / own, transmission[std::size_t(stage)]};
  ++m_gesture;
}

void RatioPage::setRatio(double ratio, double step, bool snap) {
  if (!m_grip) return;
  const double wanted = snap ? nearest(m_canvas->plot().view().ticks, ratio) : ratio;
  const double own =
      snap ? wanted / m_grip->others : rounded(wanted / m_grip->others, step / m_grip->others);
  m_canvas->setPresent(own * m_grip->others);
  emit reading(tr("ratio %1  ·  Ctrl: %2")
                   .arg(numberText(own * m_grip->others, 4),
                        followsFromParts() ? tr("any ratio, typed over that of the parts")
                                           : tr("only ratios that can be built")));
  emit editRequested({tr("Change ratio"), QStringLiteral("ratio.handle.%1").arg(m_gesture),
                      [stage = m_grip->stage, own](Project& project) {
                        project = withStageRatio(project, stage, own);
                        return tl::expected<void, InputError>();
                      }});
}

/// Back to the ratio from before the gesture.
void RatioPage::giveUp() {
  if (!m_grip) return;
  const Grip grip = *m_grip;
  emit editRequested({tr("Change ratio"), QStringLiteral("ratio.handle.%1").arg(m_gesture),
                      [grip](Project& project) {
                        auto& transmission = project.active().transmission;
                        transmission[std::size_t(grip.stage)] = grip.before;
                        return tl::expected<void, InputError>();
                      }});
  m_grip.reset();
  m_canvas->endDrag();
}

void RatioPage::nudge(double steps, bool toTicks) {
  if (!m_grip) begin();
  if (!m_grip) return;
  const RatioView& view = m_canvas->plot().view();
  const double now = view.present;
  if (!toTicks) return setRatio(now * std::pow(1.01, steps), 0.001 * now, false);
  const std::vector<double>& ticks = view.ticks;
  const auto above = std::upper_bound(ticks.begin(), ticks.end(), now * (1 + 1e-9));
  const auto below = std::lower_bound(ticks.begin(), ticks.end(), now * (1 - 1e-9));
  if (steps > 0 && above != ticks.end()) setRatio(*above, 0, true);
  if (steps < 0 && below != ticks.begin()) setRatio(*(below - 1), 0, true);
}

// A run of arrow keys is one gesture; Enter or anything else ends it, Escape takes it back.
bool RatioPage::takeKey(QKeyEvent& event) {
  const bool toTicks = event.modifiers().testFlag(Qt::ControlModifier);
  const double steps = event.modifiers().testFlag(Qt::ShiftModifier) ? 10 : 1;
  switch (event.key()) {
    case Qt::Key_Left: nudge(-steps, toTicks); return true;
    case Qt::Key_Right: nudge(steps, toTicks); return true;
    case Qt::Key_Escape: giveUp(); return true;
    case Qt::Key_Return:
    case Qt::Key_Enter: m_grip.reset(); return true;
    case Qt::Key_Control:
    case Qt::Key_Shift: return false;
    default: m_grip.reset(); return false;
  }
}

}  // namespace jw

#include "widgets/figures/families_figure.h"

#include <QHeaderView>
#include <QVBoxLayout>

#include "core/studies/ratio_sweep.h"
#include "widgets/inputs/field_text.h"
#include "widgets/panels/power_stations.h"
#include "widgets/theme/number_text.h"
#include "widgets/theme/theme.h"

namespace jw {
namespace {

constexpr int kRowHeight = 24;    // [px]
constexpr int kTitleWidth = 190;  // [px] at least
constexpr int kWeightWidth = 64;  // [px]

}  // namespace

FamiliesFigure::FamiliesFigure(QWidget* parent)
    : Figure(parent),
      m_table(new QTableView),
      m_model(new FamilyTableModel(this)),
      m_map(new LineChartCanvas) {
  setObjectName(QStringLiteral("figure.families"));
  setAccessibleName(tr("Families"));
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(3, 6, 3, 3);
  column->setSpacing(4);
  column->addWidget(makeHeader());
  column->addWidget(makeStateRow());
  column->addWidget(makePages(), 1);
  column->addWidget(m_terms);
  setUpTable();
  connect(&m_thread, &StudyThread::busyChanged, this, &FamiliesFigure::showState);
  connect(&m_thread, &StudyThread::failed, this,
          [this](const QString& message) { m_state->setText(message); });
  sourceChanged();
  setPicture(Picture::Table);
}

QString FamiliesFigure::exportName() const {
  return m_pages->currentIndex() == 0 ? figureName() : QStringLiteral("familymap");
}

void FamiliesFigure::setPicture(Picture picture) {
  m_choice[std::size_t(picture)]->setChecked(true);
  m_pages->setCurrentIndex(int(picture));
}

void FamiliesFigure::sourceChanged() {
  m_rules->setVisible(byRules());
  m_reducers->setVisible(!byRules());
  m_changed = true;
  m_cancelled = false;
  compareIfNeeded();
}

void FamiliesFigure::setStage(int stage) {
  m_stage = stage;
  sourceChanged();
}

/// Offered where there is a choice; one that is gone gives way to the stage of the largest ratio.
void FamiliesFigure::showStages() {
  QStringList names;
  int leading = -1;
  if (m_snapshot.project) {
    for (const Stage& stage : m_snapshot.project->active().transmission)
      names << tr("stage %1, %2").arg(names.size() + 1).arg(lowerFirst(stageTitle(stage)));
    leading = leadingStage(*m_snapshot.project).value_or(-1);
  }
  if (m_stage >= names.size()) m_stage = -1;
  QStringList shown;
  for (int k = 0; k < m_stages->count(); ++k) shown << m_stages->itemText(k);
  if (names != shown) {
    m_stages->clear();
    m_stages->addItems(names);
  }
  m_stages->setCurrentIndex(m_stage < 0 ? leading : m_stage);
  m_stages->setVisible(names.size() > 1);
}

void FamiliesFigure::showSnapshot(const Snapshot& snapshot) {
  if (snapshot.project != m_snapshot.project) m_cancelled = false;
  m_snapshot = snapshot;
  showStages();
  const bool possible = snapshot.evaluation && snapshot.evaluation->chain;
  keepSnapshot(snapshot, !possible && !m_study, {Part::Cycle, Part::Load, Part::Stages});
  m_pages->setVisible(possible || m_study);
  if (possible) compareIfNeeded();
  showState();
}

void FamiliesFigure::addStudies(Snapshot& snapshot) const {
  if (m_study && m_shown == snapshot.project && !m_changed) snapshot.families = m_study;
}

void FamiliesFigure::showEvent(QShowEvent* event) {
  Figure::showEvent(event);
  compareIfNeeded();
}

void FamiliesFigure::hideEvent(QHideEvent* event) {
  Figure::hideEvent(event);
  m_thread.stop();  // it takes longer than an edit: only while it is looked at
}

void FamiliesFigure::compareIfNeeded() {
  const bool known = m_snapshot.evaluation && !m_snapshot.stale && m_snapshot.project &&
                     m_snapshot.evaluation->chain;
  if (!known || !isVisible() || m_cancelled || isUpToDate()) return;
  compare();
}

FamilyQuestion FamiliesFigure::question() const {
  FamilyQuestion asked;
  asked.project = m_snapshot.project;
  asked.request.stage = m_stage;
  asked.request.rules = m_rules->catalogue()->rules;
  asked.own = m_rules->catalogue()->own;
  asked.invented = byRules() ? m_rules->catalogue()->bundled : m_reducers->catalogue()->bundled;
  if (!byRules()) asked.request.catalogue = m_reducers->catalogue()->reducers;
  return asked;
}

void FamiliesFigure::compare() {
  m_thread.request([this, asked = question()](const StudyContext& context) {
    StudyRun run;
    run.stop = context.stop;
    run.progress = [&](const StudyProgress& progress) {
      context.post([this, progress] {
        m_progress->setRange(0, int(progress.total));
        m_progress->setValue(int(progress.done));
      });
    };
    const auto study = std::make_shared<FamilyStudy>(compareFamilies(asked, run));
    if (!context.stop.stop_requested()) context.post([this, study] { receive(study); });
  });
  m_progress->setRange(0, 0);
  showState();
}

void FamiliesFigure::cancel() {
  m_cancelled = true;
  m_thread.stop();
  showState();
}

void FamiliesFigure::receive(const std::shared_ptr<FamilyStudy>& study) {
  m_study = study;
  m_shown = study->question.project;
  m_changed = false;
  showStudy();
  showState();
}

void FamiliesFigure::showStudy() {
  if (!m_study) return;
  m_study->weights = m_weigh->isChecked() ? m_weights : std::map<std::string, double>{};
  m_study->x = m_x->currentData().toString().toStdString();
  m_study->y = m_y->currentData().toString().toStdString();
  m_model->showTable(familyTable(*m_study), m_weights);
  m_table->setColumnHidden(FamilyTableModel::kWeight, !m_weigh->isChecked());
  QHeaderView* header = m_table->horizontalHeader();
  header->setSectionResizeMode(0, QHeaderView::Interactive);
  header->setSectionResizeMode(FamilyTableModel::kWeight, QHeaderView::Interactive);
  header->resizeSection(0, std::clamp(width() / 4, kTitleWidth, 260));
  header->resizeSection(FamilyTableModel::kWeight, kWeightWidth);
  showRowHeights();
  m_map->showChart(familyMap(*m_study));
  showTerms();
}

/// Words need as many lines as the narrowest column gives them.
void FamiliesFigure::showRowHeights() {
  const auto& rows = m_model->table().rows;
  for (std::size_t k = 0; k < rows.size(); ++k) {
    double height = kRowHeight;
    for (std::size_t n = 0; n < rows[k].cells.size(); ++n) {
      const int width = m_table->columnWidth(FamilyTableModel::kFirstChoice + int(n));
      height = std::max(height, familyCellHeight(rows[k].cells[n], width, bodyFont()));
    }
    m_table->setRowHeight(int(k), int(std::ceil(height)));
  }
}

/// The weighted order never stands alone: what each sum is made of stands with it.
void FamiliesFigure::showTerms() {
  const std::vector<WeightedFamily> order = weightedOrder(*m_study);
  QStringList lines;
  for (std::size_t place = 0; place < order.size(); ++place) {
    lines << QStringLiteral("%1. %2 %3 = (%4)")
                 .arg(place + 1)
                 .arg(familyLabel(m_study->choices[order[place].choice].family) +
                          (order[place].holds ? QString() : tr(" (short)")),
                      fixedNumber(order[place].sum, 2),
                      order[place].terms.join(QStringLiteral(" + ")));
  }
  double whole = 0;
  for (const auto& [key, weight] : m_study->weights) whole += weight;
  for (QString& line : lines) line += QStringLiteral(" / ") + numberText(whole);
  m_terms->setText(lines.join(u'\n'));
  m_terms->setVisible(!lines.isEmpty());
}

int FamiliesFigure::chosenChoice() const {
  const QModelIndex index = m_table->currentIndex();
  return index.isValid() ? m_model->choiceOf(index.column()) : -1;
}

void FamiliesFigure::showState() {
  const bool busy = isWorking();
  m_progress->setVisible(busy);
  m_cancel->setVisible(busy);
  const int chosen = chosenChoice();
  m_adopt->setEnabled(m_study && chosen >= 0 && m_study->choices[std::size_t(chosen)].found);
  if (m_study && m_study->refused)
    return m_state->setText(QString::fromStdString(describe(*m_study->refused)));
  if (busy)
    return m_state->setText(m_study ? tr("comparing; before the last edit") : tr("comparing…"));
  if (m_cancelled) return m_state->setText(tr("cancelled; the next edit starts it again"));
  if (!m_study) return m_state->clear();
  if (!isUpToDate()) return m_state->setText(tr("of the joint before the last edit"));
  m_state->setText(
      byRules() ? tr("Best ratio and smallest size of each family; the rules are estimates%1")
                      .arg(m_study->question.invented ? tr(", invented") : QString())
                : tr("Best reducer of each family in the catalogue%1")
                      .arg(m_study->question.invented ? tr("; all invented") : QString()));
}

void FamiliesFigure::adopt() {
  const int chosen = chosenChoice();
  if (!m_study || chosen < 0) return;
  const FamilyChoice& choice = m_study->choices[std::size_t(chosen)];
  if (choice.found) emit editRequested(adoptFamilyEdit(choice, m_study->question.request.stage));
}

void FamiliesFigure::restyle() {
  m_map->restyle();
  m_table->viewport()->update();
}

}  // namespace jw

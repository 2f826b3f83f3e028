#include "widgets/figures/families_figure.h"

#include <QButtonGroup>
#include <QHBoxLayout>
#include <QHeaderView>
#include <QVBoxLayout>

#include "widgets/figures/segment_button.h"
#include "widgets/inputs/choice_box.h"
#include "widgets/inputs/field_text.h"
#include "widgets/theme/number_text.h"

namespace jw {
namespace {

constexpr int kRowHeight = 24;    // [px]
constexpr int kWordsHeight = 44;  // [px] of three lines
constexpr int kTitleWidth = 200;  // [px] at least
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

QWidget* FamiliesFigure::makeHeader() {
  auto* row = new QWidget(this);
  auto* line = new QHBoxLayout(row);
  line->setContentsMargins(12, 0, 12, 0);
  line->setSpacing(6);
  auto* group = new QButtonGroup(row);
  const QStringList names{tr("table"), tr("map")};
  for (int k = 0; k < 2; ++k) {
    auto* button = makeSegmentButton(names[k], "families." + names[k], row);
    m_choice[std::size_t(k)] = button;
    group->addButton(button);
    line->addWidget(button);
    connect(button, &QToolButton::clicked, this, [this, k] { setPicture(Picture(k)); });
  }
  m_source = new ChoiceBox(row);
  m_source->setObjectName("families.source");
  m_source->setMinimumWidth(110);
  m_source->setAccessibleName(tr("Where the reducers come from"));
  m_source->addItems({tr("sizes by scaling rules"), tr("reducers of a catalogue")});
  m_rules = new CatalogueChoice(CatalogueKind::Rules, "families.rules", row);
  m_reducers = new CatalogueChoice(CatalogueKind::Reducers, "families.reducers", row);
  line->addWidget(m_source);
  line->addWidget(m_rules, 1);
  line->addWidget(m_reducers, 1);
  connect(m_source, &QComboBox::currentIndexChanged, this, &FamiliesFigure::sourceChanged);
  for (CatalogueChoice* one : {m_rules, m_reducers}) {
    connect(one, &CatalogueChoice::catalogueChanged, this, &FamiliesFigure::sourceChanged);
    connect(one, &CatalogueChoice::refused, this,
            [this](const QString& message) { m_state->setText(message); });
  }
  return row;
}

QWidget* FamiliesFigure::makeStateRow() {
  auto* row = new QWidget(this);
  auto* line = new QHBoxLayout(row);
  line->setContentsMargins(12, 0, 12, 0);
  line->setSpacing(8);
  m_progress = new QProgressBar(row);
  m_progress->setObjectName("families.progress");
  m_progress->setAccessibleName(tr("Progress of the comparison"));
  m_progress->setTextVisible(false);
  m_progress->setFixedWidth(90);
  m_cancel = new QPushButton(tr("&Cancel"), row);
  m_cancel->setObjectName("families.cancel");
  m_state = new QLabel(row);
  m_state->setObjectName("families.state");
  m_state->setProperty("role", "muted");
  m_state->setSizePolicy(QSizePolicy::Ignored, QSizePolicy::Preferred);
  m_weigh = makeSegmentButton(tr("weights"), "families.weights", row);
  m_weigh->setToolTip(tr("A weight for each property gives an order, shown with its terms"));
  m_adopt = new QPushButton(tr("&Adopt as variant"), row);
  m_adopt->setObjectName("families.adopt");
  m_adopt->setToolTip(tr("The reducer of the chosen column"));
  line->addWidget(m_progress);
  line->addWidget(m_cancel);
  line->addWidget(m_state, 1);
  line->addWidget(m_weigh);
  line->addWidget(m_adopt);
  m_terms = new QLabel(this);
  m_terms->setObjectName("families.terms");
  m_terms->setProperty("role", "muted");
  m_terms->setWordWrap(true);
  m_terms->setContentsMargins(12, 0, 12, 4);
  m_terms->hide();
  connect(m_cancel, &QPushButton::clicked, this, &FamiliesFigure::cancel);
  connect(m_adopt, &QPushButton::clicked, this, &FamiliesFigure::adopt);
  connect(m_weigh, &QToolButton::toggled, this, [this](bool on) {
    m_table->setColumnHidden(FamilyTableModel::kWeight, !on);
    showStudy();
  });
  return row;
}

QComboBox* FamiliesFigure::makePropertyChoice(const char* name, const QString& accessibleName,
                                              const std::string& chosen) {
  auto* choice = new ChoiceBox(this);
  choice->setObjectName(name);
  choice->setAccessibleName(accessibleName);
  choice->setMaxVisibleItems(20);
  for (const FamilyProperty& property : familyProperties())
    choice->addItem(lowerFirst(toQString(property.label)), toQString(property.key));
  choice->setCurrentIndex(choice->findData(toQString(chosen)));
  connect(choice, &QComboBox::currentIndexChanged, this, [this] {
    m_map->resetZoom();
    showStudy();
  });
  return choice;
}

QWidget* FamiliesFigure::makeMapPage() {
  auto* page = new QWidget;
  auto* line = new QHBoxLayout;
  line->setContentsMargins(12, 0, 12, 0);
  m_y = makePropertyChoice("families.y", tr("Property upwards"), "efficiency");
  m_x = makePropertyChoice("families.x", tr("Property to the right"), "mass");
  auto* against = new QLabel(tr("against"));
  against->setProperty("role", "muted");
  line->addWidget(m_y);
  line->addWidget(against);
  line->addWidget(m_x);
  line->addStretch(1);
  auto* column = new QVBoxLayout(page);
  column->setContentsMargins(0, 0, 0, 0);
  column->addLayout(line);
  column->addWidget(m_map, 1);
  return page;
}

QWidget* FamiliesFigure::makePages() {
  m_pages = new QStackedWidget(this);
  QSizePolicy policy = m_pages->sizePolicy();
  policy.setRetainSizeWhenHidden(true);
  m_pages->setSizePolicy(policy);
  m_pages->addWidget(m_table);
  m_pages->addWidget(makeMapPage());
  return m_pages;
}

void FamiliesFigure::setUpTable() {
  m_table->setObjectName("families.table");
  m_table->setAccessibleName(tr("Properties of each family"));
  m_table->setModel(m_model);
  m_table->setItemDelegate(new FamilyCellDelegate(m_table));
  m_table->setProperty("role", "rows");  // narrow titles
  m_table->setShowGrid(false);
  m_table->setWordWrap(false);
  m_table->setTabKeyNavigation(false);
  m_table->setSelectionBehavior(QAbstractItemView::SelectColumns);
  m_table->setSelectionMode(QAbstractItemView::SingleSelection);
  m_table->verticalHeader()->hide();
  m_table->verticalHeader()->setDefaultSectionSize(kRowHeight);
  m_table->horizontalHeader()->setHighlightSections(false);
  m_table->horizontalHeader()->setMinimumHeight(40);  // two lines
  m_table->horizontalHeader()->setSectionResizeMode(QHeaderView::Stretch);
  m_table->horizontalHeader()->setMinimumSectionSize(64);
  connect(m_table->selectionModel(), &QItemSelectionModel::currentColumnChanged, this,
          &FamiliesFigure::showState);
  connect(m_model, &FamilyTableModel::weightTyped, this, [this](const QString& key, double weight) {
    m_weights[key.toStdString()] = weight;
    showStudy();
  });
  connect(m_model, &FamilyTableModel::refused, m_state, &QLabel::setText);
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

void FamiliesFigure::showSnapshot(const Snapshot& snapshot) {
  if (snapshot.project != m_snapshot.project) m_cancelled = false;
  m_snapshot = snapshot;
  const bool possible = snapshot.evaluation && snapshot.evaluation->chain &&
                        !snapshot.evaluation->chain->stages.empty();
  const QString direct =
      tr("<p>A joint without a stage has no reducer to compare.</p>"
         "<p>Add a stage to the drive.</p>");
  const bool hasNone = snapshot.project && snapshot.project->active().transmission.empty();
  if (hasNone) {
    keepSnapshotWithNotice(snapshot, direct);
  } else {
    keepSnapshot(snapshot, !possible && !m_study, {Part::Cycle, Part::Load, Part::Stages});
  }
  m_pages->setVisible(!hasNone && (possible || m_study));
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
                     m_snapshot.evaluation->chain && !m_snapshot.evaluation->chain->stages.empty();
  if (!known || !isVisible() || m_cancelled || isUpToDate()) return;
  compare();
}

FamilyQuestion FamiliesFigure::question() const {
  FamilyQuestion asked;
  asked.project = m_snapshot.project;
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

void FamiliesFigure::showRowHeights() {
  const auto& rows = m_model->table().rows;
  for (std::size_t k = 0; k < rows.size(); ++k) {
    const bool words = rows[k].kind == FamilyRow::Kind::Words;
    m_table->setRowHeight(int(k), words ? kWordsHeight : kRowHeight);
  }
}

/// The weighted order never stands alone: what each sum is made of stands with it.
void FamiliesFigure::showTerms() {
  const std::vector<WeightedFamily> order = weightedOrder(*m_study);
  QStringList lines;
  for (std::size_t place = 0; place < order.size(); ++place) {
    lines << QStringLiteral("%1. %2 %3 = (%4)")
                 .arg(place + 1)
                 .arg(familyLabel(m_study->choices[order[place].choice].family),
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
  m_state->setToolTip(m_state->text());
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

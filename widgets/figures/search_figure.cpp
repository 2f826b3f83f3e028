#include "widgets/figures/search_figure.h"

#include <QElapsedTimer>
#include <QHBoxLayout>
#include <QHeaderView>
#include <QResizeEvent>
#include <QShortcut>
#include <QVBoxLayout>

#include "widgets/figures/segment_button.h"
#include "widgets/inputs/elided_label.h"
#include "widgets/theme/number_text.h"

namespace jw {
namespace {

constexpr int kBetweenRefreshes = 34;  // [ms] at least: 30 a second
constexpr int kRoomForTwo = 1000;      // [px] width from which table and scatter stand side by side
constexpr int kRoomForSettings = 700;  // [px] height below which they give way to what is found

/// What a search judges its combinations by.
Project jobOf(const Project& project, const SearchSpace& space) {
  Project job;
  job.load = project.load;
  job.cycle = project.cycle;
  job.otherCycles = project.otherCycles;
  job.requirements = project.requirements;
  job.active() = project.active();
  job.active().name.clear();
  job.active().accepted.clear();
  job.active().motor = {};
  auto& chain = job.active().transmission;
  const int stages = static_cast<int>(chain.size());
  if (space.reducerStage < stages) chain[std::size_t(space.reducerStage)] = {};
  if (space.beltStage >= 0 && space.beltStage < stages) {
    chain[std::size_t(space.beltStage)].ratio = 1;
    chain[std::size_t(space.beltStage)].asWritten = {};
  }
  return job;
}

}  // namespace

bool sameJoint(const Project& a, const Project& b, const SearchSpace& space) {
  return jobOf(a, space) == jobOf(b, space);
}

SearchFigure::SearchFigure(QWidget* parent)
    : Figure(parent),
      m_settings(new SearchSettings(this)),
      m_scatter(new SearchCanvas),
      m_table(new QTableView),
      m_model(new SearchTableModel(this)) {
  setObjectName(QStringLiteral("figure.search"));
  setAccessibleName(tr("Search"));
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(3, 6, 3, 3);
  column->setSpacing(4);
  column->addWidget(m_settings);
  column->addWidget(makeRunRow());
  column->addWidget(makeAxesRow());
  column->addWidget(makeResults(), 1);
  column->addWidget(m_reading);
  connectTable();
  connect(m_settings, &SearchSettings::refused, this, &SearchFigure::say);
  connect(m_scatter, &SearchCanvas::candidatePicked, this, &SearchFigure::choose);
  connect(m_scatter, &SearchCanvas::hovered, this, [this](const QString& text) {
    text.isEmpty() ? showChosen() : m_reading->setText(text);
  });
  connect(&m_thread, &StudyThread::busyChanged, this, &SearchFigure::showCounts);
  connect(&m_thread, &StudyThread::failed, this,
          [this](const QString& message) { say(tr("The search broke down: %1").arg(message)); });
  m_refreshTimer.setSingleShot(true);
  connect(&m_refreshTimer, &QTimer::timeout, this, &SearchFigure::refresh);
  showCounts();
}

QWidget* SearchFigure::makeRunRow() {
  auto* row = new QWidget(this);
  auto* line = new QHBoxLayout(row);
  line->setContentsMargins(12, 0, 12, 0);
  line->setSpacing(8);
  m_run = new QPushButton(tr("&Search"), row);
  m_run->setObjectName("search.run");
  m_run->setMinimumWidth(84);
  m_progress = new QProgressBar(row);
  m_progress->setObjectName("search.progress");
  m_progress->setAccessibleName(tr("Progress of the search"));
  m_progress->setTextVisible(false);
  m_progress->setFixedWidth(90);
  m_counts = new ElidedLabel(row);
  m_counts->setObjectName("search.counts");
  m_counts->setProperty("role", "muted");
  m_counts->setSizePolicy(QSizePolicy::Ignored, QSizePolicy::Preferred);
  m_fold = makeSegmentButton(tr("settings"), "search.settings", row);
  m_fold->setChecked(true);
  line->addWidget(m_run);
  line->addWidget(m_progress);
  line->addWidget(m_counts, 1);
  line->addWidget(m_fold);
  connect(m_run, &QPushButton::clicked, this, [this] { isSearching() ? cancel() : search(); });
  connect(m_fold, &QToolButton::toggled, m_settings, &QWidget::setVisible);
  return row;
}

QWidget* SearchFigure::makeAxesRow() {
  auto* row = new QWidget(this);
  auto* line = new QHBoxLayout(row);
  line->setContentsMargins(12, 0, 12, 0);
  line->setSpacing(8);
  m_y = makeFigureChoice("search.y", tr("Figure upwards"), "margin", row);
  m_x = makeFigureChoice("search.x", tr("Figure to the right"), "mass", row);
  m_short = new QCheckBox(tr("those that fall s&hort"), row);
  m_short->setObjectName("search.short");
  m_short->setToolTip(tr("Combinations that screening let through and that are short in full"));
  m_adopt = new QPushButton(tr("&Adopt as variant"), row);
  m_adopt->setObjectName("search.adopt");
  m_adopt->setToolTip(tr("Enter in the table does the same; undo takes it back"));
  m_adopt->setEnabled(false);
  auto* against = new QLabel(tr("against"), row);
  against->setProperty("role", "muted");
  line->addWidget(m_y, 4);
  line->addWidget(against);
  line->addWidget(m_x, 4);
  line->addWidget(m_short);
  line->addStretch(1);
  line->addWidget(m_adopt);
  const auto anew = [this] {
    m_scatter->resetZoom();
    refresh();
  };
  connect(m_x, &QComboBox::currentIndexChanged, this, anew);
  connect(m_y, &QComboBox::currentIndexChanged, this, anew);
  connect(m_short, &QCheckBox::toggled, this, &SearchFigure::refresh);
  connect(m_adopt, &QPushButton::clicked, this, &SearchFigure::adopt);
  return row;
}

QWidget* SearchFigure::makeResults() {
  m_results = new QSplitter(Qt::Vertical, this);
  m_results->setChildrenCollapsible(false);
  m_results->setHandleWidth(6);
  m_results->addWidget(m_scatter);
  m_results->addWidget(m_table);
  m_results->setSizes({300, 200});
  QSizePolicy policy = m_results->sizePolicy();
  policy.setRetainSizeWhenHidden(true);
  m_results->setSizePolicy(policy);
  m_reading = new QLabel(this);
  m_reading->setObjectName("search.reading");
  m_reading->setProperty("role", "muted");
  m_reading->setSizePolicy(QSizePolicy::Ignored, QSizePolicy::Fixed);
  m_reading->setContentsMargins(12, 0, 12, 2);
  return m_results;
}

void SearchFigure::connectTable() {
  m_table->setObjectName("search.table");
  m_table->setAccessibleName(tr("Combinations found"));
  m_table->setModel(m_model);
  m_table->setSelectionBehavior(QAbstractItemView::SelectRows);
  m_table->setSelectionMode(QAbstractItemView::SingleSelection);
  m_table->setTabKeyNavigation(false);
  m_table->setShowGrid(false);
  m_table->setWordWrap(false);
  m_table->setTextElideMode(Qt::ElideMiddle);  // names differ at their ends
  m_table->setMinimumHeight(80);
  m_table->verticalHeader()->hide();
  m_table->verticalHeader()->setDefaultSectionSize(22);
  QHeaderView* header = m_table->horizontalHeader();
  header->setHighlightSections(false);
  header->setSortIndicator(m_model->sortColumn(), m_model->sortOrder());
  m_table->setSortingEnabled(true);
  for (const auto& [section, width] : {std::pair{0, 200},
                                       {1, 190},
                                       {2, 54},
                                       {3, 170},
                                       {4, 84},
                                       {5, 52},
                                       {6, 88},
                                       {7, 98},
                                       {8, 108}})
    header->resizeSection(section, width);
  header->moveSection(3, 6);  // margin, open verdicts and mass beside the names
  connect(m_table->selectionModel(), &QItemSelectionModel::currentRowChanged, this,
          [this](const QModelIndex& now) {
            if (!m_syncing) choose(m_model->candidateOf(now.row()));
          });
  for (const int key : {Qt::Key_Return, Qt::Key_Enter}) {
    auto* shortcut = new QShortcut(QKeySequence(key), m_table);
    shortcut->setContext(Qt::WidgetShortcut);
    connect(shortcut, &QShortcut::activated, this, &SearchFigure::adopt);
  }
}

void SearchFigure::showSnapshot(const Snapshot& snapshot) {
  m_snapshot = snapshot;
  if (snapshot.project) m_settings->showProject(*snapshot.project);
  if (m_study && snapshot.project) {
    const bool stale = !belongsTo(snapshot);
    const bool turned = stale != m_stale;
    m_stale = stale;
    const bool moved = !stale && updatePresent(snapshot);
    if (turned || moved) refresh();
  }
  showNotice();
  showCounts();
}

/// The mark of the design as it stands follows edits that leave the joint as it is.
bool SearchFigure::updatePresent(const Snapshot& snapshot) const {
  if (snapshot.stale || !snapshot.evaluation || !m_study->base) return false;
  if (m_study->base == snapshot.evaluation) return false;
  m_study->base = snapshot.evaluation;
  m_study->present = designPoint(*m_study->base);
  m_study->presentProperties = propertiesOf(snapshot.evaluatedProject->active());
  return true;
}

bool SearchFigure::belongsTo(const Snapshot& snapshot) const {
  const SearchQuestion& asked = m_study->question;
  return snapshot.project == asked.project ||
         sameJoint(*snapshot.project, *asked.project, *asked.space);
}

void SearchFigure::showNotice() {
  const QString invitation =
      tr("<p>Every motor with every reducer of the catalogues, judged for this joint.</p>"
         "<p>Choose <b>Search</b>; results come in as they are found.</p>");
  keepSnapshotWithNotice(m_snapshot, m_study ? QString() : invitation);
  m_results->setVisible(m_study != nullptr);
}

void SearchFigure::addStudies(Snapshot& snapshot) const {
  if (!m_study || !m_study->base || !snapshot.project || !belongsTo(snapshot)) return;
  updatePresent(snapshot);
  snapshot.search = m_study;
}

void SearchFigure::search() {
  if (!m_snapshot.project) return;
  auto question = m_settings->question(m_snapshot.project);
  if (!question) return say(QString::fromStdString(describe(question.error())));
  choose(std::nullopt);
  const auto old = m_study;  // until nothing shows it any more
  m_study = std::make_shared<SearchStudy>();
  m_study->question = *question;
  m_study->result.counts.total = question->space->size();
  m_stale = false;
  m_refreshes = 0;
  if (height() < kRoomForSettings) m_fold->setChecked(false);
  m_scatter->resetZoom();
  refresh();
  const auto token = std::make_shared<const int>(0);
  m_atWork = token;
  m_thread.request([this, token, question = *question](const StudyContext& context) {
    StudyRun run;
    run.stop = context.stop;
    runSearch(question, run, [&](SearchNews news) {
      const auto shared = std::make_shared<SearchNews>(std::move(news));
      context.post([this, shared] { receive(std::move(*shared)); });
    });
  });
  showNotice();
}

void SearchFigure::cancel() {
  m_thread.stop();
  if (!m_study) return;
  m_study->result.stopped = true;
  m_study->done = true;
  refresh();
}

void SearchFigure::receive(SearchNews news) {
  takeNews(*m_study, std::move(news));
  if (m_study->refused) say(QString::fromStdString(describe(*m_study->refused)));
  m_study->done ? refresh() : refreshSoon();
}

/// Not more often than the window can draw what has come in.
void SearchFigure::refreshSoon() {
  if (!m_refreshTimer.isActive()) {
    m_refreshTimer.start(std::max(kBetweenRefreshes, 3 * m_lastCost));
  }
}

void SearchFigure::refresh() {
  if (!m_study) return;
  QElapsedTimer clock;
  clock.start();
  m_refreshTimer.stop();
  ++m_refreshes;
  m_study->x = m_x->currentData().toString().toStdString();
  m_study->y = m_y->currentData().toString().toStdString();
  m_table->setColumnHidden(2, m_study->question.space->beltStage < 0);
  m_scatter->showStudy(m_study.get(), withShort(), m_stale);
  m_syncing = true;
  m_model->showStudy(m_study.get(), withShort());
  m_syncing = false;
  if (m_chosen) choose(m_chosen);
  showCounts();
  m_lastCost = int(clock.elapsed());
}

void SearchFigure::showCounts() {
  const bool busy = isSearching();
  m_run->setText(busy ? tr("&Cancel") : tr("&Search"));
  m_progress->setVisible(busy);
  if (!m_study) return m_counts->clear();
  const SearchProgress& n = m_study->result.counts;
  const bool screening = n.screened < n.total;
  m_progress->setRange(0, 1000);
  const double share = screening
                           ? double(n.screened) / double(std::max<std::size_t>(n.total, 1))
                           : double(n.evaluated) / double(std::max<std::size_t>(n.survivors, 1));
  m_progress->setValue(int(1000 * share));
  QString text = countsText(*m_study);
  if (busy && isSet(n.secondsLeft))
    text.prepend(tr("%1 left").arg(durationText(std::max(1.0, n.secondsLeft))) +
                 QStringLiteral(" · "));
  if (m_study->result.stopped) text.prepend(tr("cancelled · "));
  if (m_stale) text.prepend(tr("found before the last edit · "));
  m_counts->setText(text);
  m_counts->setToolTip(text + u'\n' + reasonsText(*m_study));
  if (!m_chosen) showChosen();
}

void SearchFigure::showChosen() {
  m_adopt->setEnabled(m_chosen.has_value());
  if (!m_study) return;
  if (m_study->refused) return;
  QString reasons = reasonsText(*m_study);
  m_reading->setText(m_chosen ? candidateLine(*m_study, m_study->candidates[*m_chosen])
                              : reasons.replace(QStringLiteral("\n  "), QStringLiteral("  "))
                                    .replace(u'\n', QStringLiteral("   ")));
  m_reading->setToolTip(m_chosen ? candidateTip(*m_study, m_study->candidates[*m_chosen])
                                 : reasonsText(*m_study));
}

void SearchFigure::choose(std::optional<std::size_t> candidate) {
  m_chosen = candidate;
  m_scatter->setChosen(candidate);
  m_syncing = true;
  const int row = candidate ? m_model->rowOf(*candidate) : -1;
  if (row >= 0) {
    m_table->selectRow(row);
    m_table->scrollTo(m_model->index(row, 0));
  } else {
    m_table->clearSelection();
  }
  m_syncing = false;
  showChosen();
}

void SearchFigure::adopt() {
  if (!m_study || !m_chosen) return;
  emit editRequested(adoptEdit(m_study->question.space, m_study->candidates[*m_chosen].which));
}

void SearchFigure::say(const QString& message) {
  m_reading->setText(message);
  m_reading->setToolTip(message);
}

void SearchFigure::restyle() { m_scatter->restyle(); }

void SearchFigure::resizeEvent(QResizeEvent* event) {
  Figure::resizeEvent(event);
  m_results->setOrientation(event->size().width() >= kRoomForTwo ? Qt::Horizontal : Qt::Vertical);
}

}  // namespace jw

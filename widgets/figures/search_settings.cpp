#include "widgets/figures/search_settings.h"

#include <QGridLayout>
#include <QLabel>
#include <QSignalBlocker>

#include "core/studies/field_sweep.h"
#include "core/studies/ratio_sweep.h"
#include "widgets/inputs/choice_box.h"
#include "widgets/inputs/field_text.h"
#include "widgets/theme/number_text.h"

namespace jw {
namespace {

/// "2: strain wave, 100".
QString stageName(const Stage& stage, int index) {
  const auto family = static_cast<std::size_t>(stage.family);
  const QString name = toQString(structInfo<Stage>().find("family")->choices[family].label);
  const QString ratio =
      isSet(stage.ratio) ? QStringLiteral(", ") + numberText(stage.ratio) : QString();
  return QStringLiteral("stage %1: %2%3").arg(index + 1).arg(name, ratio);
}

QLabel* makeLabel(const QString& text, QWidget* buddy) {
  auto* label = new QLabel(text);
  label->setProperty("role", "muted");
  label->setBuddy(buddy);
  return label;
}

}  // namespace

SearchSettings::SearchSettings(QWidget* parent)
    : QWidget(parent),
      m_motors(new CatalogueChoice(CatalogueKind::Motors, "search.motors", this)),
      m_reducers(new CatalogueChoice(CatalogueKind::Reducers, "search.reducers", this)),
      m_stage(makeStageChoice("search.stage", tr("Stage that reducers go to"))),
      m_belt(makeStageChoice("search.belt", tr("Stage whose ratio varies"))),
      m_ratios(new QLineEdit(QStringLiteral("1..3/9"), this)),
      m_filters(new SearchFilters(this)) {
  m_ratios->setObjectName("search.ratios");
  m_ratios->setAccessibleName(tr("Ratios of the belt"));
  m_ratios->setToolTip(tr("From..to/count or from..to:step, such as 1..3/9 or 1..3:0.25"));
  setMaximumWidth(960);
  auto* grid = new QGridLayout(this);
  grid->setContentsMargins(12, 0, 12, 0);
  grid->setHorizontalSpacing(8);
  grid->setVerticalSpacing(4);
  grid->addWidget(makeLabel(tr("motors"), m_motors), 0, 0);
  grid->addWidget(m_motors, 0, 1, 1, 2);
  grid->addWidget(makeLabel(tr("reducers"), m_reducers), 0, 3);
  grid->addWidget(m_reducers, 0, 4);
  grid->addWidget(makeLabel(tr("belt ratio"), m_belt), 1, 0);
  grid->addWidget(m_belt, 1, 1);
  grid->addWidget(m_ratios, 1, 2);
  grid->addWidget(makeLabel(tr("go to"), m_stage), 1, 3);
  grid->addWidget(m_stage, 1, 4);
  auto* only = makeLabel(tr("only those"), m_filters);
  only->setMinimumHeight(m_ratios->sizeHint().height());  // in line with the first row of filters
  grid->addWidget(only, 2, 0, Qt::AlignTop);
  grid->addWidget(m_filters, 2, 1, 1, 4);
  grid->setColumnStretch(1, 3);
  grid->setColumnStretch(2, 2);
  grid->setColumnStretch(4, 5);
  for (CatalogueChoice* one : {m_motors, m_reducers}) {
    connect(one, &CatalogueChoice::catalogueChanged, this, &SearchSettings::changed);
    connect(one, &CatalogueChoice::refused, this, &SearchSettings::refused);
  }
  connect(m_ratios, &QLineEdit::textEdited, this, &SearchSettings::changed);
  connect(m_filters, &SearchFilters::changed, this, &SearchSettings::changed);
  connect(m_filters, &SearchFilters::refused, this, &SearchSettings::refused);
  m_ratios->setEnabled(false);
}

QComboBox* SearchSettings::makeStageChoice(const char* name, const QString& accessibleName) {
  auto* choice = new ChoiceBox(this);
  choice->setObjectName(name);
  choice->setAccessibleName(accessibleName);
  choice->setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Fixed);
  choice->setSizeAdjustPolicy(QComboBox::AdjustToMinimumContentsLengthWithIcon);
  choice->setMinimumWidth(80);
  connect(choice, &QComboBox::currentIndexChanged, this, [this] {
    if (!m_ratios) return;
    m_ratios->setEnabled(m_belt->currentData().toInt() >= 0);
    emit changed();
  });
  return choice;
}

void SearchSettings::showProject(const Project& project) {
  QStringList names;
  int index = 0;
  for (const Stage& stage : project.active().transmission) names << stageName(stage, index++);
  if (names == m_stageNames && m_belt->count() > 0) return;
  m_stageNames = names;
  fillStages(project);
}

/// What was chosen stays chosen if the chain is as long as before.
void SearchSettings::fillStages(const Project& project) {
  const QSignalBlocker quietStage(m_stage);
  const QSignalBlocker quietBelt(m_belt);
  const bool sameLength = m_stage->count() == m_stageNames.size() && m_stage->count() > 0;
  const int stage = sameLength ? m_stage->currentIndex() : leadingStage(project).value_or(-1);
  const int belt = sameLength ? m_belt->currentIndex() : 0;
  m_stage->clear();
  m_belt->clear();
  m_belt->addItem(tr("as it is"), -1);
  for (int k = 0; k < m_stageNames.size(); ++k) {
    m_stage->addItem(m_stageNames[k], k);
    m_belt->addItem(m_stageNames[k], k);
  }
  m_stage->setCurrentIndex(stage);
  m_belt->setCurrentIndex(belt);
  m_ratios->setEnabled(belt > 0);
}

tl::expected<void, InputError> SearchSettings::addBelt(SearchSpace& space) const {
  space.beltStage = m_belt->currentData().toInt();
  if (space.beltStage < 0) return {};
  auto ratios = readSweepRange(*structInfo<Stage>().find("ratio"), m_ratios->text().toStdString());
  if (!ratios) {
    ratios.error().where = "belt ratio";
    return tl::unexpected(ratios.error());
  }
  space.beltRatios = std::move(*ratios);
  return {};
}

tl::expected<SearchQuestion, InputError> SearchSettings::question(
    std::shared_ptr<const Project> project) const {
  if (project->active().transmission.empty()) {
    return tl::unexpected(InputError{"the joint has no stage that reducers could go to",
                                     "transmission", "add a stage to the drive first"});
  }
  auto space = std::make_shared<SearchSpace>();
  space->motors = m_motors->catalogue()->motors;
  space->reducers = m_reducers->catalogue()->reducers;
  space->reducerStage = m_stage->currentData().toInt();
  if (const auto done = addBelt(*space); !done) return tl::unexpected(done.error());
  const bool invented = m_motors->catalogue()->bundled && m_reducers->catalogue()->bundled;
  return SearchQuestion{std::move(project), std::move(space), m_filters->filters(), invented};
}

}  // namespace jw

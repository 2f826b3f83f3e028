// What the Families figure is made of.
#include <QButtonGroup>
#include <QHBoxLayout>
#include <QHeaderView>
#include <QVBoxLayout>

#include "widgets/figures/chooser.h"
#include "widgets/figures/families_figure.h"
#include "widgets/figures/segment_button.h"
#include "widgets/inputs/elided_label.h"
#include "widgets/inputs/field_text.h"

namespace jw {
namespace {

constexpr int kLeastColumn = 58;  // [px]

}  // namespace
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
  m_stages = new Chooser("families.stage", tr("Stage that the reducers stand in for"), row);
  m_stages->setSizeAdjustPolicy(QComboBox::AdjustToMinimumContentsLengthWithIcon);
  m_stages->setMinimumWidth(120);
  line->addWidget(m_stages);
  connect(m_stages, &QComboBox::activated, this, &FamiliesFigure::setStage);
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
  m_state = new ElidedLabel(row);
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
  m_table->horizontalHeader()->setHighlightSections(false);
  m_table->horizontalHeader()->setMinimumHeight(40);  // two lines
  m_table->horizontalHeader()->setSectionResizeMode(QHeaderView::Stretch);
  m_table->horizontalHeader()->setMinimumSectionSize(kLeastColumn);
  connect(m_table->horizontalHeader(), &QHeaderView::sectionResized, this,
          &FamiliesFigure::showRowHeights);
  connect(m_table->selectionModel(), &QItemSelectionModel::currentColumnChanged, this,
          &FamiliesFigure::showState);
  connect(m_model, &FamilyTableModel::weightTyped, this, [this](const QString& key, double weight) {
    m_weights[key.toStdString()] = weight;
    showStudy();
  });
  connect(m_model, &FamilyTableModel::refused, m_state, &QLabel::setText);
}

}  // namespace jw

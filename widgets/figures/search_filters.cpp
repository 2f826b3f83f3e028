#include "widgets/figures/search_filters.h"

#include <QGridLayout>
#include <QHBoxLayout>
#include <QStyle>
#include <QVBoxLayout>

#include "widgets/figures/search_view.h"
#include "widgets/inputs/choice_box.h"
#include "widgets/inputs/field_text.h"
#include "widgets/theme/number_text.h"

namespace jw {
namespace {

constexpr int kLeastWidth = 90;  // [px]

void mark(QLineEdit& entry, const QString& message) {
  entry.setProperty("state", message.isEmpty() ? QString() : QStringLiteral("wrong"));
  entry.setToolTip(message);
  entry.style()->unpolish(&entry);
  entry.style()->polish(&entry);
}

}  // namespace

QComboBox* makeFigureChoice(const QString& objectName, const QString& accessibleName,
                            const std::string& chosen, QWidget* parent) {
  auto* choice = new ChoiceBox(parent);
  choice->setObjectName(objectName);
  choice->setAccessibleName(accessibleName);
  choice->setMaxVisibleItems(24);
  choice->setMinimumWidth(kLeastWidth);
  choice->setSizeAdjustPolicy(QComboBox::AdjustToMinimumContentsLengthWithIcon);
  choice->setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Fixed);
  for (const std::string& name : figureList()) {
    const DesignFigure figure = *findFigure(name);
    const QString label = lowerFirst(QString::fromStdString(figureLabel(figure)));
    choice->addItem(label, QString::fromStdString(name));
    choice->setItemData(choice->count() - 1, label, Qt::ToolTipRole);
  }
  choice->setCurrentIndex(choice->findData(QString::fromStdString(chosen)));
  return choice;
}

QString filterText(const CombinationFilter& filter) {
  const DesignFigure& figure = filter.figure;
  return QStringLiteral("%1 %2 %3")
      .arg(lowerFirst(QString::fromStdString(figureLabel(figure))),
           filter.atMost ? QStringLiteral("≤") : QStringLiteral("≥"),
           quantityText(filter.bound, figure.quantity, figure.unit, 4));
}

SearchFilters::SearchFilters(QWidget* parent)
    : QWidget(parent),
      m_figure(makeFigureChoice("search.filter.figure", tr("Figure to filter by"), "mass", this)),
      m_side(new ChoiceBox(this)),
      m_value(new QLineEdit(this)),
      m_chips(new QWidget(this)) {
  m_side->setObjectName("search.filter.side");
  m_side->setAccessibleName(tr("At most or at least"));
  m_side->addItems({tr("at most"), tr("at least")});
  m_value->setObjectName("search.filter.value");
  m_value->setAccessibleName(tr("Bound of the filter, with unit"));
  m_value->setMinimumWidth(60);
  auto* add = new QToolButton(this);
  add->setObjectName("search.filter.add");
  add->setProperty("role", "link");
  add->setText(tr("add"));
  add->setAccessibleName(tr("Add the filter"));
  auto* row = new QHBoxLayout;
  row->setSpacing(4);
  row->addWidget(m_figure, 3);
  row->addWidget(m_side);
  row->addWidget(m_value, 1);
  row->addWidget(add);
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(0, 0, 0, 0);
  column->setSpacing(4);
  column->addLayout(row);
  column->addWidget(m_chips);
  m_chips->hide();
  connect(m_figure, &QComboBox::currentIndexChanged, this, &SearchFilters::showUnit);
  connect(m_value, &QLineEdit::returnPressed, this, &SearchFilters::add);
  connect(m_value, &QLineEdit::textEdited, this, [this] {
    mark(*m_value, {});
    emit refused({});
  });
  connect(add, &QToolButton::clicked, this, &SearchFilters::add);
  showUnit();
}

void SearchFilters::showUnit() {
  const auto figure = findFigure(m_figure->currentData().toString().toStdString());
  const QString unit = QString::fromStdString(prettyUnit(figure->unit));
  m_value->setPlaceholderText(unit.isEmpty() ? tr("value") : tr("value, %1").arg(unit));
  m_side->setCurrentIndex(moreIsBetter(*figure) ? 1 : 0);
}

bool SearchFilters::add() {
  const DesignFigure figure = *findFigure(m_figure->currentData().toString().toStdString());
  const auto bound = parseQuantity(m_value->text().toStdString(), figure.quantity, figure.unit);
  if (!bound) {
    mark(*m_value, errorText(bound.error()));
    emit refused(tr("Filter: %1").arg(errorText(bound.error())));
    return false;
  }
  m_filters.push_back({figure, m_side->currentIndex() == 0, bound->value});
  m_value->clear();
  mark(*m_value, {});
  emit refused({});
  showChips();
  emit changed();
  return true;
}

void SearchFilters::remove(std::size_t index) {
  m_filters.erase(m_filters.begin() + std::ptrdiff_t(index));
  showChips();
  emit changed();
}

void SearchFilters::showChips() {
  constexpr int kInARow = 3;
  delete m_chips->layout();
  for (QToolButton* old : m_chips->findChildren<QToolButton*>()) {
    old->hide();
    old->deleteLater();  // it may be the one that was clicked
  }
  auto* grid = new QGridLayout(m_chips);
  grid->setContentsMargins(0, 0, 0, 0);
  grid->setSpacing(4);
  grid->setColumnStretch(kInARow, 1);
  for (std::size_t k = 0; k < m_filters.size(); ++k) {
    auto* chip = new QToolButton(m_chips);
    chip->setObjectName(QStringLiteral("search.filter.%1").arg(k));
    chip->setProperty("role", "segment");
    chip->setText(filterText(m_filters[k]) + QStringLiteral("  ×"));
    chip->setToolTip(tr("Take this filter away"));
    connect(chip, &QToolButton::clicked, this, [this, k] { remove(k); });
    grid->addWidget(chip, int(k) / kInARow, int(k) % kInARow);
    chip->show();
  }
  m_chips->setVisible(!m_filters.empty());
}

}  // namespace jw

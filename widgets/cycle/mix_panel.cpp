#include "widgets/cycle/mix_panel.h"

#include <cmath>

#include <QHBoxLayout>
#include <QVBoxLayout>

#include "widgets/cycle/mix_edits.h"
#include "widgets/inputs/field_text.h"
#include "widgets/theme/number_text.h"

namespace jw {
namespace {

QLabel* makeText(const QString& name, const char* role, QWidget* parent) {
  auto* label = new QLabel(parent);
  label->setObjectName(name);
  if (role != nullptr) label->setProperty("role", role);
  label->setWordWrap(true);
  label->setTextFormat(Qt::PlainText);
  return label;
}

/// The last row of the line that a sentence on the day is made of.
QString sentence(const DailyMix& mix, double duty) {
  QStringList parts{MixPanel::tr("idle %1").arg(quantityText(mix.idle, Quantity::Fraction, "%"))};
  if (isSet(mix.powerMean)) {
    parts << MixPanel::tr("mean power %1").arg(wattText(mix.powerMean))
          << MixPanel::tr("%1 per day")
                 .arg(quantityText(mix.powerMean * duty, Quantity::Energy, "kWh"));
  }
  if (isSet(mix.torqueRms))
    parts << MixPanel::tr("motor torque %1 rms").arg(quantityText(mix.torqueRms, Quantity::Torque));
  if (std::isfinite(mix.windingMean))
    parts << MixPanel::tr("winding %1 at the mean losses")
                 .arg(quantityText(mix.windingMean, Quantity::Temperature));
  return parts.join(QStringLiteral(" · "));
}

}  // namespace

MixPanel::MixPanel(QWidget* parent)
    : QWidget(parent),
      m_model(new MixTableModel(this)),
      m_table(new RowTable(m_model, {{110, 3}, {104, 1}, {90, 1}, {60}, {72}, {64}, {88}})),
      m_duty(new FieldStrip({}, structInfo<Requirements>(), {{"dutyPerDay", tr("Duty per day")}})),
      m_error(makeText(QStringLiteral("mix.error"), "error", this)),
      m_day(makeText(QStringLiteral("mix.day"), nullptr, this)) {
  setObjectName(QStringLiteral("mix"));
  m_table->setObjectName(QStringLiteral("mix.table"));
  m_table->setAccessibleName(tr("Cycles of the day"));
  m_table->setSelectionMode(QAbstractItemView::SingleSelection);
  auto* text = makeText(QStringLiteral("mix.text"), "muted", this);
  text->setText(
      tr("Life, average torque and speed, mean power and energy are judged over the whole "
         "day; heat by its hottest cycle. Peaks are those of the cycle shown (▶)."));
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(0, 4, 0, 4);
  column->setSpacing(6);
  auto* head = new QVBoxLayout;
  head->setContentsMargins(12, 0, 12, 0);
  head->setSpacing(6);
  for (QWidget* part : std::initializer_list<QWidget*>{text, m_duty, m_error, m_day})
    head->addWidget(part);
  column->addLayout(head);
  column->addWidget(m_table, 1);
  column->addWidget(makeButtons());
  connectParts();
}

QToolButton* MixPanel::makeButton(const QString& text, const char* name, const QString& tip) {
  auto* button = new QToolButton(this);
  button->setObjectName(QString("mix.%1").arg(name));
  button->setText(text);
  button->setToolTip(tip);
  button->setAccessibleName(tip);
  return button;
}

QWidget* MixPanel::makeButtons() {
  auto* bar = new QWidget(this);
  auto* line = new QHBoxLayout(bar);
  line->setContentsMargins(8, 0, 12, 0);
  m_add = makeButton(tr("&Add a copy"), "add", tr("Add a copy of the cycle shown (Insert)"));
  m_show = makeButton(tr("&Show this one"), "show", tr("Show the chosen cycle in every figure"));
  m_delete = makeButton(tr("De&lete"), "delete", tr("Delete the chosen cycle (Delete)"));
  for (QToolButton* button : {m_add, m_show, m_delete}) line->addWidget(button);
  line->addStretch();
  return bar;
}

void MixPanel::connectParts() {
  const auto add = [this] { emit editRequested(mix::addCopy()); };
  const auto remove = [this] {
    if (row() >= 0 && m_model->rowCount() > 1) emit editRequested(mix::remove(row()));
  };
  connect(m_add, &QToolButton::clicked, this, add);
  connect(m_table, &RowTable::addPressed, this, add);
  connect(m_table, &RowTable::duplicatePressed, this, add);
  connect(m_delete, &QToolButton::clicked, this, remove);
  connect(m_table, &RowTable::deletePressed, this, remove);
  connect(m_show, &QToolButton::clicked, this, [this] {
    if (row() > 0) emit editRequested(mix::show(row()));
  });
  connect(m_model, &MixTableModel::editRequested, this, &MixPanel::editRequested);
  connect(m_duty, &FieldStrip::editRequested, this, &MixPanel::editRequested);
  const auto refuse = [this](const QString& message) {
    m_error->setText(message.isEmpty() ? errorOfMix() : message);
    m_error->setVisible(!m_error->text().isEmpty());
  };
  connect(m_model, &MixTableModel::entryRefused, this, refuse);
  connect(m_duty, &FieldStrip::entryRefused, this, refuse);
  connect(m_table->selectionModel(), &QItemSelectionModel::currentChanged, this,
          &MixPanel::updateButtons);
}

QString MixPanel::errorOfMix() const {
  if (!m_snapshot.evaluation) return {};
  for (const MissingInput& missing : m_snapshot.evaluation->missing)
    if (missing.part == Part::Mix) return errorText(missing);
  return {};
}

QString MixPanel::dayText() const {
  if (!m_snapshot.evaluation || m_snapshot.stale) return {};
  if (m_snapshot.evaluation->mix)
    return sentence(*m_snapshot.evaluation->mix,
                    m_snapshot.evaluatedProject->requirements.dutyPerDay);
  if (!errorOfMix().isEmpty()) return {};
  return tr("The cycle shown runs all day. Say how often each cycle runs to make a mix.");
}

void MixPanel::updateButtons() {
  m_show->setEnabled(row() > 0);
  m_delete->setEnabled(row() >= 0 && m_model->rowCount() > 1);
}

void MixPanel::showSnapshot(const Snapshot& snapshot) {
  m_snapshot = snapshot;
  const int chosen = row();
  const int before = m_model->rowCount();
  m_model->showSnapshot(snapshot);
  if (m_model->rowCount() != before) {
    const bool grown = m_model->rowCount() > before && before > 0;
    const int next = grown ? m_model->rowCount() - 1 : std::max(chosen, 0);
    m_table->chooseRows(next, next);
  }
  if (snapshot.project) m_duty->showFields(*snapshot.project, QStringLiteral("requirements"));
  m_error->setText(errorOfMix());
  m_error->setVisible(!m_error->text().isEmpty());
  if (const QString day = dayText(); !day.isEmpty() || !snapshot.stale) m_day->setText(day);
  m_day->setVisible(!m_day->text().isEmpty());
  updateButtons();
}

}  // namespace jw

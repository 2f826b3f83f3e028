#include "widgets/panels/log_load_page.h"

#include <algorithm>
#include <cmath>

#include <QHBoxLayout>
#include <QHeaderView>
#include <QScrollArea>
#include <QVBoxLayout>

#include "widgets/inputs/field_text.h"
#include "widgets/panels/log_views.h"
#include "widgets/theme/number_text.h"

namespace jw {
namespace {

constexpr int kPanelWidth = 396;

QTableWidgetItem* tickCell(const QString& text, bool ticked) {
  QTableWidgetItem* cell = logCell(text);
  cell->setFlags(cell->flags() | Qt::ItemIsUserCheckable);
  cell->setCheckState(ticked ? Qt::Checked : Qt::Unchecked);
  return cell;
}

bool isTicked(const QTableWidget& table, int row) {
  const QTableWidgetItem* cell = table.item(row, 0);
  return cell != nullptr && cell->checkState() == Qt::Checked;
}

QString unitText(std::string_view unit) { return QString::fromStdString(prettyUnit(unit)); }

/// A fitted value in the unit of its field.
QString editText(const LoadEdit& edit) {
  const FieldInfo* info = structInfo<Load>().find(edit.path.substr(edit.path.find('.') + 1));
  return QStringLiteral("%1 %2").arg(
      uncertainText(fromInternal(edit.after, info->unit, info->quantity),
                    fromInternal(edit.uncertainty, info->unit, info->quantity)),
      unitText(info->unit));
}

QString beforeText(const LoadEdit& edit) {
  const FieldInfo* info = structInfo<Load>().find(edit.path.substr(edit.path.find('.') + 1));
  return isSet(edit.before) ? quantityText(edit.before, info->quantity, info->unit)
                            : QStringLiteral("–");
}

QStringList noteTexts(const std::vector<InputError>& notes) {
  QStringList texts;
  for (const InputError& note : notes) texts << toQString(describe(note));
  return texts;
}

QVBoxLayout* columnIn(QWidget* part) {
  auto* column = new QVBoxLayout(part);
  column->setContentsMargins(0, 0, 0, 0);
  column->setSpacing(6);
  return column;
}

}  // namespace

Edit fittedLoadEdit(const LoadEdits& edits) {
  return {QStringLiteral("Use the fitted load"), {}, [edits](Project& project) {
            return applyLoadEdits(project, edits);
          }};
}

LogLoadPage::LogLoadPage(QWidget* parent) : QWidget(parent), m_canvas(new LogCanvas(this)) {
  m_canvas->setObjectName(QStringLiteral("log.torque"));
  auto* row = new QHBoxLayout(this);
  row->setContentsMargins(12, 12, 12, 12);
  row->setSpacing(12);
  row->addWidget(makePanel());
  row->addWidget(m_canvas, 1);
  setDrive({});
  showStudy({}, LogStage::Text);
}

QWidget* LogLoadPage::makePanel() {
  auto* content = new QWidget;
  auto* column = new QVBoxLayout(content);
  column->setContentsMargins(0, 0, 8, 0);
  column->setSpacing(12);
  m_empty = makeLogLabel(tr("No column holds the joint's torque or the motor's current: there is "
                            "nothing to compare the load with."),
                         "muted", QStringLiteral("log.noTorque"));
  column->addWidget(m_empty);
  column->addWidget(m_drivePart = makeDrive());
  column->addWidget(makeTerms());
  column->addWidget(makeEdits());
  column->addStretch(1);
  auto* scroll = new QScrollArea(this);
  scroll->setWidgetResizable(true);
  scroll->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
  scroll->setWidget(content);
  auto* side = new QWidget(this);
  side->setFixedWidth(kPanelWidth);
  auto* whole = columnIn(side);
  m_apply = new QPushButton(tr("&Use the ticked values"));
  m_apply->setObjectName(QStringLiteral("log.applyFit"));
  m_apply->setAutoDefault(false);
  connect(m_apply, &QPushButton::clicked, this, &LogLoadPage::apply);
  whole->addWidget(scroll, 1);
  whole->addWidget(m_apply);
  return side;
}

LogEntry* LogLoadPage::addEntry(QFormLayout* form, const QString& label, const char* objectName,
                                Quantity quantity, std::string_view unit, double low) {
  auto* entry = new LogEntry(label, quantity, unit, low, 1e9, this);
  entry->setObjectName(QLatin1String(objectName));
  form->addRow(label, entry);
  connect(entry, &LogEntry::valueChanged, this, [this] {
    m_drive = {m_constant->value(), m_ratio->value(), m_efficiency->value(), m_rotor->value()};
    emit driveChanged();
  });
  return entry;
}

QWidget* LogLoadPage::makeDrive() {
  auto* part = new QWidget;
  auto* column = columnIn(part);
  auto* form = new QFormLayout;
  form->setHorizontalSpacing(12);
  m_constant = addEntry(form, tr("Torque constant"), "log.torqueConstant", Quantity::TorqueConstant,
                        "N*m/A", -1e9);
  m_ratio = addEntry(form, tr("Ratio"), "log.ratio", Quantity::Ratio, "1", -1e9);
  m_efficiency = addEntry(form, tr("Efficiency"), "log.efficiency", Quantity::Fraction, "%", 1e-6);
  m_rotor =
      addEntry(form, tr("Rotor inertia"), "log.rotorInertia", Quantity::Inertia, "kg*cm^2", 0);
  column->addWidget(makeLogLabel(tr("Torque from the motor's current"), "title"));
  column->addLayout(form);
  column->addWidget(makeLogLabel(tr("Current as logged × torque constant × ratio × efficiency; the "
                                    "friction found is then that of the whole joint."),
                                 "muted"));
  return part;
}

QWidget* LogLoadPage::makeTerms() {
  auto* part = new QWidget;
  auto* column = columnIn(part);
  m_difference = makeLogLabel({}, "muted", QStringLiteral("log.difference"));
  m_terms = makeLogTable(tr("Terms of the fit"), QStringLiteral("log.terms"),
                         {tr("Least-squares term"), tr("Value ± standard uncertainty")});
  m_terms->setRowCount(int(kLoadTerms));
  for (int k = 0; k < int(kLoadTerms); ++k)
    m_terms->setItem(k, 0, tickCell(upperFirst(toQString(nameOf(LoadTerm(k)))), true));
  m_terms->horizontalHeaderItem(1)->setTextAlignment(Qt::AlignRight | Qt::AlignVCenter);
  connect(m_terms, &QTableWidget::itemChanged, this, [this](const QTableWidgetItem* cell) {
    if (!m_showing && cell->column() == 0) emit termsChanged();
  });
  m_quality = makeLogLabel({}, "muted", QStringLiteral("log.quality"));
  column->addWidget(makeLogLabel(tr("The stretch's torque, fitted"), "title"));
  column->addWidget(m_difference);
  column->addWidget(m_terms);
  column->addWidget(m_quality);
  return part;
}

QWidget* LogLoadPage::makeEdits() {
  auto* part = new QWidget;
  auto* column = columnIn(part);
  m_kept = new LogChoice(tr("Kept of mass times distance"), QStringLiteral("log.kept"));
  m_kept->addItems({tr("the link's mass"), tr("the link's distance")});
  connect(m_kept, &QComboBox::activated, this, &LogLoadPage::showEdits);
  m_changes = makeLogTable(tr("Fields of the load"), QStringLiteral("log.edits"),
                           {tr("Field"), tr("Now"), tr("Fitted")});
  for (int c = 1; c < 3; ++c)
    m_changes->horizontalHeaderItem(c)->setTextAlignment(Qt::AlignRight | Qt::AlignVCenter);
  connect(m_changes, &QTableWidget::itemChanged, this, &LogLoadPage::markChosen);
  m_notes = makeLogLabel({}, "muted", QStringLiteral("log.fitNotes"));
  auto* form = new QFormLayout;
  form->addRow(tr("&Keep as it is"), m_kept);
  column->addWidget(makeLogLabel(tr("What the load would become"), "title"));
  column->addLayout(form);
  column->addWidget(m_changes);
  column->addWidget(m_notes);
  return part;
}

bool LogLoadPage::showProject(const Snapshot& snapshot) {
  if (!snapshot.project) return false;
  LogDrive drive;
  const Motor& motor = snapshot.project->active().motor;
  if (isSet(motor.rotorInertia)) drive.rotorInertia = motor.rotorInertia;
  if (const auto& e = snapshot.evaluation) {
    if (e->motor) drive.torqueConstant = e->motor->torquePerRmsAmp();
    if (e->chain) drive.ratio = e->chain->ratio;
  }
  const bool changed = !(drive == m_projectDrive) || !(snapshot.project->load == m_load);
  if (!(drive == m_projectDrive)) setDrive(drive);
  m_load = snapshot.project->load;
  m_projectDrive = drive;
  if (changed) showEdits();
  return changed;
}

void LogLoadPage::setDrive(const LogDrive& drive) {
  m_drive = drive;
  m_constant->setValue(drive.torqueConstant);
  m_ratio->setValue(drive.ratio);
  m_efficiency->setValue(drive.efficiency);
  m_rotor->setValue(drive.rotorInertia);
}

void LogLoadPage::fill(LogSettings& settings) const {
  settings.load = m_load;
  settings.drive = m_drive;
  for (std::size_t k = 0; k < kLoadTerms; ++k) settings.terms[k] = isTicked(*m_terms, int(k));
}

void LogLoadPage::showStudy(const LogStudy& study, LogStage stage) {
  const bool another = m_study.log != study.log;
  m_study = study;
  m_empty->setVisible(!study.log || (study.log->torque.empty() && study.log->current.empty()));
  m_drivePart->setVisible(study.log && study.log->torque.empty() && !study.log->current.empty());
  m_difference->setText(isSet(study.torqueDifference)
                            ? tr("Measured less this project's load: %1 rms")
                                  .arg(quantityText(study.torqueDifference, Quantity::Torque))
                            : QString());
  if (study.log && stage >= LogStage::Rows) m_canvas->showView(torqueView(study), !another);
  if (!study.log) m_canvas->showView({}, false);
  if (study.log) {
    m_canvas->setStretch({0, 0});
    showFit();
  }
  if (!study.log) showFit();
}

void LogLoadPage::showFit() {
  const LogFitResult* result = m_study.fit.get();
  const bool good = result != nullptr && result->has_value();
  m_showing = true;
  for (int k = 0; k < int(kLoadTerms); ++k) {
    const auto term = LoadTerm(k);
    const bool there = good && (*result)->has(term);
    const QString text =
        there ? QStringLiteral("%1 %2").arg(
                    uncertainText((**result)[term].value, (**result)[term].uncertainty),
                    unitText(unitOf(term)))
              : QStringLiteral("–");
    m_terms->setItem(k, 1, logCell(text, true));
  }
  fitHeight(*m_terms);
  m_showing = false;
  if (good) {
    const LoadFit& fit = **result;
    m_quality->setText(
        tr("Measured less fitted: %1 rms, %2 at most. %3 rows used, %4 at rest left "
           "out; R² %5. ± holds if the model is right.")
            .arg(quantityText(fit.residualRms, Quantity::Torque),
                 quantityText(fit.residualPeak, Quantity::Torque), fixedNumber(double(fit.rows), 0),
                 fixedNumber(double(fit.restRows), 0), fixedNumber(fit.rSquared, 4)));
  } else {
    m_quality->setText(result != nullptr ? toQString(describe(result->error())) : QString());
  }
  m_quality->setProperty("role", result != nullptr && !good ? "error" : "muted");
  showEdits();
}

void LogLoadPage::showEdits() {
  const LogFitResult* result = m_study.fit.get();
  const bool good = result != nullptr && result->has_value();
  m_edits = good ? loadEdits(**result, m_load, KeptInGravity(m_kept->currentIndex())) : LoadEdits{};
  m_showing = true;
  m_changes->setRowCount(int(m_edits.edits.size()));
  for (int k = 0; k < int(m_edits.edits.size()); ++k) {
    const LoadEdit& edit = m_edits.edits[std::size_t(k)];
    m_changes->setItem(k, 0, tickCell(toQString(edit.label), true));
    m_changes->setItem(k, 1, logCell(beforeText(edit), true));
    m_changes->setItem(k, 2, logCell(editText(edit), true));
  }
  fitHeight(*m_changes);
  m_showing = false;
  QStringList notes = noteTexts(m_edits.notes);
  if (good) notes = noteTexts((*result)->notes) + notes;
  m_notes->setText(notes.join(u'\n'));
  markChosen();
}

LoadEdits LogLoadPage::chosen() const {
  LoadEdits edits;
  for (int k = 0; k < int(m_edits.edits.size()); ++k)
    if (isTicked(*m_changes, k)) edits.edits.push_back(m_edits.edits[std::size_t(k)]);
  return edits;
}

void LogLoadPage::markChosen() {
  if (!m_showing && m_apply != nullptr) m_apply->setEnabled(!chosen().edits.empty());
}

void LogLoadPage::apply() {
  const LoadEdits edits = chosen();
  if (!edits.edits.empty()) emit editRequested(fittedLoadEdit(edits));
}

}  // namespace jw

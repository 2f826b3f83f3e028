#include "widgets/panels/built_ratios_dialog.h"

#include <algorithm>
#include <cmath>

#include <QFormLayout>
#include <QHBoxLayout>
#include <QHeaderView>
#include <QStyle>
#include <QVBoxLayout>

#include "core/model/field_catalogue.h"
#include "widgets/inputs/field_text.h"
#include "widgets/theme/number_text.h"

namespace jw {
namespace {

constexpr std::size_t kMostOfEach = 8;
constexpr StageFamily kBuilt[] = {StageFamily::Planetary,     StageFamily::Cycloidal,
                                  StageFamily::StrainWave,    StageFamily::Traction,
                                  StageFamily::ParallelShaft, StageFamily::Belt};

const ChoiceItem& familyItem(StageFamily family) {
  return structInfo<Stage>().find("family")->choices[static_cast<std::size_t>(family)];
}

QString familyName(StageFamily family) { return upperFirst(toQString(familyItem(family).label)); }

void append(std::vector<BuiltRow>& rows, StageFamily family, double wanted,
            const SizeLimits& limits) {
  for (RealizableRatio& option : realizableRatios(family, wanted, limits, kMostOfEach)) {
    rows.push_back({family, std::move(option)});
  }
}

/// "exact", "+0.12 %".
QString errorText(double error) {
  if (std::abs(error) < 1e-9) return QStringLiteral("exact");
  const QString sign = error > 0 ? QStringLiteral("+") : QString();
  return sign + numberText(100 * error, 2) + QStringLiteral(" %");
}

QTableWidgetItem* cell(const QString& text, bool number = false) {
  auto* item = new QTableWidgetItem(text);
  item->setFlags(Qt::ItemIsEnabled | Qt::ItemIsSelectable);
  if (number) item->setTextAlignment(Qt::AlignRight | Qt::AlignVCenter);
  return item;
}

}  // namespace

std::vector<BuiltRow> builtRows(const std::vector<StageFamily>& families, double wanted,
                                const SizeLimits& limits) {
  std::vector<BuiltRow> rows;
  for (const StageFamily family : families) {
    if (family != StageFamily::Planetary) {
      append(rows, family, wanted, limits);
      continue;
    }
    for (int sets = limits.leastSets; sets <= limits.mostSets; ++sets) {
      SizeLimits these = limits;
      these.leastSets = these.mostSets = sets;
      append(rows, family, wanted, these);
    }
  }
  std::stable_sort(rows.begin(), rows.end(), [](const BuiltRow& a, const BuiltRow& b) {
    const double x = std::abs(a.option.error);
    const double y = std::abs(b.option.error);
    if (std::abs(x - y) > 1e-9) return x < y;
    if (a.option.edits.size() != b.option.edits.size()) {
      return a.option.edits.size() < b.option.edits.size();  // fewer parts
    }
    return a.family == b.family && a.option.size < b.option.size;
  });
  return rows;
}

QString partsText(const RealizableRatio& option) {
  QStringList parts;
  for (const StageEdit& edit : option.edits) {
    const FieldInfo* info = structInfo<Stage>().find(edit.key);
    if (info == nullptr || edit.text.empty() || info->kind == FieldKind::Choice) continue;
    QString label = toQString(info->label);
    if (!parts.isEmpty()) label[0] = label[0].toLower();
    parts << label + u' ' + toQString(edit.text);
  }
  return parts.join(QStringLiteral(", "));
}

Edit buildStage(int index, const BuiltRow& row) {
  const QString description = QStringLiteral("Build stage %1 %2")
                                  .arg(index + 1)
                                  .arg(toQString(familyItem(row.family).label));
  return {description, {}, [index, row](Project& project) -> tl::expected<void, InputError> {
            const std::string path = "transmission[" + std::to_string(index) + "].";
            auto done = setField(project, path + "family", familyItem(row.family).key);
            for (const StageEdit& edit : row.option.edits) {
              if (!done) break;
              done = setField(project, path + edit.key, edit.text);
            }
            return done;
          }};
}

BuiltRatiosDialog::BuiltRatiosDialog(const Stage& stage, int index, QWidget* parent)
    : QDialog(parent), m_index(index), m_message(new QLabel(this)), m_table(makeTable()) {
  setObjectName(QStringLiteral("builtRatios"));
  setWindowTitle(tr("What can be built for stage %1").arg(index + 1));
  m_message->setObjectName(QStringLiteral("builtRatios.message"));
  m_message->setWordWrap(true);
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(16, 16, 16, 16);
  column->setSpacing(8);
  column->addLayout(makeQuestion(stage));
  column->addWidget(m_message);
  column->addWidget(m_table, 1);
  column->addLayout(makeButtons());
  resize(760, 520);
  search();
}

QLineEdit* BuiltRatiosDialog::makeEntry(const QString& name, const QString& objectName,
                                        const QString& text) {
  auto* entry = new QLineEdit(text, this);
  entry->setObjectName(objectName);
  entry->setAccessibleName(name);
  connect(entry, &QLineEdit::textChanged, this, &BuiltRatiosDialog::search);
  return entry;
}

QLayout* BuiltRatiosDialog::makeQuestion(const Stage& stage) {
  m_family = new QComboBox(this);
  m_family->setObjectName(QStringLiteral("builtRatios.family"));
  m_family->setAccessibleName(tr("Family"));
  m_family->addItem(tr("All families"), -1);
  for (const StageFamily family : kBuilt) m_family->addItem(familyName(family), int(family));
  m_family->setCurrentIndex(std::max(0, m_family->findData(int(stage.family))));
  connect(m_family, &QComboBox::currentIndexChanged, this, &BuiltRatiosDialog::search);
  m_ratio = makeEntry(tr("Wanted ratio"), QStringLiteral("builtRatios.ratio"),
                      isSet(stage.ratio) ? toQString(formatNumber(stage.ratio)) : QString("10"));
  m_diameter =
      makeEntry(tr("Largest outside diameter"), QStringLiteral("builtRatios.diameter"), {});
  m_diameter->setPlaceholderText(tr("any"));
  m_module = makeEntry(tr("Module or pitch"), QStringLiteral("builtRatios.module"), {});
  m_module->setPlaceholderText(tr("any"));
  auto* form = new QFormLayout;
  form->addRow(tr("&Family"), m_family);
  form->addRow(tr("Wanted &ratio"), m_ratio);
  form->addRow(tr("Largest outside &diameter"), m_diameter);
  form->addRow(tr("&Module, or pitch of a belt"), m_module);
  return form;
}

QTableWidget* BuiltRatiosDialog::makeTable() {
  auto* table = new QTableWidget(0, 4, this);
  table->setObjectName(QStringLiteral("builtRatios.table"));
  table->setAccessibleName(tr("What can be built"));
  table->setHorizontalHeaderLabels({tr("Family"), tr("Built of"), tr("Ratio"), tr("Error")});
  table->horizontalHeader()->setSectionResizeMode(QHeaderView::ResizeToContents);
  table->horizontalHeader()->setSectionResizeMode(1, QHeaderView::Stretch);
  table->verticalHeader()->hide();
  table->verticalHeader()->setSectionResizeMode(QHeaderView::ResizeToContents);
  table->setSelectionBehavior(QAbstractItemView::SelectRows);
  table->setSelectionMode(QAbstractItemView::SingleSelection);
  table->setTabKeyNavigation(false);
  connect(table, &QTableWidget::cellDoubleClicked, this, &BuiltRatiosDialog::useCurrent);
  return table;
}

QLayout* BuiltRatiosDialog::makeButtons() {
  auto* row = new QHBoxLayout;
  auto* close = new QPushButton(tr("&Close"), this);
  m_use = new QPushButton(tr("&Use for stage %1").arg(m_index + 1), this);
  m_use->setObjectName(QStringLiteral("builtRatios.use"));
  m_use->setDefault(true);
  close->setAutoDefault(false);
  connect(close, &QPushButton::clicked, this, &QDialog::reject);
  connect(m_use, &QPushButton::clicked, this, &BuiltRatiosDialog::useCurrent);
  row->addStretch(1);
  row->addWidget(close);
  row->addWidget(m_use);
  return row;
}

/// Reads the entries; what cannot be read is said and empties the list.
void BuiltRatiosDialog::search() {
  if (m_module == nullptr || m_use == nullptr) return;
  QString wrong;
  const auto read = [&](const QLineEdit& entry, Quantity quantity, std::string_view unit) {
    if (entry.text().trimmed().isEmpty()) return kUnset;
    const auto parsed = parseQuantity(entry.text().toStdString(), quantity, unit);
    if (parsed && parsed->value > 0) return parsed->value;
    wrong = entry.accessibleName() + QStringLiteral(": ") +
            toQString(parsed ? "has to be above 0" : parsed.error().what);
    return kUnset;
  };
  SizeLimits limits;
  const double wanted = read(*m_ratio, Quantity::Ratio, "1");
  limits.outsideDiameter = read(*m_diameter, Quantity::Length, "mm");
  limits.module = limits.beltPitch = read(*m_module, Quantity::Length, "mm");
  const int chosen = m_family->currentData().toInt();
  std::vector<StageFamily> families(std::begin(kBuilt), std::end(kBuilt));
  if (chosen >= 0) families = {static_cast<StageFamily>(chosen)};
  m_rows = wrong.isEmpty() && isSet(wanted) ? builtRows(families, wanted, limits)
                                            : std::vector<BuiltRow>{};
  m_message->setProperty("role", wrong.isEmpty() ? "muted" : "error");
  m_message->setText(!wrong.isEmpty() ? wrong
                     : m_rows.empty()
                         ? tr("Nothing can be built to this ratio within these limits.")
                         : tr("Assembly, clearance and undercut are kept; loads are "
                              "judged once the stage is built so."));
  m_message->style()->polish(m_message);  // the role has changed
  showRows();
}

void BuiltRatiosDialog::showRows() {
  m_table->setRowCount(int(m_rows.size()));
  for (int k = 0; k < int(m_rows.size()); ++k) {
    const BuiltRow& row = m_rows[std::size_t(k)];
    m_table->setItem(k, 0, cell(familyName(row.family)));
    m_table->setItem(k, 1, cell(partsText(row.option)));
    m_table->setItem(k, 2, cell(numberText(row.option.ratio, 6), true));
    m_table->setItem(k, 3, cell(errorText(row.option.error), true));
  }
  if (!m_rows.empty()) m_table->selectRow(0);
  m_use->setEnabled(!m_rows.empty());
}

void BuiltRatiosDialog::useCurrent() {
  const int row = m_table->currentRow();
  if (row < 0 || row >= int(m_rows.size())) return;
  emit editRequested(buildStage(m_index, m_rows[std::size_t(row)]));
}

}  // namespace jw

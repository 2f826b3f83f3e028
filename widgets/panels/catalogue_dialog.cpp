#include "widgets/panels/catalogue_dialog.h"

#include <algorithm>

#include <QFileDialog>
#include <QFileInfo>
#include <QHBoxLayout>
#include <QHeaderView>
#include <QInputDialog>
#include <QMenu>
#include <QMessageBox>
#include <QRegularExpression>
#include <QShortcut>
#include <QStyle>
#include <QVBoxLayout>

#include "widgets/inputs/field_text.h"
#include "widgets/panels/catalogue_memory.h"

namespace jw {
namespace {

QString titleOf(const Catalogue& catalogue) {
  switch (catalogue.kind) {
    case CatalogueKind::Motors: return CatalogueDialog::tr("Catalogue of motors");
    case CatalogueKind::Reducers: return CatalogueDialog::tr("Catalogue of reducers and belts");
    case CatalogueKind::Rules: break;
  }
  return CatalogueDialog::tr("Scaling rules of reducer families");
}

/// The catalogue could be read before, so that its text can be read again.
CatalogueSheet sheetOf(const Catalogue& catalogue) {
  return *readSheet(catalogue.kind, catalogue.text, catalogue.name);
}

QLabel* makeNote(const char* name, QWidget* parent) {
  auto* label = new QLabel(parent);
  label->setObjectName(QLatin1String(name));
  label->setProperty("role", "muted");
  label->setWordWrap(true);
  label->setTextFormat(Qt::PlainText);
  return label;
}

}  // namespace

CatalogueDialog::CatalogueDialog(CataloguePtr catalogue, QWidget* parent)
    : QDialog(parent),
      m_catalogue(std::move(catalogue)),
      m_name(toQString(m_catalogue->name)),
      m_model(new CatalogueTableModel(sheetOf(*m_catalogue), this)),
      m_remark(makeNote("catalogue.remark", this)),
      m_message(makeNote("catalogue.message", this)),
      m_table(makeTable()) {
  setObjectName(QStringLiteral("catalogue"));
  setWindowTitle(titleOf(*m_catalogue));
  m_model->setReadOnly(m_catalogue->bundled);
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(16, 16, 16, 16);
  column->setSpacing(8);
  column->addWidget(m_remark);
  column->addLayout(makeTools());
  column->addWidget(m_table, 1);
  column->addWidget(m_message);
  column->addLayout(makeButtons());
  connect(m_model, &CatalogueTableModel::sheetChanged, this, &CatalogueDialog::showState);
  const auto onKey = [this](const QKeySequence& keys, auto does) {
    connect(new QShortcut(keys, this), &QShortcut::activated, m_model, does);
  };
  onKey(QKeySequence::Undo, &CatalogueTableModel::undo);
  onKey(QKeySequence::Redo, &CatalogueTableModel::redo);
  resize(1040, 600);
  showState();
}

QTableView* CatalogueDialog::makeTable() {
  auto* table = new QTableView(this);
  table->setObjectName("catalogue.table");
  table->setAccessibleName(tr("Rows of the catalogue"));
  table->setModel(m_model);
  table->setWordWrap(false);
  table->setEditTriggers(QAbstractItemView::DoubleClicked | QAbstractItemView::EditKeyPressed |
                         QAbstractItemView::AnyKeyPressed);
  table->verticalHeader()->setDefaultSectionSize(24);
  table->verticalHeader()->setSectionResizeMode(QHeaderView::Fixed);
  QHeaderView* header = table->horizontalHeader();
  header->setHighlightSections(false);
  header->setDefaultAlignment(Qt::AlignLeft | Qt::AlignVCenter);
  for (int k = 0; k < m_model->columnCount(); ++k) {
    const QString title = m_model->headerData(k, Qt::Horizontal, Qt::DisplayRole).toString();
    const int width = header->fontMetrics().horizontalAdvance(title) + 28;
    header->resizeSection(k, k == 0 ? std::max(240, width) : std::max(84, width));
  }
  return table;
}

QPushButton* CatalogueDialog::makeButton(const QString& text, const char* name) {
  auto* button = new QPushButton(text, this);
  button->setObjectName(QStringLiteral("catalogue.") + QLatin1String(name));
  button->setAutoDefault(false);
  return button;
}

QLayout* CatalogueDialog::makeTools() {
  auto* row = new QHBoxLayout;
  row->setSpacing(6);
  const auto tool = [&](const QString& text, const char* name, auto does) {
    QPushButton* button = makeButton(text, name);
    connect(button, &QPushButton::clicked, this, does);
    row->addWidget(button);
    return button;
  };
  m_copy = tool(tr("Copy to &edit"), "copy", [this] { copyToEdit(); });
  m_changers = {
      tool(tr("&Add row"), "add", [this] { m_model->addRow(m_model->rowCount()); }),
      tool(tr("&Duplicate"), "duplicate", [this] { m_model->duplicateRows(chosenRows()); }),
      tool(tr("&Remove"), "remove", [this] { m_model->removeRows(chosenRows()); }),
      tool(tr("Add &column…"), "column", [this] { offerColumns(); }),
      tool(tr("&Import CSV…"), "import", [this] { askImport(); })};
  m_undo = tool(tr("&Undo"), "undo", [this] { m_model->undo(); });
  m_redo = tool(tr("Re&do"), "redo", [this] { m_model->redo(); });
  row->addStretch(1);
  return row;
}

QLayout* CatalogueDialog::makeButtons() {
  auto* row = new QHBoxLayout;
  QPushButton* save = makeButton(tr("&Save as CSV…"), "save");
  QPushButton* close = makeButton(tr("C&lose"), "close");
  m_use = makeButton(tr("Use &these"), "use");
  connect(save, &QPushButton::clicked, this, &CatalogueDialog::askSave);
  connect(close, &QPushButton::clicked, this, &CatalogueDialog::reject);
  connect(m_use, &QPushButton::clicked, this, &CatalogueDialog::use);
  row->addWidget(save);
  row->addStretch(1);
  row->addWidget(close);
  row->addWidget(m_use);
  return row;
}

void CatalogueDialog::say(const QString& message, bool wrong) {
  m_message->setText(message);
  m_message->setProperty("role", wrong ? "error" : "muted");
  m_message->style()->polish(m_message);  // the role has changed
}

void CatalogueDialog::showState() {
  if (!m_use) return;
  const CatalogueSheet& sheet = m_model->sheet();
  const bool fixed = m_model->isReadOnly();
  m_remark->setText(toQString(sheet.remark));
  m_remark->setVisible(!sheet.remark.empty());
  m_copy->setVisible(fixed);
  for (QPushButton* button : m_changers) button->setEnabled(!fixed);
  m_undo->setEnabled(m_model->canUndo());
  m_redo->setEnabled(m_model->canRedo());
  m_use->setEnabled(!fixed && sheet.wrongRows == 0 && !sheet.rows.empty());
  if (fixed) return say(tr("Bundled and invented: copy it to make changes."), false);
  if (sheet.wrongRows == 0) return say(tr("%1 rows").arg(sheet.rows.size()), false);
  const QString more = sheet.wrongRows > 1 ? tr(" (%1 rows are wrong)").arg(sheet.wrongRows) : "";
  say(m_model->firstWrong() + more, true);
}

std::vector<int> CatalogueDialog::chosenRows() const {
  std::vector<int> rows;
  for (const QModelIndex& index : m_table->selectionModel()->selectedIndexes()) {
    rows.push_back(index.row());
  }
  std::sort(rows.begin(), rows.end());
  rows.erase(std::unique(rows.begin(), rows.end()), rows.end());
  return rows;
}

void CatalogueDialog::copyToEdit() {
  m_name = tr("copy of %1").arg(m_name);
  m_model->setReadOnly(false);
}

void CatalogueDialog::offerColumns() {
  QMenu menu(this);
  if (m_model->sheet().kind == CatalogueKind::Rules) {
    menu.addAction(tr("A column of your own…"), this, &CatalogueDialog::addOwnColumn);
    menu.addSeparator();
  }
  for (const SheetColumn& column : furtherColumns(m_model->sheet())) {
    menu.addAction(toQString(column.label), this, [this, column] { m_model->addColumn(column); });
  }
  menu.exec(m_changers[3]->mapToGlobal(QPoint(0, m_changers[3]->height())));
}

void CatalogueDialog::addOwnColumn() {
  const QString name =
      QInputDialog::getText(this, tr("A column of your own"),
                            tr("Its name, with a unit if it has one, such as price [EUR]"))
          .remove(QRegularExpression("[\",;\t]"))
          .trimmed();
  if (name.isEmpty()) return;
  const std::string key = std::string(kOwnPrefix) + name.toStdString();
  m_model->addColumn({key, {}, name.toStdString(), nullptr, nullptr});
}

tl::expected<void, InputError> CatalogueDialog::importFile(const QString& fileName) {
  auto read = openCatalogue(m_catalogue->kind, fileName);
  if (!read) return tl::unexpected(read.error());
  rememberCatalogue(m_catalogue->kind, fileName);
  m_name = toQString((*read)->name);
  if (m_model->isReadOnly()) m_model->setReadOnly(false);
  m_model->replaceAll(sheetOf(**read));
  if (!(*read)->notes.empty()) say(toQString(describe((*read)->notes.front())), false);
  return {};
}

tl::expected<void, InputError> CatalogueDialog::saveFile(const QString& fileName) {
  auto done = saveCatalogue(writeSheet(m_model->sheet()), fileName);
  if (!done) return done;
  rememberCatalogue(m_catalogue->kind, fileName);
  m_name = QFileInfo(fileName).fileName();
  m_model->setClean();
  return {};
}

void CatalogueDialog::askImport() {
  const QString fileName = QFileDialog::getOpenFileName(this, windowTitle(), {},
                                                        tr("Tables (*.csv *.txt);;All files (*)"));
  if (fileName.isEmpty()) return;
  if (const auto done = importFile(fileName); !done) say(toQString(describe(done.error())), true);
}

void CatalogueDialog::askSave() {
  QString fileName =
      QFileDialog::getSaveFileName(this, windowTitle(), m_name, tr("Tables (*.csv)"));
  if (fileName.isEmpty()) return;
  if (QFileInfo(fileName).suffix().isEmpty()) fileName += ".csv";
  const auto done = saveFile(fileName);
  done ? say(tr("Saved %1").arg(fileName), false) : say(toQString(describe(done.error())), true);
}

void CatalogueDialog::use() {
  auto taken = readCatalogue(m_catalogue->kind, writeSheet(m_model->sheet()), m_name.toStdString());
  if (!taken) return say(toQString(describe(taken.error())), true);
  emit catalogueTaken(std::make_shared<const Catalogue>(std::move(*taken)));
  m_model->setClean();
  accept();
}

void CatalogueDialog::reject() {
  const auto asked = [this] {
    return QMessageBox::question(this, windowTitle(), tr("Give up the changes to this table?")) ==
           QMessageBox::Yes;
  };
  if (!m_model->isModified() || asked()) QDialog::reject();
}

}  // namespace jw

#include "widgets/panels/catalogue_choice.h"

#include <algorithm>

#include <QDir>
#include <QFileDialog>
#include <QFileInfo>
#include <QHBoxLayout>
#include <QSignalBlocker>

#include "widgets/inputs/choice_box.h"
#include "widgets/panels/catalogue_dialog.h"
#include "widgets/panels/catalogue_memory.h"

namespace jw {
namespace {

QString kindName(CatalogueKind kind) {
  switch (kind) {
    case CatalogueKind::Motors: return CatalogueChoice::tr("Catalogue of motors");
    case CatalogueKind::Reducers: return CatalogueChoice::tr("Catalogue of reducers");
    case CatalogueKind::Rules: break;
  }
  return CatalogueChoice::tr("Scaling rules");
}

}  // namespace

CatalogueChoice::CatalogueChoice(CatalogueKind kind, const QString& name, QWidget* parent)
    : QWidget(parent), m_kind(kind), m_choice(new ChoiceBox(this)) {
  m_choice->setObjectName(name);
  m_choice->setAccessibleName(kindName(kind));
  m_choice->setToolTip(tr("The bundled parts are invented: no maker's data"));
  m_choice->setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Fixed);
  m_choice->setMinimumWidth(90);
  m_choice->setSizeAdjustPolicy(QComboBox::AdjustToMinimumContentsLengthWithIcon);
  auto* edit = new QToolButton(this);
  edit->setObjectName(name + ".edit");
  edit->setProperty("role", "link");
  edit->setText(tr("edit…"));
  edit->setAccessibleName(tr("Edit: %1").arg(kindName(kind)));
  auto* row = new QHBoxLayout(this);
  row->setContentsMargins(0, 0, 0, 0);
  row->setSpacing(2);
  row->addWidget(m_choice, 1);
  row->addWidget(edit);
  m_entries.push_back({bundledCatalogue(kind), {}});
  fill();
  connect(m_choice, &QComboBox::activated, this, &CatalogueChoice::choose);
  connect(edit, &QToolButton::clicked, this, &CatalogueChoice::edit);
}

void CatalogueChoice::showEvent(QShowEvent* event) {
  QWidget::showEvent(event);
  fill();  // another figure may have opened one
}

void CatalogueChoice::addRemembered() {
  for (const QString& file : rememberedCatalogues(m_kind)) {
    const bool known = std::any_of(m_entries.begin(), m_entries.end(),
                                   [&](const Entry& one) { return one.file == file; });
    if (!known) m_entries.push_back({nullptr, file});
  }
}

void CatalogueChoice::fill() {
  addRemembered();
  const QSignalBlocker quiet(m_choice);
  m_choice->clear();
  for (const Entry& one : m_entries) {
    m_choice->addItem(one.catalogue ? catalogueName(*one.catalogue) + QStringLiteral(": ") +
                                          catalogueCount(*one.catalogue)
                                    : QFileInfo(one.file).fileName());
    if (!one.file.isEmpty())
      m_choice->setItemData(m_choice->count() - 1, QDir::toNativeSeparators(one.file),
                            Qt::ToolTipRole);
  }
  m_choice->addItem(tr("Open CSV…"));
  m_choice->setCurrentIndex(m_current);
}

void CatalogueChoice::choose(int index) {
  if (index >= int(m_entries.size())) return askFile();
  if (index == m_current) return;
  const Entry entry = m_entries[std::size_t(index)];
  if (!entry.catalogue) return read(entry);
  m_current = index;
  useCatalogue(catalogue());
  emit catalogueChanged();
}

/// A file of an earlier run; one that cannot be read is no longer offered.
void CatalogueChoice::read(const Entry& entry) {
  const CataloguePtr now = catalogue();
  const auto done = open(entry.file);
  if (!done) {
    forgetCatalogue(m_kind, entry.file);
    std::erase_if(m_entries, [&](const Entry& one) { return one.file == entry.file; });
    const auto chosen = std::find_if(m_entries.begin(), m_entries.end(),
                                     [&](const Entry& one) { return one.catalogue == now; });
    m_current = int(chosen - m_entries.begin());
    fill();
  }
  emit refused(done ? QString() : QString::fromStdString(describe(done.error())));
}

void CatalogueChoice::add(CataloguePtr catalogue) { put({std::move(catalogue), {}}); }

void CatalogueChoice::put(Entry entry) {
  m_entries.push_back(std::move(entry));
  m_current = int(m_entries.size()) - 1;
  fill();
  useCatalogue(catalogue());
  emit catalogueChanged();
}

tl::expected<void, InputError> CatalogueChoice::open(const QString& fileName) {
  auto catalogue = openCatalogue(m_kind, fileName);
  if (!catalogue) return tl::unexpected(catalogue.error());
  const QString file = QFileInfo(fileName).absoluteFilePath();
  rememberCatalogue(m_kind, file);
  std::erase_if(m_entries, [&](const Entry& one) { return one.file == file; });
  put({std::move(*catalogue), file});
  return {};
}

void CatalogueChoice::askFile() {
  m_choice->setCurrentIndex(m_current);
  const QString fileName = QFileDialog::getOpenFileName(this, kindName(m_kind), {},
                                                        tr("Tables (*.csv *.txt);;All files (*)"));
  if (fileName.isEmpty()) return;
  const auto done = open(fileName);
  emit refused(done ? QString() : QString::fromStdString(describe(done.error())));
}

void CatalogueChoice::edit() {
  auto* dialog = new CatalogueDialog(catalogue(), this);
  dialog->setAttribute(Qt::WA_DeleteOnClose);
  connect(dialog, &CatalogueDialog::catalogueTaken, this, &CatalogueChoice::add);
  dialog->show();
}

}  // namespace jw

#include "widgets/panels/catalogue_choice.h"

#include <QFileDialog>
#include <QHBoxLayout>
#include <QSignalBlocker>

#include "widgets/inputs/choice_box.h"
#include "widgets/panels/catalogue_dialog.h"

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
  m_catalogues.push_back(bundledCatalogue(kind));
  fill();
  connect(m_choice, &QComboBox::activated, this, &CatalogueChoice::choose);
  connect(edit, &QToolButton::clicked, this, &CatalogueChoice::edit);
}

void CatalogueChoice::fill() {
  const QSignalBlocker quiet(m_choice);
  m_choice->clear();
  for (const CataloguePtr& one : m_catalogues) {
    m_choice->addItem(catalogueName(*one) + QStringLiteral(": ") + catalogueCount(*one));
  }
  m_choice->addItem(tr("Open CSV…"));
  m_choice->setCurrentIndex(m_current);
}

void CatalogueChoice::choose(int index) {
  if (index >= int(m_catalogues.size())) return askFile();
  if (index == m_current) return;
  m_current = index;
  emit catalogueChanged();
}

void CatalogueChoice::add(CataloguePtr catalogue) {
  m_catalogues.push_back(std::move(catalogue));
  m_current = int(m_catalogues.size()) - 1;
  fill();
  emit catalogueChanged();
}

tl::expected<void, InputError> CatalogueChoice::open(const QString& fileName) {
  auto catalogue = openCatalogue(m_kind, fileName);
  if (!catalogue) return tl::unexpected(catalogue.error());
  add(std::move(*catalogue));
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

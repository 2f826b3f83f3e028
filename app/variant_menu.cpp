#include "app/variant_menu.h"

#include "app/main_window.h"
#include "app/variant_edits.h"

namespace jw {

VariantMenu::VariantMenu(MainWindow& window, QWidget* parent)
    : QMenu(tr("&Variant"), parent), window_(window) {
  setObjectName("menu.variant");
  connect(this, &QMenu::aboutToShow, this, &VariantMenu::fill);
}

void VariantMenu::fill() {
  clear();
  addVariants();
  addSeparator();
  addAction(tr("&Duplicate"), this, [this] {
    window_.applyEdit(duplicateVariant(freeVariantName(*window_.document().project())));
  });
  addAction(tr("&Rename…"), this, &VariantMenu::rename);
  addAction(tr("R&emove"), this, &VariantMenu::remove)
      ->setEnabled(window_.document().project()->variants.size() > 1);
}

void VariantMenu::addVariants() {
  const Project& project = *window_.document().project();
  for (std::size_t k = 0; k < project.variants.size(); ++k) {
    const QString name = QString::fromStdString(project.variants[k].name);
    const int index = static_cast<int>(k);
    QAction* action = addAction(QString(name).replace('&', "&&"), this, [this, index, name] {
      window_.applyEdit(chooseVariant(index, name));
    });
    action->setCheckable(true);
    action->setChecked(index == project.activeVariant);
  }
}

void VariantMenu::rename() {
  const QString current = QString::fromStdString(window_.document().project()->active().name);
  const QString name = window_.prompts().askName(&window_, tr("Rename the variant"), current);
  if (!name.isEmpty()) window_.applyEdit(renameVariant(name));
}

void VariantMenu::remove() {
  const QString name = QString::fromStdString(window_.document().project()->active().name);
  if (window_.prompts().askRemove(&window_, tr("variant %1").arg(name))) {
    window_.applyEdit(removeVariant());
  }
}

}  // namespace jw

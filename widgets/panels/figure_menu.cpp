#include "widgets/panels/figure_menu.h"

#include "widgets/theme/number_text.h"

namespace jw {
namespace {

/// "joint.torque_peak" -> "Joint".
QString familyTitle(const QString& id) {
  QString family = id.section(u'.', 0, 0);
  if (family == QStringLiteral("mix")) family = QStringLiteral("day");
  family[0] = family[0].toUpper();
  return family;
}

}  // namespace

FigureMenu::FigureMenu(QWidget* parent) : QMenu(parent) {
  setObjectName(QStringLiteral("working.figures.menu"));
}

QMenu* FigureMenu::familyOf(const QString& id) {
  const QString name = QStringLiteral("figures.") + familyTitle(id);
  if (auto* known = findChild<QMenu*>(name, Qt::FindDirectChildrenOnly)) return known;
  auto* menu = addMenu(u'&' + familyTitle(id));
  menu->setObjectName(name);
  return menu;
}

void FigureMenu::showFigures(const Evaluation* evaluation) {
  clear();
  qDeleteAll(findChildren<QMenu*>(QString(), Qt::FindDirectChildrenOnly));
  if (!evaluation) return;
  for (const NamedQuantity& figure : evaluation->quantities) {
    const QString id = QString::fromUtf8(figure.id.data(), qsizetype(figure.id.size()));
    const QString label = QString::fromUtf8(figure.label.data(), qsizetype(figure.label.size()));
    const QString value = quantityText(figure.value, figure.quantity, figure.unit, 4);
    QAction* action = familyOf(id)->addAction(label + u'\t' + value);
    action->setObjectName(id);
    connect(action, &QAction::triggered, this, [this, id] { emit figureChosen(id); });
  }
}

}  // namespace jw

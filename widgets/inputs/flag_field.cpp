#include "widgets/inputs/flag_field.h"

namespace jw {

FlagField::FlagField(const FieldInfo& info, const QString& path, QWidget* parent)
    : QCheckBox(tr("no"), parent), FieldEditor(info, path) {
  connect(this, &QCheckBox::toggled, this, [this](bool on) { setText(on ? tr("yes") : tr("no")); });
  connect(this, &QCheckBox::clicked, this, [this](bool on) {
    link_.beginGesture();
    link_.send(on ? QStringLiteral("yes") : QStringLiteral("no"));
  });
}

void FlagField::showField(const FieldRef& field) { setChecked(field.number() != 0); }

}  // namespace jw

#include "widgets/inputs/choice_field.h"

#include <QFocusEvent>

#include "widgets/inputs/field_text.h"

namespace jw {
ChoiceField::ChoiceField(const FieldInfo& info, const QString& path, QWidget* parent)
    : ChoiceBox(parent), FieldEditor(info, path) {
  for (const ChoiceItem& item : info.choices) {
    addItem(toQString(item.label), toQString(item.key));
  }
  setMaxVisibleItems(12);
  connect(this, &QComboBox::activated, this, &ChoiceField::sendChoice);
}

void ChoiceField::showField(const FieldRef& field) {
  model_ = static_cast<int>(field.number());
  if (model_ != currentIndex()) setCurrentIndex(model_);
}

void ChoiceField::sendChoice(int index) {
  if (index == model_) return;
  model_ = index;
  link_.send(itemData(index).toString());
}

QSize ChoiceField::minimumSizeHint() const { return {100, QComboBox::minimumSizeHint().height()}; }

void ChoiceField::focusOutEvent(QFocusEvent* event) {
  if (event->reason() != Qt::PopupFocusReason) link_.beginGesture();
  QComboBox::focusOutEvent(event);
}

}  // namespace jw

#include "widgets/inputs/choice_field.h"

#include <QFocusEvent>
#include <QStylePainter>
#include <QWheelEvent>

#include "widgets/inputs/field_text.h"

namespace jw {
namespace {

constexpr int kArrowRoom = 20;  // px

}  // namespace

ChoiceField::ChoiceField(const FieldInfo& info, const QString& path, QWidget* parent)
    : QComboBox(parent), FieldEditor(info, path) {
  for (const ChoiceItem& item : info.choices) {
    addItem(toQString(item.label), toQString(item.key));
  }
  setFocusPolicy(Qt::StrongFocus);
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

/// As QComboBox, but a label that does not fit ends in an ellipsis, and the arrow is the theme's.
void ChoiceField::paintEvent(QPaintEvent*) {
  QStylePainter painter(this);
  QStyleOptionComboBox option;
  initStyleOption(&option);
  const QRect room =
      style()->subControlRect(QStyle::CC_ComboBox, &option, QStyle::SC_ComboBoxEditField, this);
  option.currentText = fontMetrics().elidedText(option.currentText, Qt::ElideRight, room.width());
  painter.drawComplexControl(QStyle::CC_ComboBox, option);
  painter.drawControl(QStyle::CE_ComboBoxLabel, option);
  option.rect = QRect(width() - kArrowRoom, 0, kArrowRoom, height());
  painter.drawPrimitive(QStyle::PE_IndicatorArrowDown, option);
}

void ChoiceField::wheelEvent(QWheelEvent* event) {
  if (!hasFocus()) return event->ignore();
  QComboBox::wheelEvent(event);
}

void ChoiceField::focusOutEvent(QFocusEvent* event) {
  if (event->reason() != Qt::PopupFocusReason) link_.beginGesture();
  QComboBox::focusOutEvent(event);
}

}  // namespace jw

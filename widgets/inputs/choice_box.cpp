#include "widgets/inputs/choice_box.h"

#include <QStylePainter>
#include <QWheelEvent>

namespace jw {
namespace {

constexpr int kArrowRoom = 20;  // px

}  // namespace

ChoiceBox::ChoiceBox(QWidget* parent) : QComboBox(parent) { setFocusPolicy(Qt::StrongFocus); }

void ChoiceBox::paintEvent(QPaintEvent*) {
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

void ChoiceBox::wheelEvent(QWheelEvent* event) {
  if (!hasFocus()) return event->ignore();
  QComboBox::wheelEvent(event);
}

}  // namespace jw

#include "widgets/cycle/field_cell_delegate.h"

#include <QAbstractItemView>
#include <QApplication>
#include <QComboBox>
#include <QKeyEvent>
#include <QTimer>

#include "widgets/cycle/field_table_model.h"
#include "widgets/inputs/field_editor.h"

namespace jw {
namespace {

const FieldTableModel& modelOf(const QModelIndex& index) {
  return static_cast<const FieldTableModel&>(*index.model());
}

FieldEditor* editorOf(QWidget* widget) { return dynamic_cast<FieldEditor*>(widget); }

}  // namespace

QWidget* FieldCellDelegate::createEditor(QWidget* parent, const QStyleOptionViewItem&,
                                         const QModelIndex& index) const {
  auto& model = const_cast<FieldTableModel&>(modelOf(index));
  if (const auto flipped = model.flip(index)) {
    emit model.editRequested(*flipped);
    return nullptr;
  }
  const auto field = model.fieldAt(index);
  if (!field) return nullptr;
  FieldEditor* editor = makeEditor(*field->info, QString::fromStdString(field->path), parent);
  QWidget* widget = editor->widget();
  widget->setObjectName("cell." + widget->objectName());
  connect(&editor->link(), &FieldLink::editRequested, &model, &FieldTableModel::editRequested);
  connect(this, &FieldCellDelegate::refused, &model, &FieldTableModel::entryRefused,
          Qt::UniqueConnection);
  connect(&editor->link(), &FieldLink::entryChanged, &model,
          [&model, editor] { emit model.entryRefused(editor->wrongEntry()); });
  connectChoice(widget);
  return widget;
}

/// A list opens at once and closes with the choice.
void FieldCellDelegate::connectChoice(QWidget* editor) const {
  auto* box = qobject_cast<QComboBox*>(editor);
  if (box == nullptr) return;
  QTimer::singleShot(0, box, &QComboBox::showPopup);
  auto* self = const_cast<FieldCellDelegate*>(this);
  connect(box, &QComboBox::activated, self, [self, box] { self->closeSoon(box); });
}

void FieldCellDelegate::setEditorData(QWidget* widget, const QModelIndex& index) const {
  const auto field = modelOf(index).fieldAt(index);
  if (FieldEditor* editor = editorOf(widget); editor != nullptr && field) editor->showField(*field);
}

void FieldCellDelegate::updateEditorGeometry(QWidget* editor, const QStyleOptionViewItem& option,
                                             const QModelIndex&) const {
  QRect place = option.rect;
  const QRect room = editor->parentWidget()->rect();
  place.setWidth(std::max(place.width(), std::min(editor->minimumSizeHint().width(), 130)));
  if (place.right() > room.right()) place.moveRight(room.right());
  editor->setGeometry(place);
}

/// The editor takes Escape itself, to go back to what was there; then it goes. One that holds what
/// cannot be read stays open under Enter and Tab, and goes back when it is left.
bool FieldCellDelegate::eventFilter(QObject* watched, QEvent* event) {
  auto* widget = static_cast<QWidget*>(watched);
  const FieldEditor* editor = editorOf(widget);
  const bool wrong = editor != nullptr && !editor->wrongEntry().isEmpty();
  if (event->type() == QEvent::FocusOut && wrong && QApplication::activePopupWidget() == nullptr) {
    goBack(widget);
  } else if (event->type() == QEvent::KeyPress) {
    const int key = static_cast<QKeyEvent*>(event)->key();
    if (key == Qt::Key_Escape) {
      closeSoon(widget);
      return false;
    }
    const bool leaves = key == Qt::Key_Return || key == Qt::Key_Enter || key == Qt::Key_Tab ||
                        key == Qt::Key_Backtab;
    if (leaves && wrong) return key == Qt::Key_Tab || key == Qt::Key_Backtab;
  }
  return QStyledItemDelegate::eventFilter(watched, event);
}

void FieldCellDelegate::closeSoon(QWidget* editor) {
  QTimer::singleShot(0, editor, [this, editor] {
    if (editor->isVisible()) emit closeEditor(editor, RevertModelCache);
  });
}

/// Gives up an entry that cannot be read, as Escape would, and says what was wrong with it.
void FieldCellDelegate::goBack(QWidget* widget) {
  FieldEditor* editor = editorOf(widget);
  const QString message = editor->wrongEntry();
  QKeyEvent escape(QEvent::KeyPress, Qt::Key_Escape, Qt::NoModifier);
  QApplication::sendEvent(widget, &escape);
  emit refused(message);
}

void FieldCellDelegate::initStyleOption(QStyleOptionViewItem* option,
                                        const QModelIndex& index) const {
  QStyledItemDelegate::initStyleOption(option, index);
  option->textElideMode = Qt::ElideRight;
}

}  // namespace jw

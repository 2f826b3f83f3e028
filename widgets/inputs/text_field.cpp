#include "widgets/inputs/text_field.h"

#include <QKeyEvent>

#include "widgets/inputs/field_text.h"
#include "widgets/inputs/window_undo.h"

namespace jw {

TextField::TextField(const FieldInfo& info, const QString& path, QWidget* parent)
    : QLineEdit(parent), FieldEditor(info, path) {
  setFocusPolicy(Qt::StrongFocus);
  setAcceptDrops(false);  // files dropped here are the window's
  connect(this, &QLineEdit::textEdited, this, &TextField::sendText);
}

void TextField::showField(const FieldRef& field) {
  const QString text = toQString(fieldText(field));
  if (text == model_) return;
  model_ = text;
  if (sent_.takeEcho(text)) return;
  sent_.clear();
  setText(text);
  if (!hasFocus()) setCursorPosition(0);
  beginSession();
}

void TextField::sendText(const QString& text) {
  if (text == sent_.expected(model_)) return;
  sent_.add(text);
  link_.send(text);
}

void TextField::beginSession() {
  link_.beginGesture();
  before_ = sent_.expected(model_);
}

bool TextField::event(QEvent* event) {
  return leaveUndoToWindow(*event) || QLineEdit::event(event);
}

void TextField::keyPressEvent(QKeyEvent* event) {
  const int key = event->key();
  if (key == Qt::Key_Return || key == Qt::Key_Enter) return beginSession();
  if (isUndoOrRedo(*event)) return event->ignore();
  if (key != Qt::Key_Escape || text() == before_) return QLineEdit::keyPressEvent(event);
  setText(before_);
  sendText(before_);
}

void TextField::focusOutEvent(QFocusEvent* event) {
  QLineEdit::focusOutEvent(event);
  if (event->reason() != Qt::PopupFocusReason) beginSession();
}

}  // namespace jw

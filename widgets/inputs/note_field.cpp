#include "widgets/inputs/note_field.h"

#include <algorithm>

#include <QKeyEvent>
#include <QSignalBlocker>

#include "widgets/inputs/field_text.h"
#include "widgets/inputs/window_undo.h"

namespace jw {
namespace {

constexpr int kFewestLines = 2;
constexpr int kMostLines = 8;
constexpr int kFrame = 20;  // px, of borders, padding and document margin together

}  // namespace

NoteField::NoteField(const FieldInfo& info, const QString& path, QWidget* parent)
    : QPlainTextEdit(parent), FieldEditor(info, path) {
  setTabChangesFocus(true);
  setAcceptDrops(false);  // files dropped here are the window's
  setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
  setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Fixed);
  connect(this, &QPlainTextEdit::textChanged, this, &NoteField::sendText);
  fitHeight();
}

void NoteField::showField(const FieldRef& field) {
  const QString text = toQString(fieldText(field));
  if (text == model_) return;
  model_ = text;
  if (sent_.takeEcho(text)) return;
  sent_.clear();
  const QSignalBlocker quiet(this);
  setPlainText(text);
  link_.beginGesture();
  fitHeight();
}

void NoteField::sendText() {
  fitHeight();
  const QString text = toPlainText();
  if (text == sent_.expected(model_)) return;
  sent_.add(text);
  link_.send(text);
}

void NoteField::fitHeight() {
  // A plain-text document measures its height in lines.
  const int lines = static_cast<int>(document()->size().height());
  const int wanted =
      std::clamp(lines, kFewestLines, kMostLines) * fontMetrics().lineSpacing() + kFrame;
  if (wanted != height()) setFixedHeight(wanted);
}

bool NoteField::event(QEvent* event) {
  return leaveUndoToWindow(*event) || QPlainTextEdit::event(event);
}

void NoteField::keyPressEvent(QKeyEvent* event) {
  if (isUndoOrRedo(*event)) return event->ignore();
  QPlainTextEdit::keyPressEvent(event);
}

void NoteField::focusOutEvent(QFocusEvent* event) {
  QPlainTextEdit::focusOutEvent(event);
  if (event->reason() != Qt::PopupFocusReason) link_.beginGesture();
}

void NoteField::resizeEvent(QResizeEvent* event) {
  QPlainTextEdit::resizeEvent(event);
  fitHeight();
}

}  // namespace jw

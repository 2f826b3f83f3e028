// What is typed: reading it, sending it, marking it, taking it back.
#include "widgets/inputs/number_field.h"

#include <QFocusEvent>
#include <QKeyEvent>

#include "widgets/inputs/field_text.h"
#include "widgets/inputs/wrong_mark.h"

namespace jw {

NumberField::NumberField(const FieldInfo& info, const QString& path, QWidget* parent)
    : QLineEdit(parent), FieldEditor(info, path) {
  setAlignment(Qt::AlignRight | Qt::AlignVCenter);
  setFocusPolicy(Qt::StrongFocus);
  setAcceptDrops(false);  // files dropped here are the window's
  connect(this, &QLineEdit::textEdited, this, &NumberField::readEntry);
  connect(this, &QLineEdit::textChanged, this, &NumberField::updateUnit);
  updateHint();
  updateUnit();
}

/// Whether the project holds what it held; spares printing and reading numbers that did not change.
bool NumberField::isHeld(double value, const std::string& typed) const {
  const bool same = value == now_.value || (!isSet(value) && !isSet(now_.value));
  return same && typed == now_.typed;
}

void NumberField::showField(const FieldRef& field) {
  const auto& kept = field.structInfo->asWritten(field.owner).typed;
  const auto found = kept.find(std::string(info().key));
  const std::string typed = found == kept.end() ? std::string() : found->second;
  if (isHeld(field.number(), typed)) return;
  const QString text = toQString(fieldText(field));
  const bool changed = text != now_.text;
  now_ = {text, field.number(), typed};
  if (!changed) return;
  if (sent_.takeEcho(text)) {
    // What stands in the field is that text or a later one.
    if (!editing_ && wrong_.isEmpty()) showAtRest();
    return updateUnit();
  }
  sent_.clear();
  markWrong({}, true);
  editing_ ? showWhole() : showAtRest();
  beginSession();
}

void NumberField::readEntry(const QString& text) {
  if (step_ != 0) beginSession();
  const auto value = readField(info(), text.toStdString());
  if (!value) return markWrong(errorText(value.error()), false);
  markWrong({}, true);
  if (text.trimmed() != sent_.expected(now_.text)) sendText(text.trimmed());
}

void NumberField::sendText(const QString& text) {
  sent_.add(text);
  link_.send(text);
}

void NumberField::markWrong(const QString& message, bool settled) {
  const bool changed = message != wrong_;
  wrong_ = message;
  if (changed) setWrongMark(*this, info(), message);
  if (changed || (settled && !message.isEmpty())) emit link_.entryChanged(settled);
}

void NumberField::beginSession() {
  link_.beginGesture();
  before_ = now_;
  step_ = 0;
  wheel_ = 0;
}

void NumberField::commit() {
  if (!wrong_.isEmpty()) return markWrong(wrong_, true);
  beginSession();
  selectAll();
}

/// Goes back to what the field held when this stay began; false when there is nothing to undo.
bool NumberField::restore() {
  if (!wrong_.isEmpty()) markWrong({}, true);
  const bool sent = now_.text != before_.text || !sent_.empty();
  if (!sent && text() == before_.text) return false;
  replaceText(before_.text);
  if (sent && before_.typed.empty()) sendUntyped(before_.value);
  if (sent && !before_.typed.empty()) sendText(before_.text);
  selectAll();
  return true;
}

void NumberField::discardEntry() {
  if (wrong_.isEmpty()) return;
  markWrong({}, true);
  editing_ ? showWhole() : showAtRest();
}

void NumberField::clearValue() {
  beginSession();
  markWrong({}, true);
  sendUntyped(info().defaultValue);
  beginSession();
}

/// Sends a value with no text to keep; the field shows what the project then says.
void NumberField::sendUntyped(double value) {
  sent_.clear();
  link_.sendUntyped(value);
}

void NumberField::showInUnit(const QString& unit) {
  beginSession();
  const QString text = textInUnit(info(), now_.text, unit.toStdString());
  markWrong({}, true);
  replaceText(text);
  if (text != now_.text) sendText(text);
  beginSession();
}

void NumberField::focusInEvent(QFocusEvent* event) {
  if (!editing_) {
    editing_ = true;
    if (wrong_.isEmpty()) showWhole();
    beginSession();
  }
  QLineEdit::focusInEvent(event);
}

void NumberField::focusOutEvent(QFocusEvent* event) {
  QLineEdit::focusOutEvent(event);
  const auto reason = event->reason();
  if (reason == Qt::PopupFocusReason || reason == Qt::ActiveWindowFocusReason) return;
  editing_ = false;
  beginSession();
  wrong_.isEmpty() ? showAtRest() : markWrong(wrong_, true);
}

}  // namespace jw

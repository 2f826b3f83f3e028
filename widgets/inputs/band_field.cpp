#include "widgets/inputs/band_field.h"

#include <QFocusEvent>
#include <QKeyEvent>

#include "core/model/band.h"
#include "widgets/inputs/field_text.h"
#include "widgets/inputs/window_undo.h"
#include "widgets/inputs/wrong_mark.h"

namespace jw {

BandField::BandField(FieldLink& link, QWidget* parent) : QLineEdit(parent), link_(link) {
  const QString label = toQString(link.info().label);
  setObjectName(link.path() + ".band");
  setAccessibleName(tr("Tolerance band of %1").arg(lowerFirst(label)));
  setToolTip(toQString(std::string("How far the value may be off: ") + kBandExample));
  setPlaceholderText(QStringLiteral("± 5 %"));
  setAlignment(Qt::AlignRight | Qt::AlignVCenter);
  setFocusPolicy(Qt::StrongFocus);
  setAcceptDrops(false);  // files dropped here are the window's
  connect(this, &QLineEdit::textEdited, this, &BandField::readEntry);
}

void BandField::showField(const FieldRef& field) {
  const QString text = toQString(bandText(field));
  if (text == model_) return;
  model_ = text;
  if (sent_.takeEcho(text)) return;
  sent_.clear();
  markWrong({}, true);
  setText(text);
  setCursorPosition(0);
  beginSession();
}

void BandField::readEntry(const QString& text) {
  const QString band = text.trimmed();
  const auto read = readBand(link_.info(), band.toStdString());
  if (!band.isEmpty() && !read) return markWrong(errorText(read.error()), false);
  markWrong({}, true);
  sendText(band);
}

void BandField::sendText(const QString& text) {
  if (text == sent_.expected(model_)) return;
  sent_.add(text);
  link_.sendBand(text);
}

void BandField::markWrong(const QString& message, bool settled) {
  const bool changed = message != wrong_;
  wrong_ = message;
  if (changed) setWrongMark(*this, link_.info(), message);
  if (changed || (settled && !message.isEmpty())) emit entryChanged(settled);
}

void BandField::discardEntry() {
  if (wrong_.isEmpty()) return;
  markWrong({}, true);
  setText(sent_.expected(model_));
}

void BandField::beginSession() {
  link_.beginGesture();
  before_ = sent_.expected(model_);
}

bool BandField::event(QEvent* event) {
  if (wrong_.isEmpty() && leaveUndoToWindow(*event)) return true;
  return QLineEdit::event(event);
}

void BandField::keyPressEvent(QKeyEvent* event) {
  const int key = event->key();
  if (key == Qt::Key_Return || key == Qt::Key_Enter)
    return wrong_.isEmpty() ? beginSession() : markWrong(wrong_, true);
  if (isUndoOrRedo(*event)) return wrong_.isEmpty() ? event->ignore() : discardEntry();
  if (key != Qt::Key_Escape || text() == before_) return QLineEdit::keyPressEvent(event);
  markWrong({}, true);
  setText(before_);
  sendText(before_);
}

void BandField::focusInEvent(QFocusEvent* event) {
  QLineEdit::focusInEvent(event);
  beginSession();
}

void BandField::focusOutEvent(QFocusEvent* event) {
  QLineEdit::focusOutEvent(event);
  const auto reason = event->reason();
  if (reason == Qt::PopupFocusReason || reason == Qt::ActiveWindowFocusReason) return;
  beginSession();
  if (!wrong_.isEmpty()) markWrong(wrong_, true);
  emit left();
}

}  // namespace jw

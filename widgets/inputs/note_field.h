#pragma once

#include <QPlainTextEdit>

#include "widgets/inputs/field_editor.h"
#include "widgets/inputs/sent_texts.h"

namespace jw {

/// Editor of a note of several lines; it grows with them up to a limit. Tab leaves it. Undo and
/// redo go to the window; one stay in the field is one gesture.
class NoteField : public QPlainTextEdit, public FieldEditor {
  Q_OBJECT

 public:
  NoteField(const FieldInfo& info, const QString& path, QWidget* parent = nullptr);

  QWidget* widget() override { return this; }
  void showField(const FieldRef& field) override;

 protected:
  bool event(QEvent* event) override;
  void keyPressEvent(QKeyEvent* event) override;
  void focusOutEvent(QFocusEvent* event) override;
  void resizeEvent(QResizeEvent* event) override;

 private:
  void sendText();
  void fitHeight();

  QString model_;
  SentTexts sent_;
};

}  // namespace jw

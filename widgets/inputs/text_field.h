#pragma once

#include <QLineEdit>

#include "widgets/inputs/field_editor.h"
#include "widgets/inputs/sent_texts.h"

namespace jw {

/// Editor of a name or title, one line. Undo and redo go to the window; one stay in the field is
/// one gesture; Escape goes back to what it was.
class TextField : public QLineEdit, public FieldEditor {
  Q_OBJECT

 public:
  TextField(const FieldInfo& info, const QString& path, QWidget* parent = nullptr);

  QWidget* widget() override { return this; }
  void showField(const FieldRef& field) override;

 protected:
  bool event(QEvent* event) override;
  void keyPressEvent(QKeyEvent* event) override;
  void focusOutEvent(QFocusEvent* event) override;

 private:
  void sendText(const QString& text);
  void beginSession();

  QString model_;
  QString before_;
  SentTexts sent_;
};

}  // namespace jw

#pragma once

#include <QTimer>
#include <QWidget>

#include "widgets/inputs/field_editor.h"

class QGridLayout;
class QLabel;

namespace jw {

/// One line of a form: trade name, symbol, editor, and below them what is wrong with the entry. The
/// message waits for a pause in typing, so that the form does not jump on every half-typed unit.
class FieldRow : public QWidget {
  Q_OBJECT

 public:
  FieldRow(const FieldInfo& info, const QString& path, QWidget* parent = nullptr);

  FieldEditor& editor() { return *editor_; }
  const FieldEditor& editor() const { return *editor_; }

  /// Shows the field, or hides the row when the owner's other values make it meaningless.
  void showField(const FieldRef& field);
  bool isWrong() const { return !editor_->wrongEntry().isEmpty(); }

 signals:
  void wrongChanged();

 private:
  void place(QGridLayout& grid, QLabel* label, QLabel* symbol);
  void entryChanged(bool settled);
  void showMessage();

  FieldEditor* editor_;
  QLabel* message_ = nullptr;  ///< made when first needed
  QTimer pause_;
};

}  // namespace jw

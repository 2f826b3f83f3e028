#pragma once

#include <QTimer>
#include <QWidget>

#include "widgets/inputs/field_editor.h"

class QGridLayout;
class QLabel;

namespace jw {

class BandField;

/// One line of a form: trade name, symbol, editor; below them the tolerance band if the number has
/// one or it is asked for, and what is wrong with the entry. The message waits for a pause in
/// typing, so that the form does not jump on every half-typed unit.
class FieldRow : public QWidget {
  Q_OBJECT

 public:
  FieldRow(const FieldInfo& info, const QString& path, QWidget* parent = nullptr);

  FieldEditor& editor() { return *editor_; }
  const FieldEditor& editor() const { return *editor_; }

  /// Shows the field, or hides the row when the owner's other values make it meaningless.
  void showField(const FieldRef& field);
  bool isWrong() const { return !wrongEntry().isEmpty(); }
  /// Gives up a wrong entry, of the number or of its band.
  void discardEntry();

 signals:
  void wrongChanged();

 private:
  void place(QGridLayout& grid, QLabel* label, QLabel* symbol);
  void entryChanged(bool settled);
  void showMessage();
  QString wrongEntry() const;
  void showBand(const FieldRef& field);
  void makeBand();
  void askForBand();

  FieldEditor* editor_;
  QWidget* bandLine_ = nullptr;  ///< made when first needed
  BandField* band_ = nullptr;
  QLabel* message_ = nullptr;  ///< made when first needed
  QTimer pause_;
};

}  // namespace jw

#pragma once

#include <QLineEdit>

#include "widgets/inputs/field_editor.h"
#include "widgets/inputs/sent_texts.h"

namespace jw {

/// Editor of how far a number may be off, "± 5 %" (core/model/band.h). What can be read is sent as
/// it is typed; one stay in the field is one gesture; Escape goes back to what it was; left empty
/// it takes the band away. Undo and redo go to the window.
class BandField : public QLineEdit {
  Q_OBJECT

 public:
  /// Sends through the link of the number's own editor.
  BandField(FieldLink& link, QWidget* parent = nullptr);

  void showField(const FieldRef& field);
  /// What is wrong with the entry and what would be right; empty when it is right.
  const QString& wrongEntry() const { return wrong_; }
  /// Gives up a wrong entry and shows the band in force.
  void discardEntry();
  /// Whether it says nothing and nobody is about to.
  bool isIdle() const { return !hasFocus() && text().isEmpty() && model_.isEmpty(); }

 signals:
  void entryChanged(bool settled);  ///< became wrong or right
  void left();                      ///< the person is done with it

 protected:
  bool event(QEvent* event) override;
  void keyPressEvent(QKeyEvent* event) override;
  void focusInEvent(QFocusEvent* event) override;
  void focusOutEvent(QFocusEvent* event) override;

 private:
  void readEntry(const QString& text);
  void sendText(const QString& text);
  void markWrong(const QString& message, bool settled);
  void beginSession();

  FieldLink& link_;
  QString model_;
  QString before_;
  QString wrong_;
  SentTexts sent_;
};

}  // namespace jw

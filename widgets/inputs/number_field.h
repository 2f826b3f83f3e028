#pragma once

#include <QLineEdit>

#include "widgets/inputs/field_editor.h"
#include "widgets/inputs/sent_texts.h"

namespace jw {

/// Editor of a number with its unit. At rest it shows the number as typed and the unit in a lighter
/// tone; while editing, the whole text. Every readable state of the text is sent at once; one
/// stay in the field is one gesture, and so is one run of arrow keys or wheel steps.
///
/// Undo: the field takes Ctrl+Z only while it holds text that cannot be read, and then gives up
/// that text. Otherwise neither undo nor redo is taken, so that the window's actions get them.
class NumberField : public QLineEdit, public FieldEditor {
  Q_OBJECT

 public:
  NumberField(const FieldInfo& info, const QString& path, QWidget* parent = nullptr);

  QWidget* widget() override { return this; }
  void showField(const FieldRef& field) override;
  QString wrongEntry() const override { return wrong_; }
  void discardEntry() override;
  void setNeeded(bool needed) override;

  /// The unit shown in a lighter tone; empty while the text names its own.
  QString shownUnit() const { return unit_; }
  QSize sizeHint() const override;
  QSize minimumSizeHint() const override;

 public slots:
  /// Writes the value in another unit; the value stays.
  void showInUnit(const QString& unit);
  /// Leaves the field without a value, or with the catalogue's default where it has one.
  void clearValue();

 protected:
  bool event(QEvent* event) override;
  void keyPressEvent(QKeyEvent* event) override;
  void wheelEvent(QWheelEvent* event) override;
  void focusInEvent(QFocusEvent* event) override;
  void focusOutEvent(QFocusEvent* event) override;
  void paintEvent(QPaintEvent* event) override;
  void resizeEvent(QResizeEvent* event) override;
  void showEvent(QShowEvent* event) override;
  void contextMenuEvent(QContextMenuEvent* event) override;

 private:
  struct Held {  ///< what the project holds
    QString text;
    double value;
    std::string typed;  ///< text kept for it; empty when there is none
  };

  bool isHeld(double value, const std::string& typed) const;
  void readEntry(const QString& text);
  void sendText(const QString& text);
  void sendUntyped(double value);
  void markWrong(const QString& message, bool settled);
  void beginSession();
  void commit();
  bool restore();
  void nudge(double steps, Qt::KeyboardModifiers modifiers);
  void replaceText(const QString& text);
  void showAtRest();
  void showWhole();
  void updateUnit();
  void updateHint();
  bool takesUndo(const QKeyEvent& key) const;
  QMenu* makeMenu();
  QString toolTipText() const;
  int roomForText() const;

  Held now_{{}, kUnset, {}};
  Held before_{{}, kUnset, {}};  ///< when this gesture began: Escape goes back to it
  SentTexts sent_;
  QString wrong_;
  QString unit_;
  double step_ = 0;  ///< of the run of nudges under way; 0 = none
  int wheel_ = 0;    ///< turned, in eighths of a degree, less whole steps
  bool editing_ = false;
  bool needed_ = false;
};

}  // namespace jw

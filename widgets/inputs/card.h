#pragma once

#include <QFrame>

#include "widgets/inputs/form.h"
#include "widgets/inputs/list_plan.h"

class QGridLayout;
class QPushButton;
class QToolButton;

namespace jw {

class FoldHeader;

/// One item of a list: a heading that says the main things even when folded, buttons that act on
/// the whole item, and its form. With the heading focused, Alt+Up and Alt+Down move the item and
/// Delete removes it.
class Card : public QFrame {
  Q_OBJECT

 public:
  enum class Action { MoveUp, MoveDown, Duplicate, Remove, Open };

  /// A card for the item that `fields` belongs to; `plan` has to outlive it.
  Card(const ListPlan& plan, const FieldGroup& fields, int index, QWidget* parent = nullptr);

  /// Shows its item, one of `count`.
  void showItem(const FieldGroup& fields, int count);
  Form& form() { return *form_; }
  FoldHeader& header() { return *header_; }
  bool isExpanded() const;
  void setExpanded(bool expanded);
  /// The button for an action; null for those of the menu.
  QWidget* button(Action action) const;

 signals:
  void actionRequested(jw::Card::Action action);
  void editRequested(const jw::Edit& edit);
  void wrongChanged();
  void rowsChanged();  ///< rows of its form have been made

 protected:
  void keyPressEvent(QKeyEvent* event) override;

 private:
  QGridLayout* makeHeading();
  QWidget* makeBody();
  QToolButton* makeMoveButton(Action action);
  QToolButton* makeMenuButton();
  QString name(const char* part) const;

  const ListPlan& plan_;
  int index_;
  FoldHeader* header_;
  Form* form_;
  QToolButton* up_;
  QToolButton* down_;
  QPushButton* open_ = nullptr;  ///< only where the plan has one
};

}  // namespace jw

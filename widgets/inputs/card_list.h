#pragma once

#include <optional>
#include <vector>

#include <QWidget>

#include "widgets/inputs/card.h"

class QLabel;
class QMenu;
class QToolButton;
class QVBoxLayout;

namespace jw {

/// Stages, masses or moves as cards, in order, with a menu or a click for adding one. Cards belong
/// to places, not to items: when items move, cards show their new items in place, and what was
/// unfolded and had the focus moves along.
class CardList : public QWidget {
  Q_OBJECT

 public:
  explicit CardList(ListPlan plan, QWidget* parent = nullptr);

  const ListPlan& plan() const { return plan_; }
  void showItems(const ProjectFields& fields);
  const std::vector<Card*>& cards() const { return cards_; }
  QWidget* addButton() const;
  QString countText() const;  ///< "2 stages"; empty for none

 signals:
  void editRequested(const jw::Edit& edit);
  void wrongChanged();
  void rowsChanged();  ///< rows of its form have been made
  void openRequested(int index);
  void otherRequested();  ///< the plan's other way of adding
  /// Cards came or went.
  void cardsChanged();

 private:
  void addCard(const FieldGroup& fields);
  void dropLastCard();
  void setCount(const std::vector<FieldGroup>& items);
  void makeRoom(int index);
  void act(int index, Card::Action action);
  void requestMove(int index, int to, Card::Action action);
  void requestRemoval(int index);
  void requestAddition(const Edit& edit, int index);
  void offerAdding();
  QMenu* makeAddMenu();
  void discardEntries();

  ListPlan plan_;
  std::vector<Card*> cards_;
  QVBoxLayout* column_;
  QLabel* empty_;
  QToolButton* add_;
  std::optional<int> added_;  ///< place of an item that was asked for and is to be unfolded
};

}  // namespace jw

#include "widgets/inputs/card_list.h"

#include <QLabel>
#include <QMenu>
#include <QToolButton>
#include <QVBoxLayout>

#include "widgets/inputs/field_text.h"
#include "widgets/inputs/fold_header.h"

namespace jw {

CardList::CardList(ListPlan plan, QWidget* parent)
    : QWidget(parent),
      plan_(std::move(plan)),
      column_(new QVBoxLayout(this)),
      empty_(new QLabel(plan_.emptyText, this)),
      add_(new QToolButton(this)) {
  column_->setContentsMargins(0, 0, 0, 0);
  column_->setSpacing(6);
  empty_->setProperty("role", "muted");
  empty_->setWordWrap(true);
  add_->setProperty("role", "link");
  add_->setText("Add " + plan_.item);
  add_->setObjectName(plan_.path + ".add");
  add_->setAccessibleName("Add " + plan_.item);
  add_->setFocusPolicy(Qt::StrongFocus);
  offerAdding();
  column_->addWidget(empty_);
  column_->addWidget(add_, 0, Qt::AlignLeft);
}

QWidget* CardList::addButton() const { return add_; }

QString CardList::countText() const {
  const auto count = cards_.size();
  if (count == 0) return {};
  return QString("%1 %2").arg(count).arg(count == 1 ? plan_.item : plan_.items);
}

/// A menu of kinds, or one click where there is but one kind.
void CardList::offerAdding() {
  if (plan_.kindKey.empty()) {
    connect(add_, &QToolButton::clicked, this,
            [this] { requestAddition(plan_.add(0), static_cast<int>(cards_.size())); });
    return;
  }
  add_->setText(add_->text() + "…");
  add_->setPopupMode(QToolButton::InstantPopup);
  add_->setStyleSheet("QToolButton::menu-indicator { image: none; }");
  add_->setMenu(makeAddMenu());
}

QMenu* CardList::makeAddMenu() {
  auto* menu = new QMenu(add_);
  const auto choices = plan_.info->find(plan_.kindKey)->choices;
  for (std::size_t kind = 0; kind < choices.size(); ++kind) {
    menu->addAction(upperFirst(toQString(choices[kind].label)), this, [this, kind] {
      requestAddition(plan_.add(static_cast<int>(kind)), static_cast<int>(cards_.size()));
    });
  }
  if (plan_.otherText.isEmpty()) return menu;
  menu->addSeparator();
  QAction* other = menu->addAction(plan_.otherText, this, &CardList::otherRequested);
  other->setObjectName(plan_.path + ".other");
  return menu;
}

void CardList::showItems(const ProjectFields& fields) {
  const std::vector<FieldGroup> items = fields.items(plan_.path);
  const bool changed = items.size() != cards_.size();
  if (changed) setCount(items);
  for (std::size_t k = 0; k < cards_.size(); ++k) {
    cards_[k]->showItem(items[k], static_cast<int>(items.size()));
  }
  if (changed) emit cardsChanged();
}

void CardList::setCount(const std::vector<FieldGroup>& items) {
  discardEntries();
  const bool grew = items.size() > cards_.size();
  while (cards_.size() > items.size()) dropLastCard();
  while (cards_.size() < items.size()) addCard(items[cards_.size()]);
  empty_->setVisible(items.empty());
  if (grew && added_) makeRoom(*added_);
  added_.reset();
}

void CardList::addCard(const FieldGroup& fields) {
  const int index = static_cast<int>(cards_.size());
  auto* card = new Card(plan_, fields, index, this);
  connect(card, &Card::editRequested, this, &CardList::editRequested);
  connect(card, &Card::wrongChanged, this, &CardList::wrongChanged);
  connect(card, &Card::rowsChanged, this, &CardList::rowsChanged);
  connect(card, &Card::actionRequested, this,
          [this, index](Card::Action action) { act(index, action); });
  column_->insertWidget(index + 1, card);  // after the text for none
  cards_.push_back(card);
}

void CardList::dropLastCard() {
  Card* last = cards_.back();
  cards_.pop_back();
  column_->removeWidget(last);
  last->hide();
  last->deleteLater();  // it may be the sender of what led here
}

/// An item came in at `index`: what was unfolded from there on moves one place down.
void CardList::makeRoom(int index) {
  for (int k = static_cast<int>(cards_.size()) - 1; k > index; --k) {
    cards_[k]->setExpanded(cards_[k - 1]->isExpanded());
  }
  cards_[index]->setExpanded(true);
  cards_[index]->header().setFocus(Qt::OtherFocusReason);
}

void CardList::act(int index, Card::Action action) {
  switch (action) {
    case Card::Action::MoveUp: return requestMove(index, index - 1, action);
    case Card::Action::MoveDown: return requestMove(index, index + 1, action);
    case Card::Action::Duplicate: return requestAddition(plan_.duplicate(index), index + 1);
    case Card::Action::Remove: return requestRemoval(index);
    case Card::Action::Open: return emit openRequested(index);
  }
}

void CardList::requestMove(int index, int to, Card::Action action) {
  if (to < 0 || to >= static_cast<int>(cards_.size())) return;
  discardEntries();
  const bool byHeader = cards_[index]->header().hasFocus();
  emit editRequested(plan_.move(index, to));
  const bool unfolded = cards_[index]->isExpanded();
  cards_[index]->setExpanded(cards_[to]->isExpanded());
  cards_[to]->setExpanded(unfolded);
  QWidget* button = cards_[to]->button(action);
  QWidget* next = byHeader || !button->isEnabled() ? &cards_[to]->header() : button;
  next->setFocus(Qt::OtherFocusReason);
}

void CardList::requestRemoval(int index) {
  const int count = static_cast<int>(cards_.size());
  for (int k = index; k + 1 < count; ++k) cards_[k]->setExpanded(cards_[k + 1]->isExpanded());
  discardEntries();
  emit editRequested(plan_.remove(index));
  const int next = std::min(index, static_cast<int>(cards_.size()) - 1);
  QWidget* focus = next < 0 ? static_cast<QWidget*>(add_) : &cards_[next]->header();
  focus->setFocus(Qt::OtherFocusReason);
}

void CardList::requestAddition(const Edit& edit, int index) {
  added_ = index;
  emit editRequested(edit);
}

void CardList::discardEntries() {
  for (Card* card : cards_) card->form().discardEntries();
}

}  // namespace jw

#pragma once

#include <functional>

#include <QString>

#include "widgets/edit.h"
#include "widgets/inputs/field_group.h"

namespace jw {

/// Heading of a card: what it is and, below, the numbers that matter most.
struct CardText {
  QString title;
  QString remark;
};

/// What a list of cards knows of its items: stages, masses or moves.
struct ListPlan {
  QString path;       ///< "transmission": an item is path[index]
  QString item;       ///< "stage"
  QString items;      ///< "stages"
  QString earlier;    ///< where moving up goes: "toward the motor"
  QString later;      ///< "toward the joint"
  QString emptyText;  ///< shown instead of cards
  const StructInfo* info = nullptr;
  std::string_view kindKey;  ///< the choice that the menu for adding offers; empty = no menu
  QString openText;          ///< of the button that cards may have; empty = none

  QString otherText;         ///< of one more way of adding, which the window answers; empty = none

  std::function<Edit(int kind)> add;
  std::function<Edit(int index)> duplicate;
  std::function<Edit(int index)> remove;
  std::function<Edit(int from, int to)> move;
  std::function<CardText(const FieldGroup& fields, int index)> text;
  std::function<bool(const FieldGroup& fields)> opens;  ///< whether the card has the button
};

/// The transmission: stages from the motor to the joint.
ListPlan stagePlan();

/// What the joint carries beside link and payload.
ListPlan massPlan();

/// The duty cycle: moves one after the other.
ListPlan segmentPlan();

}  // namespace jw

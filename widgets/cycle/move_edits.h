#pragma once

#include <memory>
#include <vector>

#include "core/model/field_catalogue.h"
#include "widgets/cycle/moves_view.h"
#include "widgets/edit.h"

namespace jw {

/// Edits of the moves of the cycle shown; rows are indices into Cycle::segments. Each is one undo
/// step, unless it says that it has a gesture.
namespace moves {

/// Adds a move of this law behind `row` (-1 = at the start).
Edit add(int row, MotionLaw law);
Edit duplicate(const std::vector<int>& rows);
Edit remove(const std::vector<int>& rows);
/// Moves the rows, which stay together, up (-1) or down (+1) by one.
Edit shift(const std::vector<int>& rows, int by);
/// Switches the rows off, or on if all are off.
Edit switchOff(const Project& project, const std::vector<int>& rows);
/// Makes neighbouring rows a block of its own name, or takes them out if they are one.
Edit block(const Project& project, const std::vector<int>& rows);
/// By an angle or to one: the move stays the same, and what was not given is filled from it.
Edit flipAim(const MovesView& view, int row);
/// By a duration or by limits; the duration that was not given is filled from the move.
Edit flipTiming(const MovesView& view, int row);

/// What was there when the end of a move was taken hold of.
struct Grip {
  std::shared_ptr<const Project> project;
  int row = 0;
  double angleStep = 0;  ///< [rad] that a person can tell in the curve
  double timeStep = 0;   ///< [s]
  QString gesture;       ///< of this drag: all its edits are one undo step
};

bool canChangeAngle(const Segment& segment);
bool canChangeTime(const Segment& segment);
/// The end moved by an angle [rad] from where it was gripped; `keepRest`: the next move makes up
/// for it, so that what follows stays where it is.
Edit dragAngle(const Grip& grip, double change, bool keepRest);
/// The end moved by a time [s].
Edit dragTime(const Grip& grip, double change);

/// The text of a number after a drag: in the unit it was typed in, rounded to 1, 2 or 5 times a
/// power of ten not finer than `step` [internal unit].
QString draggedText(const FieldRef& field, double value, double step);

}  // namespace moves
}  // namespace jw

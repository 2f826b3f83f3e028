#pragma once

#include "widgets/edit.h"

namespace jw::mix {

// Edits of the cycles of the daily mix. Row 0 is the cycle shown, row k the k-th of otherCycles.

/// The cycle of a row; the row must exist.
const Cycle& cycleAt(const Project& project, int row);
/// "cycle" or "otherCycles[0]".
std::string pathAt(int row);
int rows(const Project& project);

/// Adds a copy of the cycle shown at the end.
Edit addCopy();
/// Removes a cycle; removing the one shown shows the next.
Edit remove(int row);
/// Shows another cycle: it changes places with the one shown.
Edit show(int row);

}  // namespace jw::mix

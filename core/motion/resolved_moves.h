#pragma once

#include <vector>

#include "core/model/cycle.h"
#include "core/motion/least_time.h"
#include "core/motion/motion_laws.h"
#include "core/quantity/quantity.h"

namespace jw {

/// A move as it runs: nothing left to be looked up or worked out.
struct ResolvedMove {
  std::size_t origin = 0;  ///< index into Cycle::segments
  MotionShape shape;       ///< law and travel [rad]
  double duration = 0;     ///< [s], above 0
};

/// The moves of a cycle in the order in which they run.
struct ResolvedCycle {
  std::vector<ResolvedMove> moves;   ///< never empty
  std::vector<InputError> warnings;  ///< what was given but cannot be used: a jerk limit for a law
                                     ///< of endless jerk, a count inside a block
};

/// Most moves of a cycle with all its repeats.
inline constexpr std::size_t kMostMoves = 100'000;

/// What limits a move by limits: its own, else the cycle's; infinity where neither is set.
MotionLimits limitsOf(const Segment& segment, const Cycle& cycle);

/// The cycle's moves one after the other: without the disabled ones; each as often as it repeats;
/// neighbours of one block name together, as often as the block's first move says; targets as
/// travel from where the joint then is; limits as the least duration within them (leastTime). A
/// move by limits that goes nowhere takes no time and is left out. `cycle` is taken as checked
/// (cycleInputError). Fails, naming the path, on limits that are needed and not set, on more than
/// kMostMoves moves and on a cycle that takes no time.
tl::expected<ResolvedCycle, InputError> resolveMoves(const Cycle& cycle);

/// One run of neighbouring moves that repeat together: a block, or a single move.
struct MoveGroup {
  std::size_t first = 0;  ///< index into Cycle::segments
  std::size_t last = 0;   ///< included
  int repeats = 1;
};

/// The groups of a cycle, in order, with its disabled moves.
std::vector<MoveGroup> moveGroups(const Cycle& cycle);

}  // namespace jw

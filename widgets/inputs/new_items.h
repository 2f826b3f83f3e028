#pragma once

#include "core/model/cycle.h"
#include "core/model/stage.h"

namespace jw {

/// A new stage of this family. What a data sheet has to say stays unset, so that checks ask for it;
/// given is only what the family implies: a coupling turns 1 : 1, and rolling elements set the life
/// exponent (10/3 for rollers, 3 for balls: ISO 281).
Stage newStage(StageFamily family);

/// A new move of this law, with travel and duration unset; a dwell travels nowhere.
Segment newSegment(MotionLaw law);

}  // namespace jw

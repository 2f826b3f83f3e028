#include "widgets/inputs/new_items.h"

namespace jw {

Stage newStage(StageFamily family) {
  Stage stage;
  stage.family = family;
  // Needle and cylindrical rollers carry planets and cycloidal discs: common practice, no source.
  const bool rollers = family == StageFamily::Planetary || family == StageFamily::Cycloidal;
  if (rollers) stage.lifeExponent = 10.0 / 3;
  if (family == StageFamily::Coupling) stage.ratio = 1;
  return stage;
}

Segment newSegment(MotionLaw law) {
  Segment segment;
  segment.law = law;
  if (law == MotionLaw::Dwell) segment.travel = 0;
  return segment;
}

}  // namespace jw

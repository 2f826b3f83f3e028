#include "core/physics/stage_parts.h"

namespace jw {

PartsData partsData(const Stage&) { return {}; }

std::optional<StageEfficiency> partsEfficiency(const Stage&) { return std::nullopt; }

GeometryConditions geometryConditions(const StageData&, double) { return {}; }

}  // namespace jw

#pragma once

#include <cstddef>

#include "core/model/field_catalogue.h"
#include "core/model/project.h"

namespace jw {

/// Most acceptances that a variant may list.
inline constexpr std::size_t kMostAcceptances = 1000;

bool operator==(const Acceptance& a, const Acceptance& b);

template <>
const StructInfo& structInfo<Acceptance>();

// Keeping acceptances with their stage when the list of stages changes. Each is told of the change
// that was made; `stage` and `to` are indices into the transmission.

/// After stage `stage` was taken out: its acceptances go with it, those behind move up.
void followRemovedStage(Variant& variant, int stage);
/// After a stage was put in at `stage`: the new one has no acceptances, those behind move down.
void followInsertedStage(Variant& variant, int stage);
/// After stages `stage` and `to` changed places.
void followSwappedStages(Variant& variant, int stage, int to);

}  // namespace jw

#pragma once

#include "core/model/field_catalogue.h"

namespace jw {

/// Choices that more than one struct offers.
inline constexpr ChoiceItem kCurrentMeasures[] = {{"rms", "A rms"}, {"peak", "A peak"}};

}  // namespace jw

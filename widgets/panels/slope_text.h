#pragma once

#include <QString>

#include "core/studies/sensitivity.h"
#include "widgets/theme/palette.h"

namespace jw {

/// Of how many inputs a margin tells that it depends on them.
inline constexpr std::size_t kMostInputs = 3;

/// "+1 % rotor inertia → +0.92 % · +1 % ratio → +2 %": the three inputs that a margin depends on
/// most, in points of margin per per cent of the input. At a corner both ways: "∓1 % payload →
/// +1.1 / 0 %".
/// Whose a field is is left out where its label alone is clear. Empty if nothing moves the margin.
QString dependsText(const Sensitivities& slopes, const MarginSlopes& check, const Project& project);

/// The same with what it means, as HTML; each input links to its field.
QString dependsHtml(const Sensitivities& slopes, const MarginSlopes& check, const Project& project,
                    const Palette& palette);

}  // namespace jw

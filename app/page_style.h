#pragma once

#include <QString>

#include "core/checks/check.h"

namespace jw {

/// The look of a printed page as a style sheet, for text of `pointSize`; one point is
/// `unitsPerPoint` px.
QString pageStyleSheet(int unitsPerPoint, double pointSize);

/// Shape and word of a state in its colour, light on white [HTML].
QString stateHtml(CheckState state);

}  // namespace jw

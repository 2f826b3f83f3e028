#pragma once

#include <QPainter>
#include <QString>

#include "core/checks/check.h"
#include "widgets/theme/palette.h"

namespace jw {

/// The hue of a verdict.
QColor stateColour(CheckState state, const Palette& palette);

/// Its shape in a box of `size` px about `centre`: disc holds, triangle close, square short, hollow
/// ring open.
void drawStateMark(QPainter& painter, CheckState state, const QPointF& centre, double size,
                   const Palette& palette);

/// The same shape as a character: ● ▲ ■ ○.
QString stateCharacter(CheckState state);

}  // namespace jw

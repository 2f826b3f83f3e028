#pragma once

#include <QString>

#include "core/checks/check.h"
#include "widgets/theme/palette.h"

namespace jw {

/// A check and how it came about, as HTML for the working panel. Typed symbols link to their
/// fields ("field:motor.rotorInertia").
QString workingHtml(const Check& check, const Working& working, const Palette& palette);

/// The same as Markdown, for notes and reports.
QString workingMarkdown(const Check& check, const Working& working);

/// The same as plain text: a line for each symbol, "T_h = S_h · |T_stat| / N = 0.871234 N·m", and
/// for demand and capacity likewise, with digits enough to compute them again.
QString workingPlain(const Check& check, const Working& working);

/// The working of a headline figure in the same three forms.
QString figureHtml(const Working& working, const Palette& palette);
QString figureMarkdown(const QString& title, const Working& working);
QString figurePlain(const QString& title, const Working& working);

/// The value of a symbol with its unit: "7 000 h".
QString symbolValue(const WorkingSymbol& symbol);

}  // namespace jw

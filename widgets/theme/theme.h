#pragma once

#include <QFont>

#include "widgets/theme/palette.h"

class QApplication;

namespace jw {

enum class ThemeKind { Light, Dark };

/// Gives the whole application this look: fonts, colours and style sheet. Every widget gets a
/// PaletteChange event. Widgets choose a variation by the dynamic property "role":
///   QFrame "panel"; QLabel "title", "muted", "unit", "symbol", "error"; QToolButton "section",
///   "link", "segment"; and QLineEdit or QComboBox "state" = "wrong".
void applyTheme(QApplication& app, ThemeKind kind);

ThemeKind currentTheme();

/// Colours of the current theme.
const Palette& palette();

/// Body text, 12 px; all digits are equally wide.
QFont bodyFont();
/// As bodyFont: every face of the application has figures of equal width.
QFont tabularFont();
/// Body text in semi-bold, for titles.
QFont titleFont();
/// Body text in another size [px].
QFont textFont(double pixelSize, QFont::Weight weight = QFont::Normal);

/// The look of `kind` as a Qt style sheet.
QString styleSheetOf(const Palette& palette);

}  // namespace jw

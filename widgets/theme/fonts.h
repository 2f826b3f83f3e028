#pragma once

#include <QByteArray>
#include <QString>

namespace jw {

/// Loads the faces of Inter that come with the program, once, and returns the family name under
/// which they are found. Without them the installed Inter, or the system's font, is taken.
const QString& applicationFamily();

/// An OpenType font with its tabular figures switched on for good and another family name.
/// Qt 6.4 cannot ask for OpenType features, so the character map names the glyphs that 'tnum' would
/// put in place. Contextual forms ('calt': raised colons, other hyphens and crosses between digits)
/// are left out. Both so that text in a PDF says which character each glyph is: a reader of it
/// knows only those of the character map. "Inter" in the name table becomes `family` (same length).
/// Returns empty data if `font` is no OpenType font with tabular figures and a full Unicode map.
QByteArray withTabularFigures(const QByteArray& font, const QString& family);

}  // namespace jw

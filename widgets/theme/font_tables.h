#pragma once

#include <map>
#include <optional>

#include <QByteArray>

namespace jw {

// Tables of an OpenType font ("OpenType specification" 1.9: Organization of an OpenType Font, cmap,
// GSUB). All numbers in them are big-endian; what reaches beyond the data reads as 0.

struct FontTable {
  qsizetype offset = 0;
  qsizetype length = 0;
};

/// Where the table `tag` ("cmap") lies; nothing if the font has none or it reaches beyond the end.
std::optional<FontTable> findFontTable(const QByteArray& font, const char* tag);

/// Glyph -> glyph of the single substitutions (lookup type 1) that the GSUB feature `tag` makes.
std::map<quint16, quint16> singleSubstitutions(const QByteArray& font, const char* tag);

/// The font with the GSUB feature `tag` out of use.
QByteArray withoutFeature(const QByteArray& font, const char* tag);

/// Character -> glyph of the full Unicode map (cmap format 12); empty if there is none.
std::map<quint32, quint32> characterMap(const QByteArray& font);

/// The font with `map` as its only character map. Under platform 0 too: without one a reader makes
/// up a map from the glyphs' names.
QByteArray withCharacterMap(const QByteArray& font, const std::map<quint32, quint32>& map);

}  // namespace jw

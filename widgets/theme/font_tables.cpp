#include "widgets/theme/font_tables.h"

#include <algorithm>
#include <vector>

#include <QtEndian>

namespace jw {
namespace {

quint16 word(const QByteArray& data, qsizetype at) {
  return at >= 0 && at + 2 <= data.size() ? qFromBigEndian<quint16>(data.constData() + at)
                                          : quint16{0};
}

quint32 longWord(const QByteArray& data, qsizetype at) {
  return at >= 0 && at + 4 <= data.size() ? qFromBigEndian<quint32>(data.constData() + at) : 0U;
}

void appendWord(QByteArray& data, quint16 value) {
  data.append(char(value >> 8)).append(char(value & 0xff));
}

void appendLong(QByteArray& data, quint32 value) {
  appendWord(data, quint16(value >> 16));
  appendWord(data, quint16(value & 0xffff));
}

void putLong(QByteArray& data, qsizetype at, quint32 value) {
  qToBigEndian(value, data.data() + at);
}

/// Offset of the 16-byte record of a table; -1 if there is none. 12 bytes of header go before them.
qsizetype tableRecord(const QByteArray& font, const char* tag) {
  for (int k = 0; k < word(font, 4); ++k) {
    const qsizetype record = 12 + 16 * k;
    if (font.mid(record, 4) == tag) return record;
  }
  return -1;
}

/// Glyphs of a Coverage table, in its order.
std::vector<quint16> coveredGlyphs(const QByteArray& font, qsizetype at) {
  std::vector<quint16> glyphs;
  const int count = word(font, at + 2);
  for (int k = 0; k < count; ++k) {
    if (word(font, at) == 1) {
      glyphs.push_back(word(font, at + 4 + 2 * k));
    } else {
      const qsizetype range = at + 4 + 6 * k;
      for (int glyph = word(font, range); glyph <= word(font, range + 2); ++glyph)
        glyphs.push_back(quint16(glyph));
    }
  }
  return glyphs;
}

/// SingleSubst, formats 1 (a difference) and 2 (a list).
void addSubstitutions(const QByteArray& font, qsizetype at, std::map<quint16, quint16>& all) {
  const int format = word(font, at);
  const auto glyphs = coveredGlyphs(font, at + word(font, at + 2));
  for (std::size_t k = 0; k < glyphs.size(); ++k) {
    if (format == 1) all[glyphs[k]] = quint16(glyphs[k] + word(font, at + 4));
    if (format == 2) all[glyphs[k]] = word(font, at + 6 + 2 * qsizetype(k));
  }
}

void addLookup(const QByteArray& font, qsizetype at, std::map<quint16, quint16>& all) {
  constexpr int kSingle = 1;
  if (word(font, at) != kSingle) return;
  for (int k = 0; k < word(font, at + 4); ++k)
    addSubstitutions(font, at + word(font, at + 6 + 2 * k), all);
}

/// Offset of the list of GSUB's features.
qsizetype featureList(const QByteArray& font, const FontTable& substitutions) {
  return substitutions.offset + word(font, substitutions.offset + 6);
}

/// Offsets of the records of a feature in that list, one for each script and language.
std::vector<qsizetype> featureRecords(const QByteArray& font, const char* tag) {
  std::vector<qsizetype> records;
  const auto table = findFontTable(font, "GSUB");
  if (!table) return records;
  const qsizetype list = featureList(font, *table);
  for (int k = 0; k < word(font, list); ++k) {
    const qsizetype record = list + 2 + 6 * k;
    if (font.mid(record, 4) == tag) records.push_back(record);
  }
  return records;
}

}  // namespace

std::optional<FontTable> findFontTable(const QByteArray& font, const char* tag) {
  const qsizetype record = tableRecord(font, tag);
  if (record < 0) return std::nullopt;
  const FontTable table{longWord(font, record + 8), longWord(font, record + 12)};
  if (table.offset + table.length > font.size()) return std::nullopt;
  return table;
}

std::map<quint16, quint16> singleSubstitutions(const QByteArray& font, const char* tag) {
  std::map<quint16, quint16> all;
  const auto table = findFontTable(font, "GSUB");
  if (!table) return all;
  const qsizetype lookups = table->offset + word(font, table->offset + 8);
  for (const qsizetype record : featureRecords(font, tag)) {
    const qsizetype feature = featureList(font, *table) + word(font, record + 4);
    for (int n = 0; n < word(font, feature + 2); ++n) {
      const int lookup = word(font, feature + 4 + 2 * n);
      addLookup(font, lookups + word(font, lookups + 2 + 2 * lookup), all);
    }
  }
  return all;
}

QByteArray withoutFeature(const QByteArray& font, const char* tag) {
  QByteArray changed = font;
  for (const qsizetype record : featureRecords(font, tag)) changed.replace(record, 4, "none");
  return changed;
}

std::map<quint32, quint32> characterMap(const QByteArray& font) {
  constexpr int kSegmented = 12;
  constexpr quint32 kMostGlyphs = 0x10000;
  std::map<quint32, quint32> map;
  const auto table = findFontTable(font, "cmap");
  if (!table) return map;
  for (int k = 0; k < word(font, table->offset + 2); ++k) {
    const qsizetype at = table->offset + longWord(font, table->offset + 4 + 8 * k + 4);
    if (word(font, at) != kSegmented) continue;
    for (quint32 g = 0; g < std::min(longWord(font, at + 12), kMostGlyphs); ++g) {
      const qsizetype group = at + 16 + 12 * qsizetype(g);
      const quint32 first = longWord(font, group);
      const quint32 count = std::min(longWord(font, group + 4) - first + 1, kMostGlyphs);
      for (quint32 n = 0; n < count; ++n) map[first + n] = longWord(font, group + 8) + n;
    }
    return map;
  }
  return map;
}

QByteArray withCharacterMap(const QByteArray& font, const std::map<quint32, quint32>& map) {
  QByteArray groups;
  quint32 count = 0;
  for (auto it = map.begin(); it != map.end(); ++count) {
    const auto first = it;
    auto last = it;
    while (++it != map.end() && it->first == last->first + 1 && it->second == last->second + 1)
      last = it;
    appendLong(groups, first->first);
    appendLong(groups, last->first);
    appendLong(groups, first->second);
  }
  QByteArray table;
  constexpr quint32 kBegin = 20;  // of the map, which the entries of both platforms share
  for (const int value : {0, 2, 0, 4}) appendWord(table, quint16(value));
  appendLong(table, kBegin);
  for (const int value : {3, 10}) appendWord(table, quint16(value));
  appendLong(table, kBegin);
  for (const int value : {12, 0}) appendWord(table, quint16(value));
  for (const quint32 value : {quint32(16 + groups.size()), 0U, count}) appendLong(table, value);
  table += groups;
  QByteArray changed = font;
  const qsizetype record = tableRecord(font, "cmap");
  if (record < 0) return font;
  changed.append(QByteArray(-changed.size() & 3, '\0'));  // tables begin at multiples of four
  putLong(changed, record + 8, quint32(changed.size()));
  putLong(changed, record + 12, quint32(table.size()));
  return changed + table;
}

}  // namespace jw

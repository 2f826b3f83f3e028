#include "widgets/theme/fonts.h"

#include <optional>

#include <QDirIterator>
#include <QFile>
#include <QFontDatabase>
#include <QtEndian>

namespace jw {
namespace {

struct TableRange {
  qsizetype offset;
  qsizetype length;
};

quint16 word(const QByteArray& data, qsizetype at) {
  return at + 2 <= data.size() ? qFromBigEndian<quint16>(data.constData() + at) : quint16{0};
}

quint32 longWord(const QByteArray& data, qsizetype at) {
  return at + 4 <= data.size() ? qFromBigEndian<quint32>(data.constData() + at) : 0U;
}

// OpenType 1.9, "Organization of an OpenType Font": 12 bytes of header, then 16 for each table.
std::optional<TableRange> findTable(const QByteArray& font, const char* tag) {
  for (int i = 0; i < word(font, 4); ++i) {
    const qsizetype record = 12 + 16 * i;
    if (font.mid(record, 4) != tag) continue;
    const TableRange range{longWord(font, record + 8), longWord(font, record + 12)};
    if (range.offset + range.length > font.size()) return std::nullopt;
    return range;
  }
  return std::nullopt;
}

// OpenType 1.9, GSUB header (offset of the feature list at byte 6) and FeatureList.
bool retagFeature(QByteArray& font, const char* from, const char* to) {
  const auto table = findTable(font, "GSUB");
  if (!table) return false;
  const qsizetype list = table->offset + word(font, table->offset + 6);
  bool found = false;
  for (int i = 0; i < word(font, list); ++i) {
    const qsizetype record = list + 2 + 6 * i;
    if (font.mid(record, 4) != from) continue;
    font.replace(record, 4, to);
    found = true;
  }
  return found;
}

QByteArray utf16(const QString& text) {
  QByteArray bytes;
  for (const QChar c : text) bytes.append(char(c.unicode() >> 8)).append(char(c.unicode() & 0xff));
  return bytes;
}

void renameFamily(QByteArray& font, const QString& from, const QString& to) {
  const auto table = findTable(font, "name");
  if (!table || from.size() != to.size()) return;
  QByteArray names = font.mid(table->offset, table->length);
  names.replace(utf16(from), utf16(to));
  names.replace(from.toLatin1(), to.toLatin1());
  font.replace(table->offset, table->length, names);
}

QString loadFace(const QString& fileName, const QString& family) {
  QFile file(fileName);
  if (!file.open(QIODevice::ReadOnly)) return {};
  const QByteArray data = withTabularFigures(file.readAll(), family);
  const int id = data.isEmpty() ? -1 : QFontDatabase::addApplicationFontFromData(data);
  return id < 0 ? QString() : QFontDatabase::applicationFontFamilies(id).value(0);
}

QString loadFaces() {
  QString family;
  QDirIterator faces(QStringLiteral(":/fonts"), {QStringLiteral("Inter-*.otf")});
  while (faces.hasNext()) {
    const QString loaded = loadFace(faces.next(), QStringLiteral("Jwtab"));
    if (!loaded.isEmpty()) family = loaded;
  }
  return family.isEmpty() ? QStringLiteral("Inter") : family;
}

}  // namespace

QByteArray withTabularFigures(const QByteArray& font, const QString& family) {
  QByteArray patched = font;
  if (!retagFeature(patched, "tnum", "rlig")) return {};
  renameFamily(patched, QStringLiteral("Inter"), family);
  return patched;
}

const QString& applicationFamily() {
  static const QString family = loadFaces();
  return family;
}

}  // namespace jw

#include "widgets/theme/fonts.h"

#include <QDirIterator>
#include <QFile>
#include <QFontDatabase>

#include "widgets/theme/font_tables.h"

namespace jw {
namespace {

QByteArray utf16(const QString& text) {
  QByteArray bytes;
  for (const QChar c : text) bytes.append(char(c.unicode() >> 8)).append(char(c.unicode() & 0xff));
  return bytes;
}

void renameFamily(QByteArray& font, const QString& from, const QString& to) {
  const auto table = findFontTable(font, "name");
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
  const auto tabular = singleSubstitutions(font, "tnum");
  auto map = characterMap(font);
  if (tabular.empty() || map.empty()) return {};
  for (auto& [character, glyph] : map) {
    const auto found = tabular.find(quint16(glyph));
    if (found != tabular.end()) glyph = found->second;
  }
  QByteArray patched = withoutFeature(withCharacterMap(font, map), "calt");
  renameFamily(patched, QStringLiteral("Inter"), family);
  return patched;
}

const QString& applicationFamily() {
  static const QString family = loadFaces();
  return family;
}

}  // namespace jw

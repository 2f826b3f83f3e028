#include "widgets/panels/catalogue_memory.h"

#include <QFileInfo>
#include <QSettings>

namespace jw {
namespace {

constexpr int kMost = 8;

QString keyOf(CatalogueKind kind) {
  switch (kind) {
    case CatalogueKind::Motors: return QStringLiteral("catalogues/motors");
    case CatalogueKind::Reducers: return QStringLiteral("catalogues/reducers");
    case CatalogueKind::Rules: break;
  }
  return QStringLiteral("catalogues/rules");
}

/// All but `fileName`.
QStringList others(CatalogueKind kind, const QString& fileName) {
  QStringList files = QSettings().value(keyOf(kind)).toStringList();
  files.removeAll(QFileInfo(fileName).absoluteFilePath());
  return files;
}

}  // namespace

QStringList rememberedCatalogues(CatalogueKind kind) {
  QStringList files = QSettings().value(keyOf(kind)).toStringList();
  files.removeIf([](const QString& file) { return !QFileInfo(file).isFile(); });
  return files;
}

void rememberCatalogue(CatalogueKind kind, const QString& fileName) {
  QStringList files = others(kind, fileName);
  files.prepend(QFileInfo(fileName).absoluteFilePath());
  QSettings().setValue(keyOf(kind), QStringList(files.mid(0, kMost)));
}

void forgetCatalogue(CatalogueKind kind, const QString& fileName) {
  QSettings().setValue(keyOf(kind), others(kind, fileName));
}

}  // namespace jw

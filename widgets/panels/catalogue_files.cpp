#include "widgets/panels/catalogue_files.h"

#include <array>
#include <stdexcept>

#include <QCoreApplication>
#include <QDir>
#include <QFile>
#include <QFileInfo>
#include <QSaveFile>

namespace jw {
namespace {

constexpr qint64 kLargestFile = 200'000'000;

QString tr(const char* text) { return QCoreApplication::translate("Catalogue", text); }

tl::unexpected<InputError> refuse(const QString& what, const QString& fileName,
                                  const char* remedy) {
  return tl::unexpected(
      InputError{what.toStdString(), QDir::toNativeSeparators(fileName).toStdString(), remedy});
}

CataloguePtr readBundled(CatalogueKind kind, const char* file) {
  QFile resource(QString(":/catalogues/") + file);
  if (!resource.open(QIODevice::ReadOnly)) throw std::logic_error("a bundled catalogue is missing");
  auto catalogue = readCatalogue(kind, resource.readAll().toStdString(), file);
  if (!catalogue) throw std::logic_error(describe(catalogue.error()));
  catalogue->bundled = true;
  return std::make_shared<const Catalogue>(std::move(*catalogue));
}

std::array<CataloguePtr, 3>& inUse() {
  static std::array<CataloguePtr, 3> all;
  return all;
}

}  // namespace

CataloguePtr bundledCatalogue(CatalogueKind kind) {
  static const std::array<CataloguePtr, 3> kAll{
      readBundled(CatalogueKind::Motors, "motors.csv"),
      readBundled(CatalogueKind::Reducers, "reducers.csv"),
      readBundled(CatalogueKind::Rules, "reducer_rules.csv")};
  return kAll[static_cast<std::size_t>(kind)];
}

CataloguePtr catalogueInUse(CatalogueKind kind) {
  const CataloguePtr& chosen = inUse()[static_cast<std::size_t>(kind)];
  return chosen ? chosen : bundledCatalogue(kind);
}

void useCatalogue(CataloguePtr catalogue) {
  const auto at = static_cast<std::size_t>(catalogue->kind);
  inUse()[at] = std::move(catalogue);
}

tl::expected<CataloguePtr, InputError> openCatalogue(CatalogueKind kind, const QString& fileName) {
  QFile file(fileName);
  if (!file.open(QIODevice::ReadOnly)) {
    return refuse("the file cannot be read: " + file.errorString(), fileName,
                  "choose a file that you may read");
  }
  if (file.size() > kLargestFile) {
    return refuse("the file is too large", fileName, "at most 200 MB are read");
  }
  auto catalogue = readCatalogue(kind, file.readAll().toStdString(),
                                 QFileInfo(fileName).fileName().toStdString());
  if (!catalogue) return tl::unexpected(catalogue.error());
  return std::make_shared<const Catalogue>(std::move(*catalogue));
}

tl::expected<void, InputError> saveCatalogue(const std::string& text, const QString& fileName) {
  QSaveFile file(fileName);
  const auto size = static_cast<qint64>(text.size());
  if (file.open(QIODevice::WriteOnly) && file.write(text.data(), size) == size && file.commit()) {
    return {};
  }
  return refuse("the file cannot be written: " + file.errorString(), fileName,
                "choose a folder that you may write to");
}

QString catalogueCount(const Catalogue& catalogue) {
  const std::size_t size = catalogue.size();
  const bool one = size == 1;
  switch (catalogue.kind) {
    case CatalogueKind::Motors: return one ? tr("1 motor") : tr("%1 motors").arg(size);
    case CatalogueKind::Reducers: return one ? tr("1 reducer") : tr("%1 reducers").arg(size);
    case CatalogueKind::Rules: break;
  }
  return one ? tr("rules of 1 family") : tr("rules of %1 families").arg(size);
}

QString catalogueName(const Catalogue& catalogue) {
  return catalogue.bundled ? tr("invented, bundled") : QString::fromStdString(catalogue.name);
}

}  // namespace jw

#pragma once

#include <memory>

#include <QString>
#include <tl/expected.hpp>

#include "core/files/catalogue.h"

namespace jw {

using CataloguePtr = std::shared_ptr<const Catalogue>;

/// The catalogue that comes with the program; every part in it is invented.
CataloguePtr bundledCatalogue(CatalogueKind kind);

/// The catalogue of that kind that a person chose last, in whichever figure; the bundled one
/// before.
CataloguePtr catalogueInUse(CatalogueKind kind);
void useCatalogue(CataloguePtr catalogue);

/// Reads a file. Errors name it with line and column; then nothing of it is taken over.
tl::expected<CataloguePtr, InputError> openCatalogue(CatalogueKind kind, const QString& fileName);

/// Writes a catalogue's text; an existing file stays as it is until the new one is complete.
tl::expected<void, InputError> saveCatalogue(const std::string& text, const QString& fileName);

/// "272 motors", "176 reducers", "rules of 6 families".
QString catalogueCount(const Catalogue& catalogue);

/// "invented, bundled", or the file's name.
QString catalogueName(const Catalogue& catalogue);

}  // namespace jw

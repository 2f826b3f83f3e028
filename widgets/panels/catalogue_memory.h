#pragma once

#include <QStringList>

#include "core/files/catalogue.h"

namespace jw {

/// Files of one's own that were read or written as a catalogue of this kind, newest first; kept
/// between runs. Files that are gone are left out.
QStringList rememberedCatalogues(CatalogueKind kind);

/// Puts a file in front of those remembered; of more than eight the oldest is forgotten.
void rememberCatalogue(CatalogueKind kind, const QString& fileName);

/// Leaves a file out from now on.
void forgetCatalogue(CatalogueKind kind, const QString& fileName);

}  // namespace jw

#pragma once

#include "widgets/edit.h"

namespace jw {

// What can be done with the variants of a project, as steps of the history.

Edit chooseVariant(int index, const QString& name);
/// A copy after the active one, active itself.
Edit duplicateVariant(const QString& name);
Edit renameVariant(const QString& name);
/// Fails for the last one: a project is never without a variant.
Edit removeVariant();

/// A name that no variant has: "A 2", "A 3" and so on for a copy of "A".
QString freeVariantName(const Project& project);

}  // namespace jw

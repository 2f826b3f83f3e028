#pragma once

#include <QWidget>

#include "core/model/field_catalogue.h"

namespace jw {

/// Marks an editor as wrong, or as right when `message` is empty: the property "state" for the
/// style sheet, and the description that a screen reader reads.
void setWrongMark(QWidget& editor, const FieldInfo& info, const QString& message);

}  // namespace jw

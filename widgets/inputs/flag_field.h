#pragma once

#include <QCheckBox>

#include "widgets/inputs/field_editor.h"

namespace jw {

/// Editor of a yes-or-no field.
class FlagField : public QCheckBox, public FieldEditor {
  Q_OBJECT

 public:
  FlagField(const FieldInfo& info, const QString& path, QWidget* parent = nullptr);

  QWidget* widget() override { return this; }
  void showField(const FieldRef& field) override;
};

}  // namespace jw

#pragma once

#include "widgets/inputs/choice_box.h"
#include "widgets/inputs/field_editor.h"

namespace jw {

/// Editor of a choice: a list of the catalogue's labels.
class ChoiceField : public ChoiceBox, public FieldEditor {
  Q_OBJECT

 public:
  ChoiceField(const FieldInfo& info, const QString& path, QWidget* parent = nullptr);

  QWidget* widget() override { return this; }
  void showField(const FieldRef& field) override;
  QSize minimumSizeHint() const override;

 protected:
  void focusOutEvent(QFocusEvent* event) override;

 private:
  void sendChoice(int index);

  int model_ = -1;
};

}  // namespace jw

#pragma once

#include <QComboBox>

#include "widgets/inputs/field_editor.h"

namespace jw {

/// Editor of a choice: a list of the catalogue's labels. The wheel turns it only with the focus.
class ChoiceField : public QComboBox, public FieldEditor {
  Q_OBJECT

 public:
  ChoiceField(const FieldInfo& info, const QString& path, QWidget* parent = nullptr);

  QWidget* widget() override { return this; }
  void showField(const FieldRef& field) override;
  QSize minimumSizeHint() const override;

 protected:
  void paintEvent(QPaintEvent* event) override;
  void wheelEvent(QWheelEvent* event) override;
  void focusOutEvent(QFocusEvent* event) override;

 private:
  void sendChoice(int index);

  int model_ = -1;
};

}  // namespace jw

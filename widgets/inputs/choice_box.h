#pragma once

#include <QComboBox>

namespace jw {

/// As QComboBox, but a label that does not fit ends in an ellipsis, the arrow is the theme's, and
/// the wheel turns it only with the focus.
class ChoiceBox : public QComboBox {
  Q_OBJECT

 public:
  explicit ChoiceBox(QWidget* parent = nullptr);

 protected:
  void paintEvent(QPaintEvent* event) override;
  void wheelEvent(QWheelEvent* event) override;
};

}  // namespace jw

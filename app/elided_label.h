#pragma once

#include <QLabel>

namespace jw {

/// A label that shortens its text with an ellipsis where space is short; the whole text is in the
/// tool tip then.
class ElidedLabel : public QLabel {
  Q_OBJECT

 public:
  explicit ElidedLabel(QWidget* parent = nullptr);
  QSize minimumSizeHint() const override;

 protected:
  void paintEvent(QPaintEvent* event) override;
};

}  // namespace jw

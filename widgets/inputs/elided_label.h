#pragma once

#include <QLabel>

namespace jw {

/// A label that shortens its text with an ellipsis where space is short; the whole text is in the
/// tool tip then, unless it has a tool tip of its own.
class ElidedLabel : public QLabel {
  Q_OBJECT

 public:
  explicit ElidedLabel(QWidget* parent = nullptr);
  QSize minimumSizeHint() const override;

 protected:
  void paintEvent(QPaintEvent* event) override;

 private:
  QString lastTip_;
};

}  // namespace jw

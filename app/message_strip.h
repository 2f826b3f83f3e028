#pragma once

#include <vector>

#include <QFrame>
#include <QLabel>

#include "core/quantity/quantity.h"

namespace jw {

/// A message across the window that stays until it is closed: what is wrong with a file, or remarks
/// about one.
class MessageStrip : public QFrame {
  Q_OBJECT

 public:
  explicit MessageStrip(QWidget* parent = nullptr);

  void showError(const InputError& error);
  /// Hidden if there are none.
  void showRemarks(const std::vector<InputError>& notes);
  QString text() const { return text_->text(); }

 private:
  void showText(const QString& text, bool wrong);

  QLabel* text_;
};

}  // namespace jw

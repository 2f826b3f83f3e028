#pragma once

#include <QMenu>
#include <QMenuBar>
#include <QToolButton>

#include "widgets/inputs/elided_label.h"

namespace jw {

/// The top line of the window: menus, what is open, its variant and whether it is saved.
class TitleStrip : public QWidget {
  Q_OBJECT

 public:
  explicit TitleStrip(QWidget* parent = nullptr);

  QMenuBar* menuBar() const { return menus_; }
  /// The button opens this menu.
  void setVariantMenu(QMenu* menu) { variant_->setMenu(menu); }
  void setProject(const QString& title, const QString& variant);
  void setSaved(const QString& state);

 private:
  QMenuBar* menus_;
  ElidedLabel* title_;
  QToolButton* variant_;
  QLabel* saved_;
};

}  // namespace jw

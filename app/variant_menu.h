#pragma once

#include <QMenu>

namespace jw {

class MainWindow;

/// The variants of the project: choose one, duplicate, rename or remove the active one.
class VariantMenu : public QMenu {
  Q_OBJECT

 public:
  VariantMenu(MainWindow& window, QWidget* parent);

 private:
  void fill();
  void addVariants();
  void rename();
  void remove();

  MainWindow& window_;
};

}  // namespace jw

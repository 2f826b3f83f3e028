#pragma once

#include <QActionGroup>
#include <QMenu>
#include <QObject>

#include "app/variant_menu.h"

namespace jw {

class MainWindow;

/// The menus of the window and their actions.
class WindowMenus : public QObject {
  Q_OBJECT

 public:
  explicit WindowMenus(MainWindow& window);
  /// Brings names and availability up to date with the document.
  void update();

 private:
  QAction* add(QMenu& menu, const QString& text, const QKeySequence& keys, const QString& name,
               const std::function<void()>& run);
  void buildProject(QMenu& menu);
  void buildEdit(QMenu& menu);
  void fitHeat();
  void buildShow(QMenu& menu);
  void buildTheme(QMenu& menu);
  void buildAxes(QMenu& menu);
  void buildHelp(QMenu& menu);
  void fillRecent();
  void fillSamples();

  MainWindow& window_;
  QMenu* recent_ = nullptr;
  QMenu* samples_ = nullptr;
  VariantMenu* variants_ = nullptr;
  QAction* undo_ = nullptr;
  QAction* redo_ = nullptr;
  QAction* split_ = nullptr;
};

}  // namespace jw

#include "app/window_layout.h"

#include <QDataStream>
#include <QGuiApplication>
#include <QIODevice>
#include <QScreen>
#include <QSettings>

#include "app/main_window.h"

namespace jw {
namespace {

constexpr const char* kGeometryKey = "window/geometry";
constexpr const char* kPartsKey = "window/parts";
constexpr quint32 kPartsMark = 0x4a570001;  // with the version of what follows

/// Keeps the window on a screen: the one it was on may be gone.
void clampToScreen(MainWindow& window) {
  const QScreen* screen = QGuiApplication::screenAt(window.geometry().center());
  if (screen == nullptr) screen = QGuiApplication::primaryScreen();
  const QRect room = screen->availableGeometry();
  QRect place = window.geometry();
  place.setSize(place.size().boundedTo(room.size()));
  if (!room.contains(place)) place.moveCenter(room.center());
  window.setGeometry(place);
}

}  // namespace

void WindowLayout::save(const MainWindow& window) {
  QSettings settings;
  settings.setValue(kGeometryKey, window.saveGeometry());
  settings.setValue(kPartsKey, window.layoutState());
}

void WindowLayout::restore(MainWindow& window) {
  QSettings settings;
  window.restoreLayoutState(settings.value(kPartsKey).toByteArray());
  if (window.restoreGeometry(settings.value(kGeometryKey).toByteArray()) && !window.isMaximized() &&
      !window.isFullScreen()) {
    clampToScreen(window);
  }
}

QByteArray MainWindow::layoutState() const {
  QByteArray state;
  QDataStream out(&state, QIODevice::WriteOnly);
  out.setVersion(QDataStream::Qt_6_4);
  out << kPartsMark << sizesTouched_ << columns_->saveState() << rightColumn_->saveState()
      << figures_->isSplit() << figures_->saveState() << inputs_->saveState();
  return state;
}

bool MainWindow::restoreLayoutState(const QByteArray& state) {
  QDataStream in(state);
  in.setVersion(QDataStream::Qt_6_4);
  quint32 mark = 0;
  bool touched = false;
  bool split = false;
  QByteArray columns, right, figures, inputs;
  in >> mark >> touched >> columns >> right >> split >> figures >> inputs;
  if (in.status() != QDataStream::Ok || mark != kPartsMark) {
    resetLayout();
    return false;
  }
  figures_->setSplit(split);
  inputs_->restoreState(inputs);
  sizesTouched_ = touched && columns_->restoreState(columns) && rightColumn_->restoreState(right);
  if (!sizesTouched_) applyUsualSizes();
  if (split) figures_->restoreState(figures);
  return true;
}

}  // namespace jw

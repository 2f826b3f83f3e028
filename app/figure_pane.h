#pragma once

#include <QFrame>
#include <QScrollArea>
#include <QStackedWidget>
#include <QTabBar>

#include "widgets/figures/figure.h"

namespace jw {

/// Tabs with one figure each, and buttons to copy and export the one in front. Only that one is
/// drawn; the others catch up when they come to the front.
class FigurePane : public QFrame {
  Q_OBJECT

 public:
  explicit FigurePane(const QString& name, QWidget* parent = nullptr);

  void showSnapshot(const Snapshot& snapshot);
  void setCursorTime(double s);
  double cursorTime() const { return cursor_; }
  Figure* current() const;
  QString currentName() const;
  QString exportName() const;  ///< of the picture in front
  void setCurrent(const QString& figureName);
  /// Adds what the figures have worked out by themselves, the one in front last.
  void addStudies(Snapshot& snapshot) const;
  Figure* figure(const QString& figureName) const;

 signals:
  void cursorTimeChanged(double s);
  void exportRequested(const QString& figureName);
  void copied();
  void fieldRequested(const QString& path);
  void editRequested(const jw::Edit& edit);
  void currentChanged();

 private:
  void addFigure(Figure* figure);
  QWidget* makeHeader();
  QWidget* makeScroll();
  void bringUpToDate();

  QTabBar* tabs_;
  QScrollArea* scroll_ = nullptr;
  QStackedWidget* stack_;
  Snapshot snapshot_;
  double cursor_;
  std::vector<bool> shown_;  // whether each figure shows snapshot_
};

}  // namespace jw

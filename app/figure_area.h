#pragma once

#include <array>

#include <QSplitter>

#include "app/figure_pane.h"

namespace jw {

/// One or two panes of figures with one cursor in time: side by side where there is room, else one
/// above the other.
class FigureArea : public QSplitter {
  Q_OBJECT

 public:
  explicit FigureArea(QWidget* parent = nullptr);

  void showSnapshot(const Snapshot& snapshot);
  void setCursorTime(double s);
  double cursorTime() const { return active_->cursorTime(); }  ///< [s]; unset without a cursor
  /// Whether the second pane is shown.
  bool isSplit() const { return split_; }
  void setSplit(bool split);
  /// Adds what the figures have worked out by themselves; the pane used last goes first.
  void addStudies(Snapshot& snapshot) const;
  /// Brings the daily mix to the front.
  void showMix();
  /// The pane that was used last.
  FigurePane* activePane() const { return active_; }
  FigurePane* pane(int index) const { return panes_[static_cast<std::size_t>(index)]; }

 signals:
  void cursorTimeChanged(double s);
  void exportRequested(const QString& figureName);
  void copied();
  void fieldRequested(const QString& path);
  void editRequested(const jw::Edit& edit);

 private:
  void followFocus(QWidget* focus);

  std::array<FigurePane*, 2> panes_{};
  FigurePane* active_ = nullptr;
  Snapshot snapshot_;
  bool split_ = false;
};

}  // namespace jw

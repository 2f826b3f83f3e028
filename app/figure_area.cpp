#include "app/figure_area.h"

#include <QApplication>

#include "widgets/figures/cycle_figure.h"

namespace jw {

FigureArea::FigureArea(QWidget* parent) : QSplitter(Qt::Vertical, parent) {
  setObjectName("figures");
  setChildrenCollapsible(false);
  setHandleWidth(8);
  panes_[0] = new FigurePane("figures.upper", this);
  panes_[1] = new FigurePane("figures.lower", this);
  panes_[1]->setCurrent("cycle");
  panes_[1]->hide();
  active_ = panes_[0];
  setStretchFactor(0, 62);
  setStretchFactor(1, 38);
  for (FigurePane* pane : panes_) {
    connect(pane, &FigurePane::cursorTimeChanged, this, &FigureArea::cursorTimeChanged);
    connect(pane, &FigurePane::exportRequested, this, &FigureArea::exportRequested);
    connect(pane, &FigurePane::fieldRequested, this, &FigureArea::fieldRequested);
    connect(pane, &FigurePane::editRequested, this, &FigureArea::editRequested);
    connect(pane, &FigurePane::copied, this, &FigureArea::copied);
    connect(pane, &FigurePane::currentChanged, this, [this, pane] { active_ = pane; });
  }
  connect(qApp, &QApplication::focusChanged, this,
          [this](QWidget*, QWidget* now) { followFocus(now); });
}

void FigureArea::followFocus(QWidget* focus) {
  for (FigurePane* pane : panes_) {
    if (focus != nullptr && pane->isAncestorOf(focus)) active_ = pane;
  }
}

void FigureArea::showSnapshot(const Snapshot& snapshot) {
  snapshot_ = snapshot;
  panes_[0]->showSnapshot(snapshot);
  if (split_) panes_[1]->showSnapshot(snapshot);
}

void FigureArea::showMix() {
  active_->setCurrent("cycle");
  static_cast<CycleFigure*>(active_->figure("cycle"))->setPicture(CycleFigure::Picture::Mix);
}

void FigureArea::addStudies(Snapshot& snapshot) const {
  for (const FigurePane* pane : panes_) {
    if (pane != active_) pane->addStudies(snapshot);
  }
  active_->addStudies(snapshot);
}

void FigureArea::setCursorTime(double s) {
  for (FigurePane* pane : panes_) pane->setCursorTime(s);
}

void FigureArea::setSplit(bool split) {
  constexpr int kRoomForTwo = 1200;
  if (split && !split_) setOrientation(width() >= kRoomForTwo ? Qt::Horizontal : Qt::Vertical);
  split_ = split;
  panes_[1]->setVisible(split);
  if (split) panes_[1]->showSnapshot(snapshot_);
  if (!split) active_ = panes_[0];
}

}  // namespace jw

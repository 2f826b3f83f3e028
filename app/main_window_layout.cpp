// How the window is put together.
#include <algorithm>

#include <QStatusBar>
#include <QVBoxLayout>

#include "app/main_window.h"
#include "app/window_layout.h"
#include "core/checks/cautions.h"

namespace jw {
namespace {

constexpr int kGap = 8;  // the grid of the window

}  // namespace

QFrame* MainWindow::framed(QWidget* content, const QString& name) {
  auto* frame = new QFrame(this);
  frame->setObjectName(name);
  frame->setProperty("role", "panel");
  auto* box = new QVBoxLayout(frame);
  box->setContentsMargins(0, 0, 0, 0);
  box->addWidget(content);
  return frame;
}

void MainWindow::buildLayout() {
  setMenuWidget(title_);
  rightColumn_->setObjectName("columns.right");
  rightColumn_->addWidget(framed(verdicts_, "panel.verdicts"));
  rightColumn_->addWidget(framed(working_, "panel.working"));
  columns_->setObjectName("columns");
  columns_->addWidget(framed(inputs_, "panel.inputs"));
  columns_->addWidget(figures_);
  columns_->addWidget(rightColumn_);
  columns_->setStretchFactor(1, 1);
  columns_->installEventFilter(this);
  for (QSplitter* splitter : {columns_, rightColumn_}) {
    splitter->setChildrenCollapsible(false);
    splitter->setHandleWidth(kGap);
    connect(splitter, &QSplitter::splitterMoved, this, [this] { sizesTouched_ = true; });
  }
  auto* centre = new QWidget(this);
  auto* column = new QVBoxLayout(centre);
  column->setContentsMargins(kGap, 2, kGap, 0);
  column->setSpacing(kGap);
  column->addWidget(messages_);
  QFrame* path = framed(powerPath_, "panel.path");
  path->setSizePolicy(QSizePolicy::Preferred, QSizePolicy::Fixed);
  column->addWidget(path);
  column->addWidget(columns_, 1);
  setCentralWidget(centre);
}

void MainWindow::buildStatusBar() {
  auto* caution =
      new QLabel(QString::fromUtf8(kCaution.data(), static_cast<qsizetype>(kCaution.size())), this);
  caution->setObjectName("status.caution");
  cursorLabel_->setObjectName("status.cursor");
  timeLabel_->setObjectName("status.time");
  for (QLabel* label : {caution, cursorLabel_, timeLabel_}) label->setProperty("role", "muted");
  statusBar()->setSizeGripEnabled(false);
  statusBar()->setContentsMargins(kGap + 4, 0, 2 * kGap, 2);
  statusBar()->addWidget(caution);
  statusBar()->addPermanentWidget(cursorLabel_);
  statusBar()->addPermanentWidget(timeLabel_);
}

void MainWindow::resetLayout() {
  sizesTouched_ = false;
  figures_->setSplit(false);
  applyUsualSizes();
}

/// Sides of a fixed share within limits; the figures take the rest.
void MainWindow::applyUsualSizes() {
  const int whole = columns_->width();
  const int left = std::clamp(whole * 24 / 100, 300, 440);
  const int right = std::clamp(whole * 23 / 100, 290, 440);
  columns_->setSizes({left, whole - left - right - 2 * kGap, right});
  const int height = columns_->height();
  rightColumn_->setSizes({height * 45 / 100, height * 55 / 100});
}

bool MainWindow::eventFilter(QObject* watched, QEvent* event) {
  if (watched == columns_ && event->type() == QEvent::Resize && !sizesTouched_) applyUsualSizes();
  return QMainWindow::eventFilter(watched, event);
}

}  // namespace jw

#pragma once

#include <gtest/gtest.h>
#include <QApplication>
#include <QtTest>

#include "tests/gui/figures_support.h"
#include "widgets/figures/cycle_figure.h"

namespace jw::test {

/// The cycle figure on the screen with a project behind it that takes every edit at once, and
/// counts undo steps as widgets/edit.h defines them.
class CycleDesk : public QObject {
 public:
  explicit CycleDesk(CycleFigure::Picture picture, Project start = shoulder())
      : project(std::move(start)) {
    connect(&figure, &Figure::editRequested, this, [this](const Edit& edit) { take(edit); });
    figure.resize(646, 470);
    figure.setPicture(picture);
    figure.showSnapshot(snapshotOf(project));
    figure.show();
    figure.activateWindow();
    (void)QTest::qWaitForWindowActive(&figure);
  }

  void take(const Edit& edit) {
    Project changed = project;
    const auto result = edit.apply(changed);
    if (!result) {
      refused = QString::fromStdString(describe(result.error()));
      return;
    }
    const bool same = !edit.gesture.isEmpty() && edit.gesture == lastGesture_;
    if (!same) steps.push_back(project);
    lastGesture_ = edit.gesture;
    project = changed;
    figure.showSnapshot(snapshotOf(project));
  }

  /// What the window's Undo does.
  void undo() {
    ASSERT_FALSE(steps.empty());
    project = steps.back();
    steps.pop_back();
    lastGesture_.clear();
    figure.showSnapshot(snapshotOf(project));
  }

  const Segment& move(std::size_t row) const { return project.cycle.segments[row]; }
  MoveCurve& curve() { return figure.moves().curve(); }
  RowTable& table() { return figure.moves().table(); }
  QString text(int row, int column) const {
    return figure.findChild<RowTable*>("moves.table")
        ->model()
        ->index(row, column)
        .data()
        .toString();
  }
  void click(const char* button) {
    QTest::mouseClick(figure.findChild<QWidget*>(button), Qt::LeftButton);
  }

  /// Presses, moves in steps and lets go, as a hand does.
  void drag(QPoint from, QPoint by, Qt::KeyboardModifiers keys = {}) {
    QTest::mousePress(&curve(), Qt::LeftButton, keys, from);
    for (int k = 1; k <= 8; ++k) {
      const QPointF at = from + QPointF(by) * k / 8;
      QMouseEvent step(QEvent::MouseMove, at, curve().mapToGlobal(at), Qt::NoButton, Qt::LeftButton,
                       keys);
      QApplication::sendEvent(&curve(), &step);
    }
    QTest::mouseRelease(&curve(), Qt::LeftButton, keys, from + by);
  }
  QPoint handle(int row) { return curve().handleOf(row).toPoint(); }

  /// Types into a cell as a person does: chooses it, F2, the text, Enter.
  void typeInto(RowTable& into, int row, int column, const QString& typed) {
    into.setFocus();
    into.setCurrentIndex(into.model()->index(row, column));
    QTest::keyClick(&into, Qt::Key_F2);
    QWidget* editor = QApplication::focusWidget();
    ASSERT_NE(editor, &into);
    QTest::keyClick(editor, Qt::Key_A, Qt::ControlModifier);
    QTest::keyClicks(editor, typed);
    QTest::keyClick(editor, Qt::Key_Return);
  }

  Project project;
  CycleFigure figure;
  std::vector<Project> steps;
  QString refused;

 private:
  QString lastGesture_;
};

}  // namespace jw::test

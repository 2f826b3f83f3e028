#pragma once

#include <memory>
#include <string>
#include <vector>

#include <gtest/gtest.h>
#include <QApplication>
#include <QKeyEvent>
#include <QLineEdit>
#include <QtTest>

#include "widgets/inputs/inputs_panel.h"
#include "widgets/inputs/number_field.h"

namespace jw::test {

/// A project with two stages and three moves.
inline Project orchardArm() {
  Project project;
  project.active().transmission.resize(2);
  project.active().transmission[0].family = StageFamily::Belt;
  project.active().transmission[1].family = StageFamily::StrainWave;
  project.cycle.segments.resize(3);
  project.cycle.segments[1].law = MotionLaw::Dwell;
  project.cycle.segments[2].law = MotionLaw::Table;
  return project;
}

/// A panel on the screen with a project behind it that takes every edit at once, and counts undo
/// steps as widgets/edit.h defines them.
class Desk : public QObject {
 public:
  explicit Desk(Project start = orchardArm()) : project(std::move(start)) {
    connect(&panel, &InputsPanel::editRequested, this, [this](const Edit& edit) { take(edit); });
    panel.resize(300, 800);
    panel.showProject(project);
    panel.show();
    panel.activateWindow();
    (void)QTest::qWaitForWindowActive(&panel);
  }

  void take(const Edit& edit) {
    Project changed = project;
    const auto result = edit.apply(changed);
    edits.push_back(edit);
    ASSERT_TRUE(result) << describe(result.error());
    const bool same = !edit.gesture.isEmpty() && edit.gesture == lastGesture_;
    if (!same) steps.push_back(project);
    lastGesture_ = edit.gesture;
    project = changed;
    panel.showProject(project);
  }

  /// What the window's Undo does.
  void undo() {
    ASSERT_FALSE(steps.empty());
    project = steps.back();
    steps.pop_back();
    lastGesture_.clear();
    panel.showProject(project);
  }

  template <class T = NumberField>
  T& field(const char* path) {
    T* found = panel.findChild<T*>(path);
    if (found == nullptr) throw std::runtime_error(std::string("no editor ") + path);
    return *found;
  }

  /// Puts the focus in the field and types over what is there.
  template <class T = NumberField>
  T& type(const char* path, const QString& text) {
    T& editor = enter<T>(path);
    editor.selectAll();
    QTest::keyClicks(&editor, text);
    return editor;
  }

  template <class T = NumberField>
  T& enter(const char* path) {
    panel.reveal(path);
    return field<T>(path);
  }

  double number(const char* path) const { return findField(project, path)->number(); }
  std::string text(const char* path) const { return fieldText(*findField(project, path)); }

  Project project;
  InputsPanel panel;
  std::vector<Edit> edits;
  std::vector<Project> steps;

 private:
  QString lastGesture_;
};

inline QString messageBelow(const QWidget& editor) {
  const auto* label = editor.parentWidget()->findChild<QLabel*>(editor.objectName() + ".message");
  return label == nullptr || label->isHidden() ? QString() : label->text();
}

inline void turnWheel(QWidget& widget, int steps, Qt::KeyboardModifiers modifiers = {}) {
  const QPointF place(10, 10);
  QWheelEvent event(place, widget.mapToGlobal(place), {}, {0, 120 * steps}, Qt::NoButton, modifiers,
                    Qt::NoScrollPhase, false);
  QApplication::sendEvent(&widget, &event);
}

}  // namespace jw::test

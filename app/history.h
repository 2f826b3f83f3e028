#pragma once

#include <memory>
#include <vector>

#include <QString>

#include "core/model/project.h"

namespace jw {

using ProjectPtr = std::shared_ptr<const Project>;

/// The project's immutable values, oldest first, with what led from one to the next: undo and redo.
class History {
 public:
  explicit History(ProjectPtr first);

  const ProjectPtr& current() const { return steps_[at_].project; }

  /// Adds a step, forgetting what was undone. Nothing happens if `next` equals the current value. A
  /// step with the same non-empty `gesture` as the one before it replaces that one's result, unless
  /// the project was saved or undone in between; when it leads back to where the gesture began, the
  /// step is dropped. Returns whether the current value changed.
  bool push(ProjectPtr next, const QString& description, const QString& gesture = {});

  bool canUndo() const { return at_ > 0; }
  bool canRedo() const { return at_ + 1 < steps_.size(); }
  /// "Change rotor inertia"; empty if there is nothing to undo or redo.
  QString undoText() const;
  QString redoText() const;
  void undo();
  void redo();

  /// Ends the gesture that is going on: the next step is a new one.
  void endGesture() { gestureOpen_ = false; }

  /// Remembers the current value as the saved one.
  void markClean();
  /// Forgets the saved value: nothing that the history holds is on disk.
  void markNeverClean() { clean_ = nullptr; }
  /// Whether the current value equals the saved one.
  bool isClean() const;

 private:
  struct Step {
    ProjectPtr project;
    QString description;  // of the change that led here
    QString gesture;
  };
  void limitLength();

  std::vector<Step> steps_;
  std::size_t at_ = 0;
  bool gestureOpen_ = false;
  ProjectPtr clean_;
};

}  // namespace jw

#pragma once

#include <QEvent>
#include <QKeyEvent>

namespace jw {

inline bool isUndoOrRedo(const QKeyEvent& key) {
  return key.matches(QKeySequence::Undo) || key.matches(QKeySequence::Redo);
}

/// Lets the window's undo and redo have their keys while an editor has the focus: Qt's own editors
/// claim them by accepting ShortcutOverride. True when `event` was such a claim; it is then left
/// unaccepted and the editor must not see it.
inline bool leaveUndoToWindow(QEvent& event) {
  if (event.type() != QEvent::ShortcutOverride) return false;
  if (!isUndoOrRedo(static_cast<const QKeyEvent&>(event))) return false;
  event.ignore();
  return true;
}

}  // namespace jw

#include "app/history.h"

namespace jw {
namespace {

// Enough for a day of work; a step shares nothing with its neighbours but is small.
constexpr std::size_t kMostSteps = 1000;

}  // namespace

History::History(ProjectPtr first) : clean_(first) { steps_.push_back({std::move(first), {}, {}}); }

bool History::push(ProjectPtr next, const QString& description, const QString& gesture) {
  if (*next == *current()) return false;
  const bool merges =
      gestureOpen_ && at_ > 0 && !gesture.isEmpty() && steps_[at_].gesture == gesture;
  steps_.resize(at_ + 1);
  gestureOpen_ = true;
  if (!merges) {
    steps_.push_back({std::move(next), description, gesture});
    ++at_;
    limitLength();
  } else if (*next == *steps_[at_ - 1].project) {
    steps_.pop_back();
    --at_;
    gestureOpen_ = false;
  } else {
    steps_[at_].project = std::move(next);
  }
  return true;
}

void History::limitLength() {
  if (steps_.size() <= kMostSteps) return;
  steps_.erase(steps_.begin());
  --at_;
}

QString History::undoText() const { return canUndo() ? steps_[at_].description : QString(); }

QString History::redoText() const { return canRedo() ? steps_[at_ + 1].description : QString(); }

void History::undo() {
  if (canUndo()) --at_;
  gestureOpen_ = false;
}

void History::redo() {
  if (canRedo()) ++at_;
  gestureOpen_ = false;
}

void History::markClean() {
  clean_ = current();
  gestureOpen_ = false;
}

bool History::isClean() const { return clean_ && (clean_ == current() || *clean_ == *current()); }

}  // namespace jw

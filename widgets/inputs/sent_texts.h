#pragma once

#include <algorithm>
#include <deque>

#include <QString>

namespace jw {

/// The texts that a field has sent and whose echo, the project that holds them, has not come back
/// yet. By it a field tells its own typing from a change made elsewhere, such as undo.
class SentTexts {
 public:
  void add(const QString& text) { texts_.push_back(text); }
  void clear() { texts_.clear(); }
  bool empty() const { return texts_.empty(); }

  /// The text that the project will hold when every edit has arrived; `model` if none is under way.
  const QString& expected(const QString& model) const {
    return texts_.empty() ? model : texts_.back();
  }

  /// Whether `text` is an echo; it and all before it are then done with.
  bool takeEcho(const QString& text) {
    const auto found = std::find(texts_.begin(), texts_.end(), text);
    if (found == texts_.end()) return false;
    texts_.erase(texts_.begin(), std::next(found));
    return true;
  }

 private:
  std::deque<QString> texts_;
};

}  // namespace jw

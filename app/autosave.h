#pragma once

#include <atomic>
#include <optional>
#include <thread>
#include <vector>

#include <QObject>
#include <QTimer>

#include "app/document.h"

namespace jw {

/// Work that was kept aside and is not in the file.
struct KeptWork {
  QString autosaveFile;
  Project project;
};

/// Writes unsaved work beside the project file (never over it), so that a crash loses seconds. The
/// copy goes away when the project is saved or closed in order.
class Autosave : public QObject {
  Q_OBJECT

 public:
  explicit Autosave(Document& document, QObject* parent = nullptr);

  /// ".hoist.jointwright.autosave~" beside "hoist.jointwright".
  static QString fileBeside(const QString& projectFile);
  /// Kept work for a project file that differs from its content `onDisk`; nothing if there is none.
  static std::optional<KeptWork> find(const QString& projectFile, const Project& onDisk);
  /// Kept work of projects that were never saved, left by runs that are no more.
  static std::vector<KeptWork> findUnnamed();

  /// Time from an edit to its copy [ms].
  void setDelay(int ms) { timer_.setInterval(ms); }
  /// Writes the copy now if there is unsaved work.
  void writeNow();
  /// Removes the copy: the work is saved or given up.
  void remove();

 signals:
  void failed(const jw::InputError& error);

 private:
  void follow();
  QString currentFile() const;
  void writeBeside(const QString& file);
  void complain(const InputError& error);

  Document& document_;
  QTimer timer_;
  QString written_;  // the copy that exists, if any
  bool complained_ = false;
  std::atomic<bool> writing_{false};
  std::jthread writer_;  // of a project with long tables; last: it ends first
};

}  // namespace jw

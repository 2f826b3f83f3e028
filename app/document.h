#pragma once

#include <QObject>
#include <QTimer>

#include "app/evaluator.h"
#include "app/history.h"
#include "app/project_file.h"
#include "widgets/edit.h"
#include "widgets/snapshot.h"
#include "widgets/study_thread.h"

namespace jw {

/// The project that is open: its history, its file, and the evaluation that belongs to it.
class Document : public QObject {
  Q_OBJECT

 public:
  explicit Document(QObject* parent = nullptr);

  const ProjectPtr& project() const { return history_.current(); }
  const History& history() const { return history_; }
  /// What views show now; stale until the evaluation has caught up.
  const Snapshot& snapshot() const { return snapshot_; }
  quint64 revision() const { return revision_; }
  bool isEvaluated() const { return snapshot_.evaluation && !snapshot_.stale; }

  /// Path of the file, empty for a project that was never saved.
  const QString& fileName() const { return fileName_; }
  /// "hoist" or "Untitled".
  QString displayName() const;
  bool isModified() const { return !history_.isClean(); }

  /// Makes the edit a step of the history; an error leaves everything as it was.
  tl::expected<void, InputError> apply(const Edit& edit);
  void undo();
  void redo();
  void endGesture() { history_.endGesture(); }

  /// Replaces the project and its history with one that has no file yet.
  void startNew(Project project);
  /// The same with unsaved work that was kept aside: it opens as modified.
  void recover(Project project, const QString& fileName);
  /// The same with the project that was read from a file.
  void show(const LoadedProject& loaded, const QString& fileName);
  tl::expected<void, InputError> save(const QString& fileName);
  /// Whether the file on disk is not what this document last read or wrote.
  bool fileChangedOutside() const;

  /// Marks what is shown as not belonging to what the fields say (an entry is wrong).
  void setEntryWrong(bool wrong);

 signals:
  void projectChanged();  ///< another project value; revision is new
  void snapshotChanged(const jw::Snapshot& snapshot);
  /// The snapshot shown has its sensitivities now; nothing else of it is new.
  void sensitivitiesChanged(const jw::Snapshot& snapshot);
  void stateChanged();  ///< file name, saved state, undo, redo
  void evaluationFailed(const QString& message);

 private:
  void reset(ProjectPtr project, const QString& fileName, const QByteArray& bytesOnDisk);
  void beginProject();
  void publish();
  void receive(Snapshot snapshot);
  void showStale();
  void studySensitivities();

  History history_;
  QString fileName_;
  QByteArray digestOnDisk_;  // of the file as it was last read or written
  Snapshot snapshot_;
  quint64 revision_ = 0;
  quint64 firstRevision_ = 0;  // of this project: older answers belong to the one before
  bool entryWrong_ = false;
  QTimer staleTimer_;
  QTimer slopesTimer_;
  Evaluator evaluator_;
  StudyThread slopes_;
};

}  // namespace jw

#pragma once

#include <QWidget>

#include "widgets/edit.h"
#include "widgets/snapshot.h"
#include "widgets/study_thread.h"

namespace jw {

/// One picture of a figure that has a study worked out for it, with the settings of the study. Only
/// the page in front is shown snapshots; all pages of a figure share one thread.
class StudyPage : public QWidget {
  Q_OBJECT

 public:
  explicit StudyPage(StudyThread& thread, QWidget* parent = nullptr)
      : QWidget(parent), m_thread(thread) {}

  virtual void showSnapshot(const Snapshot& snapshot) = 0;
  /// What was worked out, if it belongs to the snapshot.
  virtual void addStudies(Snapshot& snapshot) const = 0;
  virtual void restyle() = 0;
  virtual void zoomBy(double factor) = 0;
  virtual void resetZoom() = 0;
  /// A key for the picture; whether it was taken.
  virtual bool takeKey(QKeyEvent&) { return false; }

 signals:
  void reading(const QString& text);
  void editRequested(const jw::Edit& edit);

 protected:
  StudyThread& m_thread;
};

}  // namespace jw

#pragma once

#include <QDialog>
#include <QLabel>
#include <QProgressBar>
#include <QPushButton>
#include <QTabWidget>
#include <QTimer>

#include "widgets/edit.h"
#include "widgets/panels/log_columns_page.h"
#include "widgets/panels/log_load_page.h"
#include "widgets/panels/log_motion_page.h"
#include "widgets/panels/log_work.h"

namespace jw {

/// A measured log of the joint: how it is read and mended, its motion smoothed, a stretch of it
/// closed into the cycle, its torque compared with the load's and the load fitted. All work is done
/// beside the window; nothing of the project changes until it is asked for.
class LogDialog : public QDialog {
  Q_OBJECT

 public:
  explicit LogDialog(QWidget* parent = nullptr);

  void openFile(const QString& fileName);
  /// The project that is open now: its load is compared with the log.
  void showSnapshot(const Snapshot& snapshot);

  const LogStudy& study() const { return m_work.study(); }
  bool isBusy() const { return m_work.isBusy(); }
  QString message() const { return m_message->text(); }
  LogMotionPage& motionPage() { return *m_motion; }
  LogLoadPage& loadPage() { return *m_load; }

 signals:
  void editRequested(const jw::Edit& edit);
  void settled();  ///< the work that was asked for is done, or failed

 private:
  QLayout* makeHead();
  QWidget* makeFoot();
  void connectPages();
  void askFile();
  LogSettings settings() const;
  void request(LogStage from);
  void requestSoon(LogStage from);
  void advanced(LogStage stage);
  void refuse(LogStage stage, const InputError& error);
  void showMessage(const InputError& error);
  void showBusy(bool busy);
  void showProgress();
  void showHead();
  void takeCycle(const std::shared_ptr<const LogJoinResult>& cycle);

  LogWork m_work;
  QString m_fileName;
  std::optional<LogLayout> m_layout;
  bool m_columnsChosen = false;
  bool m_keepMotion = false;  ///< whether smoother and stretch are those of this log
  LogStage m_next = LogStage::Done;
  Snapshot m_snapshot;
  QLabel* m_head = nullptr;
  QLabel* m_message = nullptr;
  QTabWidget* m_pages = nullptr;
  LogColumnsPage* m_columns = nullptr;
  LogMotionPage* m_motion = nullptr;
  LogLoadPage* m_load = nullptr;
  QWidget* m_busyPart = nullptr;
  QLabel* m_busyText = nullptr;
  QProgressBar* m_progress = nullptr;
  QTimer m_pause;
  QTimer m_tick;
};

/// The edit that makes a stretch of a log the cycle; it is one undo step.
Edit measuredCycleEdit(const ClosedCycle& cycle, const QString& name);

}  // namespace jw

#pragma once

#include <QCheckBox>
#include <QPushButton>
#include <QWidget>

#include "widgets/figures/log_canvas.h"
#include "widgets/panels/log_fields.h"
#include "widgets/panels/log_study.h"

namespace jw {

/// Curves of a log, its smoother, the stretch that becomes the cycle and how it is closed.
class LogMotionPage : public QWidget {
  Q_OBJECT

 public:
  explicit LogMotionPage(QWidget* parent = nullptr);

  /// Shows what the study has; the part that is seen stays unless the log is another one.
  void showStudy(const LogStudy& study, LogStage stage);
  /// Writes smoother, stretch and closing into `settings`.
  void fill(LogSettings& settings) const;
  /// Whether smoother and stretch were kept when the last log was shown: its times are the same.
  bool kept() const { return m_kept; }
  void setUsable(bool usable) { m_use->setEnabled(usable); }
  LogCanvas& canvas() { return *m_canvas; }

 signals:
  void windowChanged();
  void stretchChanged();
  void closingChanged();
  void cycleRequested();

 private:
  QWidget* makePanel();
  QLayout* makeSmoother();
  QLayout* makeStretch();
  QLayout* makeClosing();
  QLayout* makeJoin();
  void showLog(const MeasuredLog& log);
  void showSmoother(const LogStudy& study);
  void showJoin(const LogJoinResult* join);
  void setStretch(double from, double to);
  void findEnd();

  LogStudy m_study;
  LogStretch m_stretch;
  LogCanvas* m_canvas;
  QLabel* m_smoother = nullptr;
  LogSpin* m_window = nullptr;
  LogSpin* m_reach = nullptr;
  QLabel* m_effect = nullptr;
  LogEntry* m_from = nullptr;
  LogEntry* m_to = nullptr;
  QLabel* m_length = nullptr;
  LogChoice* m_closing = nullptr;
  LogSpin* m_share = nullptr;
  QCheckBox* m_turns = nullptr;
  LogEntry* m_rest = nullptr;
  QTableWidget* m_join = nullptr;
  QLabel* m_notes = nullptr;
  QPushButton* m_use = nullptr;
  bool m_showing = false;
  bool m_kept = false;
};

}  // namespace jw

#pragma once

#include <array>

#include <QFormLayout>
#include <QPushButton>
#include <QWidget>

#include "core/studies/load_edits.h"
#include "widgets/edit.h"
#include "widgets/figures/log_canvas.h"
#include "widgets/panels/log_fields.h"
#include "widgets/panels/log_study.h"
#include "widgets/snapshot.h"

namespace jw {

/// Measured torque against that of the project's load, and the load fitted to it: each value with
/// its uncertainty, to be applied where ticked.
class LogLoadPage : public QWidget {
  Q_OBJECT

 public:
  explicit LogLoadPage(QWidget* parent = nullptr);

  void showStudy(const LogStudy& study, LogStage stage);
  /// Takes over load and drive of the project that is open; whether one of them is another.
  bool showProject(const Snapshot& snapshot);
  void fill(LogSettings& settings) const;
  LogCanvas& canvas() { return *m_canvas; }

 signals:
  void driveChanged();
  void termsChanged();
  void editRequested(const jw::Edit& edit);

 private:
  QWidget* makePanel();
  QWidget* makeDrive();
  QWidget* makeTerms();
  QWidget* makeEdits();
  void setDrive(const LogDrive& drive);
  LogEntry* addEntry(QFormLayout* form, const QString& label, const char* objectName,
                     Quantity quantity, std::string_view unit, double low);
  void showFit();
  void showEdits();
  void markChosen();
  LoadEdits chosen() const;
  void apply();

  LogStudy m_study;
  Load m_load;
  LogDrive m_drive;
  LogDrive m_projectDrive;  ///< what m_drive was before the person changed it
  LoadEdits m_edits;
  LogCanvas* m_canvas;
  QLabel* m_empty = nullptr;
  QWidget* m_drivePart = nullptr;
  LogEntry* m_constant = nullptr;
  LogEntry* m_ratio = nullptr;
  LogEntry* m_efficiency = nullptr;
  LogEntry* m_rotor = nullptr;
  QLabel* m_difference = nullptr;
  QTableWidget* m_terms = nullptr;
  QLabel* m_quality = nullptr;
  LogChoice* m_kept = nullptr;
  QTableWidget* m_changes = nullptr;
  QLabel* m_notes = nullptr;
  QPushButton* m_apply = nullptr;
  bool m_showing = false;
};

/// The edit that sets these fields of the load; it is one undo step.
Edit fittedLoadEdit(const LoadEdits& edits);

}  // namespace jw

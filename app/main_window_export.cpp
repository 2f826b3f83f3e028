// What leaves the window: figures and the review. What comes in: motion points.
#include <QDir>
#include <QFileInfo>
#include <QGuiApplication>

#include "app/main_window.h"
#include "app/review.h"
#include "core/files/motion_table.h"
#include "widgets/figures/figure_export.h"
#include "widgets/panels/built_ratios_dialog.h"
#include "widgets/panels/log_dialog.h"
#include "widgets/panels/robot_load_dialog.h"

namespace jw {
namespace {

/// Folder of the project, or the home folder.
QDir folderOf(const Document& document) {
  return document.fileName().isEmpty() ? QDir::home()
                                       : QFileInfo(document.fileName()).absoluteDir();
}

tl::expected<MotionTable, InputError> loadTable(const QString& fileName) {
  const auto bytes = readFile(fileName);
  if (!bytes) return tl::unexpected(bytes.error());
  return readMotionTable({bytes->constData(), static_cast<std::size_t>(bytes->size())},
                         QDir::toNativeSeparators(fileName).toStdString());
}

Edit importPoints(int segment, MotionTable table) {
  const auto index = static_cast<std::size_t>(segment);
  return {MainWindow::tr("Import motion points"),
          {},
          [index, table = std::move(table)](Project& project) -> tl::expected<void, InputError> {
            if (index >= project.cycle.segments.size()) {
              return tl::unexpected(InputError{"there is no such move", "cycle.segments",
                                               "choose "
                                               "another"});
            }
            project.cycle.segments[index].law = MotionLaw::Table;
            project.cycle.segments[index].table = table;
            return {};
          }};
}

}  // namespace

void MainWindow::exportFigure(const QString& figureName) {
  const QString proposal = document_.displayName() + "-" + figureName + ".png";
  QString fileName = prompts_.askFigureFile(this, folderOf(document_).filePath(proposal));
  if (fileName.isEmpty()) return;
  if (QFileInfo(fileName).suffix().isEmpty()) fileName += ".png";
  Snapshot shown = evaluatedSnapshot();
  shown.instant = figures_->cursorTime();
  figures_->addStudies(shown);
  if (const auto done = jw::exportFigure(shown, figureName, fileName); !done) {
    return messages_->showError(done.error());
  }
  showStatus(tr("Exported %1").arg(QDir::toNativeSeparators(fileName)));
}

void MainWindow::exportReview() {
  const QString folder = prompts_.askFolder(this, folderOf(document_).absolutePath());
  if (folder.isEmpty()) return;
  Review review;
  review.fileName =
      document_.fileName().isEmpty() ? QString() : QFileInfo(document_.fileName()).fileName();
  review.snapshot = evaluatedSnapshot();
  figures_->addStudies(review.snapshot);
  QGuiApplication::setOverrideCursor(Qt::WaitCursor);
  const auto done = writeReview(review, folder);
  QGuiApplication::restoreOverrideCursor();
  if (!done) return messages_->showError(done.error());
  showStatus(tr("The review is in %1").arg(QDir::toNativeSeparators(folder)));
}

void MainWindow::importTable(int segment) {
  const QString fileName = prompts_.askTableFile(this, folderOf(document_).absolutePath());
  if (fileName.isEmpty()) return;
  auto table = loadTable(fileName);
  if (!table) return messages_->showError(table.error());
  const auto points = table->time.size();
  applyEdit(importPoints(segment, std::move(*table)));
  showStatus(tr("Imported %1 points").arg(points));
}

void MainWindow::chooseLog() {
  const QString fileName = prompts_.askLogFile(this, folderOf(document_).absolutePath());
  if (!fileName.isEmpty()) openLog(fileName);
}

void MainWindow::openLog(const QString& fileName) {
  if (!log_) {
    log_ = new LogDialog(this);
    log_->setAttribute(Qt::WA_DeleteOnClose);
    connect(log_, &LogDialog::editRequested, this, [this](const Edit& edit) {
      applyEdit(edit);
      showStatus(edit.description);
    });
    log_->showSnapshot(document_.snapshot());
  }
  log_->openFile(fileName);
  log_->show();
  log_->raise();
  log_->activateWindow();
}

void MainWindow::loadFromRobot() {
  auto* dialog = new RobotLoadDialog(document_.project()->load.gravity, this);
  dialog->setAttribute(Qt::WA_DeleteOnClose);
  connect(dialog, &RobotLoadDialog::editRequested, this, &MainWindow::applyEdit);
  dialog->show();
}

void MainWindow::chooseParts(int stage) {
  const auto index = static_cast<std::size_t>(stage);
  Stage shown = document_.project()->active().transmission[index];
  const Snapshot& snapshot = document_.snapshot();
  const bool completed = snapshot.evaluation && snapshot.evaluation->stages &&
                         index < snapshot.evaluation->stages->size();
  if (!isSet(shown.ratio) && completed) {
    shown.ratio = (*snapshot.evaluation->stages)[index].stage.ratio;
  }
  auto* dialog = new BuiltRatiosDialog(shown, stage, this);
  dialog->setAttribute(Qt::WA_DeleteOnClose);
  connect(dialog, &BuiltRatiosDialog::editRequested, this, &MainWindow::applyEdit);
  dialog->show();
}

}  // namespace jw

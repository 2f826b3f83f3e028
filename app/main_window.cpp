#include "app/main_window.h"

#include <cmath>

#include <QCloseEvent>
#include <QDragEnterEvent>
#include <QMimeData>
#include <QStatusBar>

#include "app/requested_project.h"
#include "app/window_layout.h"
#include "app/window_menus.h"
#include "widgets/panels/log_dialog.h"
#include "widgets/panels/log_text.h"

namespace jw {

MainWindow::MainWindow(Prompts& prompts, QWidget* parent)
    : QMainWindow(parent),
      prompts_(prompts),
      session_(document_, prompts, this),
      title_(new TitleStrip(this)),
      messages_(new MessageStrip(this)),
      powerPath_(new PowerPath(this)),
      inputs_(new InputsPanel(this)),
      figures_(new FigureArea(this)),
      verdicts_(new VerdictList(this)),
      working_(new WorkingPanel(this)),
      columns_(new QSplitter(this)),
      rightColumn_(new QSplitter(Qt::Vertical, this)),
      cursorLabel_(new QLabel(this)),
      timeLabel_(new QLabel(this)) {
  setAcceptDrops(true);
  setMinimumSize(kSmallestWindow);
  buildLayout();
  buildStatusBar();
  menus_ = std::make_unique<WindowMenus>(*this);
  connectDocument();
  connectSession();
  connectViews();
  resize(kUsualWindow);
  resetLayout();
  centralWidget()->setFocus();  // not the first button: nothing is chosen yet
  document_.startNew(Project{});
}

MainWindow::~MainWindow() {
  delete takeCentralWidget();  // before the document, which its parts could still send edits to
}

void MainWindow::connectDocument() {
  connect(&document_, &Document::projectChanged, this, &MainWindow::showProject);
  connect(&document_, &Document::snapshotChanged, this, &MainWindow::showSnapshot);
  connect(&document_, &Document::sensitivitiesChanged, verdicts_, &VerdictList::showSnapshot);
  connect(&document_, &Document::sensitivitiesChanged, working_, &WorkingPanel::showSnapshot);
  connect(&document_, &Document::stateChanged, this, &MainWindow::showState);
  connect(&document_, &Document::evaluationFailed, this, [this](const QString& message) {
    messages_->showError({"the evaluation broke down: " + message.toStdString(), "",
                          "this is a fault of the program; undo the last change"});
  });
}

void MainWindow::connectSession() {
  connect(&session_, &Session::failed, messages_, &MessageStrip::showError);
  connect(&session_, &Session::remarks, messages_, &MessageStrip::showRemarks);
  connect(&session_, &Session::done, this, [this](const QString& message) {
    showStatus(inputs_->hasWrongEntry() ? tr("%1, without the entry that is wrong").arg(message)
                                        : message);
  });
  connect(&session_, &Session::aboutToReplace, this, [this] {
    inputs_->discardWrongEntries();
    chooseWorst_ = true;
    setCursorTime(kUnset);
  });
}

void MainWindow::connectViews() {
  connect(inputs_, &InputsPanel::editRequested, this, &MainWindow::applyEdit);
  connect(inputs_, &InputsPanel::wrongEntryChanged, &document_, &Document::setEntryWrong);
  connect(inputs_, &InputsPanel::tableRequested, this, &MainWindow::importTable);
  connect(inputs_, &InputsPanel::partsRequested, this, &MainWindow::chooseParts);
  connect(inputs_, &InputsPanel::logRequested, this, &MainWindow::chooseLog);
  connect(inputs_, &InputsPanel::robotRequested, this, &MainWindow::loadFromRobot);
  connect(powerPath_, &PowerPath::stationClicked, this, [this](const QString& path) {
    powerPath_->setChosenStation(path);
    reveal(path);
  });
  connect(verdicts_, &VerdictList::checkSelected, this, [this](const QString& id, int stage) {
    working_->showCheck(document_.snapshot(), id, stage);
  });
  connect(verdicts_, &VerdictList::fieldRequested, this, &MainWindow::reveal);
  connect(working_, &WorkingPanel::fieldRequested, this, &MainWindow::reveal);
  connect(working_, &WorkingPanel::editRequested, this, &MainWindow::applyEdit);
  connect(figures_, &FigureArea::fieldRequested, this, &MainWindow::reveal);
  connect(figures_, &FigureArea::editRequested, this, &MainWindow::applyEdit);
  connect(figures_, &FigureArea::cursorTimeChanged, this, &MainWindow::setCursorTime);
  connect(figures_, &FigureArea::exportRequested, this, &MainWindow::exportFigure);
  connect(figures_, &FigureArea::copied, this, [this] { showStatus(tr("Figure copied")); });
}

void MainWindow::showProject() {
  inputs_->showProject(*document_.project());
  const Project& project = *document_.project();
  const QString title = QString::fromStdString(project.title);
  title_->setProject(title.isEmpty() ? document_.displayName() : title,
                     QString::fromStdString(project.active().name));
}

void MainWindow::showSnapshot(const Snapshot& snapshot) {
  figures_->showSnapshot(snapshot);
  powerPath_->showSnapshot(snapshot);
  verdicts_->showSnapshot(snapshot);
  working_->showSnapshot(snapshot);
  inputs_->showSnapshot(snapshot);
  if (log_) log_->showSnapshot(snapshot);
  chooseWorst(snapshot);
  const QString milliseconds =
      QString::fromStdString(formatNumber(snapshot.evaluationSeconds * 1e3, 2));
  timeLabel_->setText(!snapshot.evaluation ? QString()
                      : snapshot.stale     ? tr("not up to date")
                                           : tr("evaluated in %1 ms").arg(milliseconds));
}

void MainWindow::chooseWorst(const Snapshot& snapshot) {
  if (!chooseWorst_ || !snapshot.evaluation || snapshot.stale || verdicts_->model().rowCount() == 0)
    return;
  const VerdictRow& worst = verdicts_->model().row(0);
  verdicts_->select(worst.id, worst.stage);
  chooseWorst_ = false;
}

void MainWindow::showState() {
  setWindowTitle(document_.displayName() + "[*] – Jointwright");
  setWindowModified(document_.isModified());
  const bool unnamed = document_.fileName().isEmpty();
  title_->setSaved(document_.isModified() ? tr("not saved") : unnamed ? tr("new") : tr("saved"));
  menus_->update();
}

void MainWindow::setCursorTime(double s) {
  figures_->setCursorTime(s);
  powerPath_->setCursorTime(s);
  cursorLabel_->setText(
      std::isnan(s)
          ? QString()
          : tr("cursor %1").arg(QString::fromStdString(formatQuantity(s, Quantity::Time, "s", 3))));
}

/// Inputs show the cycle in front; the others stand in the daily mix.
void MainWindow::reveal(const QString& path) {
  path.startsWith("otherCycles") ? figures_->showMix() : inputs_->reveal(path);
}

void MainWindow::applyEdit(const Edit& edit) {
  if (const auto done = document_.apply(edit); !done) {
    showStatus(QString::fromStdString(describe(done.error())));
  }
}

Snapshot MainWindow::evaluatedSnapshot() const {
  return document_.isEvaluated() ? document_.snapshot() : evaluateNow(*document_.project());
}

void MainWindow::showStatus(const QString& message) {
  constexpr int kShownMs = 6000;
  statusBar()->showMessage(message, kShownMs);
}

void MainWindow::closeEvent(QCloseEvent* event) {
  if (!session_.mayLetGo()) {
    event->ignore();
    return;
  }
  session_.close();
  WindowLayout::save(*this);
  event->accept();
}

void MainWindow::dragEnterEvent(QDragEnterEvent* event) {
  const auto urls = event->mimeData()->urls();
  if (urls.size() == 1 && urls.first().isLocalFile()) event->acceptProposedAction();
}

void MainWindow::dropEvent(QDropEvent* event) {
  const auto urls = event->mimeData()->urls();
  if (urls.size() != 1 || !urls.first().isLocalFile()) return;
  event->acceptProposedAction();
  const QString fileName = urls.first().toLocalFile();
  isLogFile(fileName) ? openLog(fileName) : (void)session_.open(fileName);
}

}  // namespace jw

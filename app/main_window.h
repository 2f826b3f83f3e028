#pragma once

#include <QLabel>
#include <QMainWindow>
#include <QPointer>
#include <QSplitter>

#include "app/document.h"
#include "app/figure_area.h"
#include "app/message_strip.h"
#include "app/prompts.h"
#include "app/session.h"
#include "app/title_strip.h"
#include "widgets/inputs/inputs_panel.h"
#include "widgets/panels/power_path.h"
#include "widgets/panels/verdict_list.h"
#include "widgets/panels/working_panel.h"

namespace jw {

class LogDialog;
class WindowMenus;

/// The window: power path, inputs, figures, verdicts and working around one document. It only
/// passes on: gestures become edits of the document, snapshots of the document go to the views.
class MainWindow : public QMainWindow {
  Q_OBJECT

 public:
  explicit MainWindow(Prompts& prompts, QWidget* parent = nullptr);
  ~MainWindow() override;

  Document& document() { return document_; }
  Session& session() { return session_; }
  Prompts& prompts() { return prompts_; }
  FigureArea& figures() { return *figures_; }
  InputsPanel& inputs() { return *inputs_; }
  MessageStrip& messages() { return *messages_; }
  TitleStrip& titleStrip() { return *title_; }

  /// The evaluation of what is open now, made here and now if the one on screen is behind.
  Snapshot evaluatedSnapshot() const;
  void applyEdit(const Edit& edit);
  /// Lets a robot description be opened and a joint of it chosen as the load.
  void loadFromRobot();
  void exportFigure(const QString& figureName);
  void exportReview();
  /// Asks for a measured log and opens it in a window of its own.
  void chooseLog();
  void openLog(const QString& fileName);
  /// Sizes of the parts as they are at first.
  void resetLayout();
  QByteArray layoutState() const;
  /// False, with the usual layout, if `state` is not one of layoutState().
  bool restoreLayoutState(const QByteArray& state);

 public slots:
  void showStatus(const QString& message);

 protected:
  void closeEvent(QCloseEvent* event) override;
  void dragEnterEvent(QDragEnterEvent* event) override;
  void dropEvent(QDropEvent* event) override;
  bool eventFilter(QObject* watched, QEvent* event) override;

 private:
  void buildLayout();
  void buildStatusBar();
  QFrame* framed(QWidget* content, const QString& name);
  void applyUsualSizes();
  void connectDocument();
  void connectSession();
  void connectViews();
  void showProject();
  void showSnapshot(const Snapshot& snapshot);
  void showState();
  void chooseWorst(const Snapshot& snapshot);
  void setCursorTime(double s);
  void reveal(const QString& path);
  void importTable(int segment);
  void chooseParts(int stage);

  Prompts& prompts_;
  Document document_;
  Session session_;
  TitleStrip* title_;
  MessageStrip* messages_;
  PowerPath* powerPath_;
  InputsPanel* inputs_;
  FigureArea* figures_;
  VerdictList* verdicts_;
  WorkingPanel* working_;
  QSplitter* columns_;
  QSplitter* rightColumn_;
  QLabel* cursorLabel_;
  QLabel* timeLabel_;
  std::unique_ptr<WindowMenus> menus_;
  bool chooseWorst_ = true;
  bool sizesTouched_ = false;
  QPointer<LogDialog> log_;
};

}  // namespace jw

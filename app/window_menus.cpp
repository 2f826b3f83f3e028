#include "app/window_menus.h"

#include <QFileInfo>

#include "app/help_dialog.h"
#include "app/main_window.h"
#include "app/recent_files.h"
#include "app/theme_choice.h"
#include "widgets/figures/envelope_figure.h"
#include "widgets/panels/heat_fit_dialog.h"

namespace jw {

WindowMenus::WindowMenus(MainWindow& window)
    : window_(window), variants_(new VariantMenu(window, &window)) {
  QMenuBar& bar = *window.titleStrip().menuBar();
  buildProject(*bar.addMenu(tr("&Project")));
  buildEdit(*bar.addMenu(tr("&Edit")));
  buildShow(*bar.addMenu(tr("&Show")));
  buildHelp(*bar.addMenu(tr("&Help")));
  window.titleStrip().setVariantMenu(variants_);
}

QAction* WindowMenus::add(QMenu& menu, const QString& text, const QKeySequence& keys,
                          const QString& name, const std::function<void()>& run) {
  QAction* action = menu.addAction(text);
  action->setObjectName(name);
  action->setShortcut(keys);
  connect(action, &QAction::triggered, this, run);
  window_.addAction(action);
  return action;
}

void WindowMenus::buildProject(QMenu& menu) {
  Session& session = window_.session();
  add(menu, tr("&New"), QKeySequence::New, "action.new", [&] { session.newProject(); });
  add(menu, tr("&Open…"), QKeySequence::Open, "action.open", [&] { session.chooseAndOpen(); });
  samples_ = menu.addMenu(tr("Open sa&mple"));
  recent_ = menu.addMenu(tr("&Recent"));
  connect(samples_, &QMenu::aboutToShow, this, &WindowMenus::fillSamples);
  connect(recent_, &QMenu::aboutToShow, this, &WindowMenus::fillRecent);
  menu.addSeparator();
  add(menu, tr("&Save"), QKeySequence::Save, "action.save", [&] { session.save(); });
  add(menu, tr("Save &as…"), QKeySequence(Qt::CTRL | Qt::SHIFT | Qt::Key_S), "action.saveAs",
      [&] { session.saveAs(); });
  menu.addSeparator();
  menu.addMenu(variants_);
  menu.addSeparator();
  add(menu, tr("Export &figure…"), QKeySequence(Qt::CTRL | Qt::Key_E), "action.exportFigure",
      [this] { window_.exportFigure(window_.figures().activePane()->exportName()); });
  add(menu, tr("Export the re&view…"), QKeySequence(Qt::CTRL | Qt::SHIFT | Qt::Key_E),
      "action.exportReview", [this] { window_.exportReview(); });
  menu.addSeparator();
  add(menu, tr("&Quit"), QKeySequence(Qt::CTRL | Qt::Key_Q), "action.quit",
      [this] { window_.close(); });
}

void WindowMenus::buildEdit(QMenu& menu) {
  undo_ = add(menu, tr("&Undo"), QKeySequence::Undo, "action.undo",
              [this] { window_.document().undo(); });
  redo_ = add(menu, tr("&Redo"), QKeySequence::Redo, "action.redo",
              [this] { window_.document().redo(); });
  redo_->setShortcuts(
      {QKeySequence(Qt::CTRL | Qt::SHIFT | Qt::Key_Z), QKeySequence(Qt::CTRL | Qt::Key_Y)});
  menu.addSeparator();
  add(menu, tr("Open a &measured log…"), QKeySequence(Qt::CTRL | Qt::Key_L), "action.openLog",
      [this] { window_.chooseLog(); });
  add(menu, tr("&Load from a robot description…"), {}, "action.robotLoad",
      [this] { window_.loadFromRobot(); });
  add(menu, tr("&Fit a heating curve…"), {}, "action.fitHeat", [this] { fitHeat(); });
  menu.addSeparator();
  add(menu, tr("&Copy figure"), QKeySequence(Qt::CTRL | Qt::SHIFT | Qt::Key_C), "action.copyFigure",
      [this] {
        window_.figures().activePane()->current()->copyPicture();
        window_.showStatus(tr("Figure copied"));
      });
}

void WindowMenus::fitHeat() {
  auto* dialog = new HeatFitDialog(window_.document().project()->requirements.ambient, &window_);
  dialog->setAttribute(Qt::WA_DeleteOnClose);
  connect(dialog, &HeatFitDialog::editRequested, &window_, &MainWindow::applyEdit);
  dialog->show();
}

void WindowMenus::buildShow(QMenu& menu) {
  // As the tabs stand.
  const std::pair<QString, const char*> figures[] = {
      {tr("&Envelope"), "envelope"},   {tr("C&ycle"), "cycle"},
      {tr("&Heat"), "heat"},           {tr("Rat&io"), "ratio"},
      {tr("D&rive picture"), "drive"}, {tr("&Precision"), "precision"},
      {tr("To&lerance"), "tolerance"}, {tr("&Families"), "families"},
      {tr("&Search"), "search"}};
  int key = Qt::Key_1;
  for (const auto& [title, figure] : figures) {
    add(menu, title, QKeySequence(Qt::CTRL | Qt::Key(key++)),
        (std::string("action.") + figure).c_str(),
        [this, name = figure] { window_.figures().activePane()->setCurrent(name); });
  }
  menu.addSeparator();
  split_ = add(menu, tr("T&wo figures"), QKeySequence(Qt::CTRL | Qt::Key_T), "action.split",
               [this] { window_.figures().setSplit(split_->isChecked()); });
  split_->setCheckable(true);
  buildAxes(menu);
  menu.addSeparator();
  buildTheme(menu);
  menu.addSeparator();
  add(menu, tr("&Reset layout"), {}, "action.resetLayout", [this] { window_.resetLayout(); });
  connect(&menu, &QMenu::aboutToShow, this,
          [this] { split_->setChecked(window_.figures().isSplit()); });
}

void WindowMenus::buildAxes(QMenu& menu) {
  QMenu* axes = menu.addMenu(tr("&Axes of the envelope"));
  const auto choose = [this](AxesAt at) {
    return [this, at] {
      for (EnvelopeFigure* figure : window_.figures().findChildren<EnvelopeFigure*>()) {
        figure->setAxesAt(at);
      }
    };
  };
  add(*axes, tr("At the &motor"), {}, "action.axesMotor", choose(AxesAt::Motor));
  add(*axes, tr("At the &joint"), {}, "action.axesJoint", choose(AxesAt::Joint));
}

void WindowMenus::buildTheme(QMenu& menu) {
  auto* group = new QActionGroup(this);
  const auto choice = [&](const QString& text, ThemeChoice theme, const QString& name) {
    QAction* action = add(menu, text, {}, name, [theme] { chooseTheme(theme); });
    action->setCheckable(true);
    action->setChecked(theme == chosenTheme());
    group->addAction(action);
  };
  choice(tr("&Light"), ThemeChoice::Light, "action.light");
  choice(tr("&Dark"), ThemeChoice::Dark, "action.dark");
  choice(tr("&Follow the system at start"), ThemeChoice::System, "action.followSystem");
}

void WindowMenus::buildHelp(QMenu& menu) {
  const auto page = [this](HelpPage which) { return [this, which] { showHelp(which, &window_); }; };
  add(menu, tr("&Fields"), QKeySequence::HelpContents, "action.helpFields", page(HelpPage::Fields));
  add(menu, tr("&Shortcuts"), {}, "action.helpShortcuts", page(HelpPage::Shortcuts));
  add(menu, tr("&Cautions"), {}, "action.helpCautions", page(HelpPage::Cautions));
  menu.addSeparator();
  add(menu, tr("&About Jointwright"), {}, "action.about", page(HelpPage::About));
}

void WindowMenus::fillRecent() {
  recent_->clear();
  for (const QString& file : RecentFiles::list()) {
    QAction* action = recent_->addAction(QString(QFileInfo(file).fileName()).replace('&', "&&"));
    action->setStatusTip(file);
    connect(action, &QAction::triggered, this, [this, file] { window_.session().open(file); });
  }
  if (recent_->isEmpty()) recent_->addAction(tr("None yet"))->setEnabled(false);
}

void WindowMenus::fillSamples() {
  samples_->clear();
  for (const QString& file : sampleFiles()) {
    QAction* action = samples_->addAction(sampleTitle(file).replace('&', "&&"));
    connect(action, &QAction::triggered, this,
            [this, file] { window_.session().openSample(file); });
  }
  if (samples_->isEmpty()) samples_->addAction(tr("None found"))->setEnabled(false);
}

void WindowMenus::update() {
  const History& history = window_.document().history();
  undo_->setEnabled(history.canUndo());
  undo_->setText(history.canUndo() ? tr("&Undo: %1").arg(history.undoText()) : tr("&Undo"));
  redo_->setEnabled(history.canRedo());
  redo_->setText(history.canRedo() ? tr("&Redo: %1").arg(history.redoText()) : tr("&Redo"));
}

}  // namespace jw
